/**
 * Curved parts as they lie in each other on a board, at full size: templates to trace them from.
 */
import type { Plan, PlannedPiece } from "../../boards/plan.ts";
import { line, type Point, SMALL, words } from "../markout/page.ts";
import type { FullSize } from "../markout/tiles.ts";

export interface NestTemplate {
  part: string;
  count: number;
  drawing: FullSize;
}

/** White round the drawing, mm. */
const CLEAR = 2;

/** Each way that curved parts lie on the boards of a plan, once. */
export function nestTemplates({ boards }: Plan): NestTemplate[] {
  const made = new Map<string, NestTemplate>();
  for (const { pieces } of boards)
    for (const nest of nestsOf(pieces.filter(({ outline }) => outline))) {
      const template = templateOf(nest);
      const { width, height } = template.drawing;
      const key = `${template.part} ${template.count} ${width.toFixed(0)} ${height.toFixed(0)}`;
      if (!made.has(key)) made.set(key, template);
    }
  return [...made.values()].sort((a, b) => a.part.localeCompare(b.part) || b.count - a.count);
}

/** Pieces of one part whose boxes reach into each other, at one height in the board. */
function nestsOf(pieces: readonly PlannedPiece[]): PlannedPiece[][] {
  const nests: PlannedPiece[][] = [];
  for (const piece of pieces.filter(({ z }) => z === 0)) {
    const touching = nests.filter((nest) =>
      nest.some((other) => other.part === piece.part && overlap(other, piece)),
    );
    for (const nest of touching) nests.splice(nests.indexOf(nest), 1);
    nests.push([...touching.flat(), piece]);
  }
  return nests;
}

const overlap = (a: PlannedPiece, b: PlannedPiece): boolean =>
  a.x < b.x + b.long && b.x < a.x + a.long && a.y < b.y + b.wide && b.y < a.y + a.wide;

function templateOf(nest: readonly PlannedPiece[]): NestTemplate {
  const spots = nest.flatMap(({ outline }) => outline!);
  const left = Math.min(...spots.map(([x]) => x)) - CLEAR;
  const top = Math.max(...spots.map(([, y]) => y)) + CLEAR;
  const to = ([x, y]: Point): Point => [x - left, top - y];
  const { part } = nest[0]!;
  const items = nest.flatMap(({ outline, x, turned }) => {
    const start = outline!.find(([u]) => u === x) ?? outline![0]!;
    return [
      line(outline!.map(to), "outline", { closed: true }),
      words([to(start)[0] + 6, to(start)[1] - 3], `${part}${turned ? ", turned" : ""}`, SMALL),
    ];
  });
  const width = Math.max(...spots.map(([x]) => x)) - left + CLEAR;
  const height = top - Math.min(...spots.map(([, y]) => y)) + CLEAR;
  return { part, count: nest.length, drawing: { width, height, items, captions: [] } };
}
