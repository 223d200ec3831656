/**
 * A post's faces under each other in a room of some width: what is lettered on each, clear of all else, with leaders to the mouths. Pixels.
 */
import type { Point } from "../../../server/drawing/sheet.ts";
import type { DrawingParams } from "../../../server/main/protocol.ts";
import { boxOf } from "./lettering/boxes.ts";
import { createTable, type Label, type Placed, place, type Stand, standOf } from "./lettering/search.ts";
import { ASCENT, DESCENT, EDGE, LINE, type Measure, OFF_LINE, STEP, TICK } from "./lettering/type-scale.ts";

export type Faces = NonNullable<DrawingParams["faces"]>;

export interface PostLaid {
  width: number;
  height: number;
  /** Pixels to the millimetre, and where each face's foot lies. */
  scale: number;
  faces: { face: Faces["faces"][number]; foot: Point }[];
  /** The measured line under all. */
  overall: { line: [Point, Point] };
  placed: Placed[];
}

/** Height of figures, and of the names of the faces. */
const FIGURES = 13;
/** At most so many pixels to the millimetre. */
const NEAREST = 2.5;

/** A narrower room is scrolled sideways, px: words then stand in more rows, not beyond the edge. */
const LEAST_WIDE = 320;

/** The faces laid out in a room so wide. */
export function postLaid(
  { overall, half, sections, faces }: Faces,
  room: number,
  measure: Measure,
): PostLaid {
  const width = Math.max(LEAST_WIDE, room);
  const names = Math.max(...faces.map(({ caption }) => measure(caption, FIGURES)));
  const left = EDGE + names + 3 * STEP;
  const long = overall.to - overall.from;
  const scale = Math.min(NEAREST, Math.max(0.1, (width - left - EDGE) / long));
  const across = half * scale;
  const row = FIGURES * LINE;
  const given = { scale, across, measure };
  const placed: Placed[] = [];
  const laid: PostLaid["faces"] = [];
  let y = STEP;
  const sectionRow = row + STEP;
  y += sectionRow;
  for (const [k, face] of faces.entries()) {
    // As many rows of words over it as its mouths need, found by trying.
    let more = k === 0 ? FOR_SECTIONS : 0;
    for (let rows = face.mouths.length > 0 ? 1 : 0; ; rows++) {
      const top = y + (rows > 0 ? rows * 2 * row + STEP : 0);
      const foot: Point = [left, top + across];
      const table = createTable(
        boxOf([
          [0, k === 0 ? 0 : y],
          [width, top + 2 * across + STEP],
        ]),
      );
      for (const { points, is } of face.strokes)
        if (is !== "hidden") table.lines.putAll(points.map(at(foot, scale)));
      const some = place(table, [
        nameLabel(face.caption, foot, measure),
        ...(k === 0 ? sections.map((section) => sectionLabel(section, face, foot, given)) : []),
        ...face.mouths.map((mouth) =>
          mouthLabel(mouth, foot, { ...given, top: y, farthest: rows < MOST_ROWS ? NEARBY : FARTHEST }),
        ),
      ]);
      const wanted = 1 + face.mouths.length;
      const found = some.filter(({ label }) => label.kind !== "section").length;
      if (found < wanted && rows < MOST_ROWS) continue;
      if (some.length < wanted + sections.length && more-- > 0) continue;
      placed.push(...some);
      laid.push({ face, foot });
      y = top + 2 * across + 2 * STEP;
      break;
    }
  }
  const line: [Point, Point] = [
    [left, y + row],
    [left + long * scale, y + row],
  ];
  const table = createTable(
    boxOf([
      [0, y],
      [width, y + row],
    ]),
  );
  placed.push(
    ...place(table, [
      {
        kind: "overall",
        size: FIGURES,
        stands: () => [
          words([overall.label], [(line[0][0] + line[1][0]) / 2, line[0][1] - OFF_LINE], measure),
        ],
      },
    ]),
  );
  return { width, height: y + row + 2 * TICK + STEP, scale, faces: laid, overall: { line }, placed };
}

/** More rows than this over a face are not tried, and so many more for the sections to be told too. */
const MOST_ROWS = 16;
const FOR_SECTIONS = 3;

