/**
 * Full-size templates of what is curved or tapered.
 */
import type { LaidFace, Piece, Spot } from "../../joinery/pieces/piece.ts";
import { boreItems } from "./bores-block.ts";
import { boreAt, outlinesOf } from "./bow-block.ts";
import { drawnMarks } from "./drawn-marks.ts";
import { runningDistances, stopsOf } from "./faces.ts";
import type { Figures } from "./figures.ts";
import { widthOf } from "./lettering.ts";
import { circle, enlarged, type Item, LARGE, line, type Point, TYPE, words } from "./page.ts";
import { edgesOf } from "./plan-block.ts";
import type { FullSize } from "./tiles.ts";

export interface Template {
  /** `inside face`, `turned outline`. */
  of: string;
  why: string;
  drawing: FullSize;
}

/** White round the drawing, mm. */
const CLEAR = 2;

/** The templates of a piece; none for plain stuff. */
export function templatesOf(piece: Piece, figures: Figures): Template[] {
  // A straight-edged seat is set out by its lengths and corners: a template would be a dozen pages that say no more.
  if (piece.plan)
    return piece.is === "block" || piece.plan.bores || edgesOf(piece.plan.ring).some(({ curved }) => curved)
      ? [planTemplate(piece.plan, figures)]
      : [];
  if (piece.form) return [formTemplate(piece)];
  if (piece.turned) return turnedTemplates(piece, figures);
  return facesToCut(piece).map((face) => ({
    of: `${face.name} face`,
    why: face.shaped!,
    drawing: faceDrawing(piece, face, figures),
  }));
}

/** Everything of a piece that is cut to a shape, at full size: its templates, and a plan also where that is straight-edged. */
export function fullSizeDrawings(piece: Piece, figures: Figures): Template[] {
  const templates = templatesOf(piece, figures);
  return templates.length === 0 && piece.plan ? [planTemplate(piece.plan, figures)] : templates;
}

/**
 * Of each two opposite faces the one with more on it, and the other too where its outline is another or it has mortises of its own; of two
 * ways with one outline the one with more on it. None that is laid out along a curve.
 */
function facesToCut(piece: Piece): LaidFace[] {
  const ways = [0, 1].map((k) => {
    const pair = [piece.faces[k], piece.faces[k + 2]].filter(
      (face) => face?.shaped && isPlane(face),
    ) as LaidFace[];
    const [best, other] = pair.sort((a, b) => worth(b) - worth(a));
    if (!best) return [];
    return other && (worth(other) >= 1 || !sameOutline(best, other)) ? [best, other] : [best];
  });
  const [one, other] = ways as [LaidFace[], LaidFace[]];
  if (one.length === 1 && other.length === 1 && sameOutline(one[0]!, other[0]!))
    return worth(other[0]!) > worth(one[0]!) ? other : one;
  return [...one, ...other];
}

const worth = ({ marks, gauge }: LaidFace): number =>
  marks.filter(({ letter, is }) => letter && is !== "datum").length + (gauge ? 0.5 : 0);

const isPlane = ({ panels: [first, ...rest] }: LaidFace): boolean =>
  rest.every(({ normal }) => Math.hypot(...normal.map((v, k) => v - first!.normal[k]!)) < 0.02);

function sameOutline(one: LaidFace, other: LaidFace): boolean {
  const spots = (face: LaidFace) =>
    face.marks.filter(({ is }) => is === "arris").flatMap((mark) => mark.spots);
  const middle = (face: LaidFace) => mean(spots(face).map(([, y]) => y));
  const [a, b] = [spots(one), spots(other)];
  const [ay, by] = [middle(one), middle(other)];
  return a.every(([x, y]) =>
    b.some(([u, v]) => Math.abs(x - u) < 0.1 && Math.abs(Math.abs(y - ay) - Math.abs(v - by)) < 0.1),
  );
}

const mean = (values: readonly number[]): number => values.reduce((sum, v) => sum + v, 0) / values.length;

/** Between a face and the distances under it, mm. */
const UNDER = 1;

/** A face with its letters, and its running distances under it. */
function faceDrawing(piece: Piece, face: LaidFace, figures: Figures): FullSize {
  const spots = [...face.marks.flatMap((mark) => mark.spots), ...face.rings.flat()];
  const left = Math.min(...spots.map(([x]) => x)) - CLEAR;
  const top = Math.max(...spots.map(([, y]) => y)) + CLEAR;
  const to = ([x, y]: Spot): Point => [x - left, top - y];
  const items = drawnMarks(face, { to, scale: 1 });
  for (const { is, spots: at, letter } of face.marks) {
    if (!letter) continue;
    const middle = to([mean(at.map(([x]) => x)), mean(at.map(([, y]) => y))]);
    if (is === "datum") items.push(words([middle[0] + 1.2, middle[1] + 1], letter, LARGE, { bold: true }));
    else items.push(words([middle[0], middle[1] + 1.2], letter, LARGE, { anchor: "middle", bold: true }));
  }
  const width = Math.max(...spots.map(([x]) => x)) - left + CLEAR;
  const foot = top - Math.min(...spots.map(([, y]) => y)) + UNDER;
  // Laid out smaller and enlarged with its letters.
  const [by] = TYPE;
  const band = runningDistances(
    stopsOf(piece, face, true, figures),
    (x) => (x - left) / by,
    foot / by,
    width / by,
    CLEAR / by,
  );
  return {
    width,
    height: foot + band.height * by,
    items: [...items, ...band.items.map((item) => enlarged(item, by))],
    captions: [],
  };
}

