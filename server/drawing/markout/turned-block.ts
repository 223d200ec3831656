/**
 * A turned piece: its outline along the axis with its diameters, and an end view with the ways its holes go.
 */
import type { Mortise, Piece } from "../../joinery/pieces/piece.ts";
import { type Block, runningDistances } from "./faces.ts";
import type { Figures } from "./figures.ts";
import { widthOf } from "./lettering.ts";
import { BODY, circle, type Item, line, type Point, SMALL, words } from "./page.ts";
import { spread } from "./spread.ts";
import { LINE } from "./table.ts";

/** Room at the left, and for the end view at the right, mm. */
const LEFT = 24;
const END_VIEW = 62;
const scales = [1, 2, 3, 4, 5, 6, 8, 10, 12, 15, 20];

/** In a room so wide; `by` is how much all of it is enlarged afterwards, to the scale that is given. */
export function turnedBlock(piece: Piece, figures: Figures, wide: number, by = 1): Block & { scale: number } {
  const { stations } = piece.turned!;
  const tenons = piece.ends.map(({ tenon }) => tenon?.run ?? 0) as [number, number];
  const long = stations[stations.length - 1]!.at;
  const clock = piece.mortises.length > 0;
  const room = wide - LEFT - 4 - (clock ? END_VIEW : 0);
  const drawn = scales.find((each) => (long + tenons[0] + tenons[1]) / (each * by) <= room) ?? 20;
  const scale = drawn * by;
  const most = Math.max(...stations.map(({ diameter }) => diameter)) / scale;
  const top = 9 + LETTERS;
  const axis = top + most / 2;
  const left = LEFT + tenons[0] / scale;
  const at = (x: number) => left + x / scale;
  const half = (diameter: number) => diameter / 2 / scale;
  const items: Item[] = [
    outline(
      stations.map((each): Point => [at(each.at), half(each.diameter)]),
      axis,
    ),
    line(
      [
        [at(-tenons[0]) - 3, axis],
        [at(long + tenons[1]) + 3, axis],
      ],
      "datum",
    ),
    ...tenonsOf(piece, { at, half, axis, long }),
    ...diameters(piece, figures, at, top - LETTERS),
    ...holesOf(piece, at, axis, half),
  ];
  items.push(words([0, axis + 1], "outline", BODY, { bold: true }));
  const stops = [
    ...stations.map(({ at: x }) => ({ x, text: figures.print(x) })),
    ...piece.mortises.flatMap((mortise) => stopsOf(piece, mortise, figures)),
    ...piece.datums
      .slice(1)
      .map(({ name, along }) => ({ x: along, text: `${name} ${figures.print(along)}` })),
  ];
  const sorted = stops.sort((a, b) => a.x - b.x).filter((stop, k, all) => stop.text !== all[k - 1]?.text);
  const band = runningDistances(sorted, at, axis + most / 2 + 0.8, wide - (clock ? END_VIEW : 0));
  items.push(...band.items);
  let height = axis + most / 2 + 0.8 + band.height;
  if (clock) {
    const view = endView(piece, wide - END_VIEW / 2, top, RADIUS / by);
    items.push(...view.items);
    height = Math.max(height, view.height);
  }
  return { items, height, scale: drawn };
}

const LETTERS = 4;
/** Between two diameters, mm. */
const BETWEEN = 1.5;

/** The outline, there above the axis and back below it. */
function outline(half: readonly Point[], axis: number): Item {
  const upper = half.map(([x, r]): Point => [x, axis - r]);
  const lower = half.map(([x, r]): Point => [x, axis + r]).reverse();
  return line([...upper, ...lower], "outline", { closed: true });
}

interface View {
  at: (x: number) => number;
  half: (diameter: number) => number;
  axis: number;
  long: number;
}

function tenonsOf(piece: Piece, { at, half, axis, long }: View): Item[] {
  return piece.ends.flatMap(({ tenon }, which) => {
    if (!tenon) return [];
    const [from, to] = which === 0 ? [at(-tenon.run), at(0)] : [at(long), at(long + tenon.run)];
    const r = half(tenon.wide);
    const box: Point[] = [
      [from, axis - r],
      [to, axis - r],
      [to, axis + r],
      [from, axis + r],
    ];
    return [line(box, "knife", { closed: true })];
  });
}

function diameters(piece: Piece, figures: Figures, at: (x: number) => number, y: number): Item[] {
  const { stations } = piece.turned!;
  const texts = stations.map(({ diameter }) => `Ø ${figures.print(diameter)}`);
  const even = stations.every(
    ({ diameter }) => Math.abs(diameter - stations[0]!.diameter) < figures.step / 2,
  );
  if (even) {
    const middle = (at(stations[0]!.at) + at(stations[stations.length - 1]!.at)) / 2;
    return [words([middle, y - 0.5], `${texts[0]} throughout`, SMALL, { anchor: "middle" })];
  }
  const places = spread(
    stations.map(({ at: x }) => at(x)),
    Math.max(...texts.map((text) => widthOf(text, SMALL))) + BETWEEN,
    LEFT,
    1e3,
  );
  return stations.flatMap(({ at: x }, k) => [
    words([places[k]!, y - 3.4], texts[k]!, SMALL, { anchor: "middle" }),
    line(
      [
        [places[k]!, y - 2.8],
        [at(x), y - 0.4],
        [at(x), y + 0.6],
      ],
      "fine",
    ),
  ]);
}