/** Where a place of a face lies. */
export const at =
  ([x, y]: Point, scale: number) =>
  ([along, down]: Point): Point => [x + along * scale, y + down * scale];

const words = (
  lines: readonly string[],
  place: Point,
  measure: Measure,
  anchor: Stand["anchor"] = "middle",
): Stand =>
  standOf(lines, place, {
    size: FIGURES,
    wide: Math.max(...lines.map((line) => measure(line, FIGURES))),
    anchor,
  });

function nameLabel(caption: string, [, y]: Point, measure: Measure): Label {
  const foot = y + ((ASCENT - DESCENT) * FIGURES) / 2;
  return { kind: "caption", size: FIGURES, stands: () => [words([caption], [EDGE, foot], measure, "start")] };
}

interface Given {
  scale: number;
  across: number;
  measure: Measure;
}

/** What enters and where, over the face, with a leader down to the mouth. */
function mouthLabel(
  { part, label, at: [along, down] }: Faces["faces"][number]["mouths"][number],
  foot: Point,
  { scale, across, measure, top, farthest }: Given & { top: number; farthest: number },
): Label {
  const [x, y] = at(foot, scale)([along, down]);
  return {
    kind: "mouth-words",
    size: FIGURES,
    of: part,
    *stands() {
      const lowest = foot[1] - across - STEP - DESCENT * FIGURES;
      for (let up = lowest - LINE * FIGURES; up - ASCENT * FIGURES >= top; up -= 2 * LINE * FIGURES) {
        for (let off = 0; off <= farthest; off += 2 * STEP) {
          for (const side of off === 0 ? [0] : [-off, off]) {
            const stand = words([part, label], [x + side, up], measure);
            const bottom = stand.box.foot + 1;
            const from = Math.min(stand.box.right - STEP, Math.max(stand.box.left + STEP, x));
            yield {
              ...stand,
              leader: [
                [x, y],
                [from, bottom],
              ],
            };
          }
        }
      }
      // The figures tell where it is, should no leader find a way.
      for (let up = lowest - LINE * FIGURES; up - ASCENT * FIGURES >= top; up -= 2 * LINE * FIGURES)
        for (let off = 0; off <= farthest; off += 2 * STEP)
          for (const side of off === 0 ? [0] : [-off, off])
            yield words([part, label], [x + side, up], measure);
    },
  };
}

/** How far to a side words may stand of what they tell of, px: one more row is better than a leader from afar. */
const NEARBY = 120;
const FARTHEST = 600;

/** The section, over the first face, by a leader to where it is. */
function sectionLabel(
  { at: along, label }: Faces["sections"][number],
  face: Faces["faces"][number],
  foot: Point,
  { scale, across, measure }: Given,
): Label {
  const [x, edge] = [foot[0] + along * scale, foot[1] - across];
  const end = at(foot, scale)([along, edgeOver(face, along) ?? -across / scale]);
  return {
    kind: "section",
    size: FIGURES,
    optional: true,
    *stands() {
      for (let up = edge - STEP - DESCENT * FIGURES; up > ASCENT * FIGURES; up -= STEP) {
        for (let off = 0; off <= FARTHEST; off += 2 * STEP) {
          for (const side of off === 0 ? [0] : [off, -off]) {
            const stand = words([label], [x + side, up], measure);
            const from = Math.min(stand.box.right, Math.max(stand.box.left, x));
            yield {
              ...stand,
              leader: [end, [from, stand.box.foot + 1]],
            };
          }
        }
      }
    },
  };
}

/** How far up the face reaches at a place along it: the highest of its edges there. */
function edgeOver({ strokes }: Faces["faces"][number], along: number): number | undefined {
  const heights = strokes.flatMap(({ points, is }) =>
    is === "edge"
      ? points.slice(1).flatMap((to, k) => {
          const from = points[k]!;
          const [low, high] = from[0] < to[0] ? [from, to] : [to, from];
          if (along < low[0] || along > high[0] || low[0] === high[0]) return [];
          return [low[1] + ((high[1] - low[1]) * (along - low[0])) / (high[0] - low[0])];
        })
      : [],
  );
  return heights.length > 0 ? Math.min(...heights) : undefined;
}