function planTemplate(plan: NonNullable<Piece["plan"]>, figures: Figures): Template {
  const { ring, seen } = plan;
  const reach = (axis: 0 | 1) => Math.max(...ring.map((spot) => spot[axis]));
  const high = reach(1) + CLEAR;
  const [by] = TYPE;
  const items = [
    line(
      ring.map(([x, y]): Point => [x + CLEAR, high - y]),
      "outline",
      { closed: true },
    ),
    ...boreItems(plan, figures, ([x, y]) => [(x + CLEAR) / by, (high - y) / by]).map((item) =>
      enlarged(item, by),
    ),
  ];
  const drawing = { width: reach(0) + 2 * CLEAR, height: reach(1) + 2 * CLEAR, items, captions: [] };
  return { of: `outline, ${seen}`, why: "shaped", drawing };
}

/** The form that a bow is bent to, with the places of its bores. */
function formTemplate(piece: Piece): Template {
  const form = piece.form!;
  const { lines, reach, rise } = outlinesOf(form, piece.size.thick);
  const to = ([x, y]: Point): Point => [CLEAR + reach + x, CLEAR + rise - y];
  const items: Item[] = lines.map(({ spots, pen }) => line(spots.map(to), pen));
  for (const bore of form.bores) {
    const at = to(boreAt(form, bore));
    items.push(
      circle(at, bore.diameter / 2, "knife"),
      words([at[0] + bore.diameter, at[1]], bore.letter, LARGE, { bold: true }),
    );
  }
  const drawing = { width: 2 * (reach + CLEAR), height: rise + 2 * CLEAR, items, captions: [] };
  return { of: "form, seen square to its plane", why: "bent", drawing };
}

function turnedTemplates(piece: Piece, figures: Figures): Template[] {
  const { stations, bent } = piece.turned!;
  const even = stations.every(({ diameter }) => Math.abs(diameter - stations[0]!.diameter) < 0.05);
  if (even && !bent) return [];
  const radius = (x: number): number => {
    const next = Math.max(
      1,
      stations.findIndex(({ at }) => at >= x),
    );
    const [a, b] = [stations[next - 1]!, stations[next] ?? stations[stations.length - 1]!];
    const share = b.at > a.at ? Math.min(1, Math.max(0, (x - a.at) / (b.at - a.at))) : 1;
    return (a.diameter + (b.diameter - a.diameter) * share) / 2;
  };
  const line0: Spot[] = bent ?? stations.map(({ at }) => [at, 0]);
  const walked = withStations(
    line0,
    stations.map(({ at }) => at),
  );
  const side = (sign: number): Spot[] =>
    walked.map(({ spot, along, normal }) => [
      spot[0] + sign * normal[0] * radius(along),
      spot[1] + sign * normal[1] * radius(along),
    ]);
  const outline = [...side(1), ...side(-1).reverse()];
  const left = Math.min(...outline.map(([x]) => x)) - CLEAR;
  const top = Math.max(...outline.map(([, y]) => y)) + CLEAR;
  const to = ([x, y]: Spot): Point => [x - left, top - y];
  const items: Item[] = [
    line(outline.map(to), "outline", { closed: true }),
    line(
      walked.map(({ spot }) => to(spot)),
      "datum",
    ),
  ];
  let reach = Number.NEGATIVE_INFINITY;
  for (const { at, diameter } of stations) {
    const here = walked.reduce((best, each) =>
      Math.abs(each.along - at) < Math.abs(best.along - at) ? each : best,
    );
    const ends = [1, -1].map(
      (sign): Spot => [
        here.spot[0] + sign * here.normal[0] * radius(at),
        here.spot[1] + sign * here.normal[1] * radius(at),
      ],
    );
    items.push(line(ends.map(to), "fine"));
    const [x, y] = to(here.spot);
    const text = `Ø ${figures.print(diameter)}`;
    // Over the middle line, or under it where the last one reaches.
    const isOver = x + 1 > reach;
    items.push(words([x + 1, isOver ? y - 1 : y + 3.6], text, LARGE));
    if (isOver) reach = x + 2 + widthOf(text, LARGE);
  }
  const height = top - Math.min(...outline.map(([, y]) => y)) + CLEAR;
  const width = Math.max(...outline.map(([x]) => x)) - left + CLEAR;
  const of = bent ? "bend, seen square to its plane" : "turned outline";
  return [{ of, why: bent ? "curved" : "turned", drawing: { width, height, items, captions: [] } }];
}

/** Points of a line with how far along they lie and the direction square to it, the stations among them. */
function withStations(spots: readonly Spot[], stations: readonly number[]) {
  const points: { spot: Spot; along: number; normal: Spot }[] = [];
  let along = 0;
  for (let k = 0; k + 1 < spots.length; k++) {
    const [a, b] = [spots[k]!, spots[k + 1]!];
    const long = Math.hypot(b[0] - a[0], b[1] - a[1]);
    const normal: Spot = [-(b[1] - a[1]) / long, (b[0] - a[0]) / long];
    const at = (d: number): Spot => [a[0] + ((b[0] - a[0]) * d) / long, a[1] + ((b[1] - a[1]) * d) / long];
    const stops = stations.filter((s) => s > along + 1e-6 && s < along + long - 1e-6).map((s) => s - along);
    for (const d of [0, ...stops, long]) points.push({ spot: at(d), along: along + d, normal });
    along += long;
  }
  return points;
}