function stopsOf(piece: Piece, { is, datum, from, to }: Mortise, figures: Figures) {
  const start = piece.datums.find(({ name }) => name === datum)?.along ?? 0;
  const stop = (x: number) => ({ x: start + x, text: figures.print(x) });
  return is !== "mortise" ? [stop(from[0])] : [stop(from[0]), stop(to[0])];
}

function holesOf(piece: Piece, at: (x: number) => number, axis: number, half: (d: number) => number): Item[] {
  const start = (mortise: Mortise) => piece.datums.find(({ name }) => name === mortise.datum)?.along ?? 0;
  const middles = piece.mortises.map((mortise) => at(start(mortise) + (mortise.from[0] + mortise.to[0]) / 2));
  const most = Math.max(...piece.turned!.stations.map(({ diameter }) => half(diameter)));
  const places = spread(middles, 2.8, LEFT, 1e3);
  return piece.mortises.flatMap((mortise, k) => {
    const x = middles[k]!;
    const mark =
      mortise.is !== "mortise"
        ? circle([x, axis], Math.max(0.3, half(mortise.diameter!)), "knife", { fill: 0.82 })
        : slot(
            at(start(mortise) + mortise.from[0]),
            at(start(mortise) + mortise.to[0]),
            axis,
            half(mortise.tenon.thick),
          );
    return [
      mark,
      words([places[k]!, axis - most - 0.8], mortise.letter, BODY, { anchor: "middle", bold: true }),
    ];
  });
}

function slot(from: number, to: number, axis: number, half: number): Item {
  const box: Point[] = [
    [from, axis - half],
    [to, axis - half],
    [to, axis + half],
    [from, axis + half],
  ];
  return line(box, "knife", { closed: true, fill: 0.82 });
}

/** Ways that differ by less than this are led to one another's labels, radians. */
const NEAR = (6 * Math.PI) / 180;
/** Of the end view on paper, mm. */
const RADIUS = 13;

/** Looking at the far end, the front at the bottom of the circle: a ray for each way that holes go. */
function endView(piece: Piece, x: number, y: number, radius: number): Block {
  const centre: Point = [x, y + radius + 2];
  // Anticlockwise as it is looked at; y runs down the page.
  const on = (angle: number, r: number): Point => [
    centre[0] + r * Math.sin(angle),
    centre[1] + r * Math.cos(angle),
  ];
  const items: Item[] = [circle(centre, radius, "outline"), circle(centre, 0.4, "fine")];
  for (const { angle, labels } of waysOf(piece)) {
    const [labelX, labelY] = on(angle, radius + 3);
    const side = Math.sin(angle);
    const anchor = side > 0.3 ? {} : side < -0.3 ? { anchor: "end" as const } : { anchor: "middle" as const };
    const lines = labels.length * LINE;
    const first =
      Math.cos(angle) > 0.3 ? 2.2 : Math.cos(angle) < -0.3 ? LINE - lines : 1 - (lines - LINE) / 2;
    items.push(line([on(angle, 3), on(angle, radius + 1.5)], "knife"));
    for (const [k, text] of labels.entries())
      items.push(words([labelX, labelY + first + k * LINE], text, SMALL, anchor));
  }
  const [frontX, frontY] = on(0, radius);
  const foot = y + 2 * radius + 15;
  items.push(
    line(
      [
        [frontX - 1.4, frontY - 1.6],
        [frontX, frontY],
        [frontX + 1.4, frontY - 1.6],
      ],
      "fine",
    ),
    words([x, foot], `Seen from the ${piece.ends[1]!.name}, the front below;`, SMALL, { anchor: "middle" }),
    words([x, foot + LINE], "angles run anticlockwise from the front", SMALL, { anchor: "middle" }),
  );
  return { items, height: foot + LINE + 2 };
}

/** The ways holes go, near ones together, each with its letters and degrees. */
function waysOf(piece: Piece): { angle: number; labels: string[] }[] {
  const exact = new Map<string, { angle: number; letters: string[] }>();
  for (const { letter, round = 0 } of piece.mortises) {
    const degrees = `${Number((((round * 180) / Math.PI + 360) % 360).toFixed(1)) % 360}°`;
    const way = exact.get(degrees) ?? { angle: round, letters: [] };
    way.letters.push(letter);
    exact.set(degrees, way);
  }
  const ways: { angle: number; labels: string[] }[] = [];
  for (const [degrees, { angle, letters }] of exact) {
    const label = `${letters.join(" ")}  ${degrees}`;
    const near = ways.find((way) => Math.abs(way.angle - angle) < NEAR);
    if (near) near.labels.push(label);
    else ways.push({ angle, labels: [label] });
  }
  return ways;
}
