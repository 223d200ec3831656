/**
 * The search for where labels stand: each where it lies on no other label and, if it can, on no line.
 */
import type { Point } from "../../../../server/drawing/sheet.ts";
import { type Box, boxOf, createLines, crosses, holds, type Lines, meet } from "./boxes.ts";
import { ASCENT, DESCENT, LINE } from "./type-scale.ts";

/** Words at a place: the foot of the first line at its anchor. */
export interface Stand {
  lines: readonly string[];
  at: Point;
  anchor: "start" | "middle" | "end";
  /** They run upward, read from the right. */
  upright?: true;
  box: Box;
  /** A fine line from them to what they tell of. */
  leader?: readonly [Point, Point];
}

export interface Label {
  /** What it tells of, such as a class of the page. */
  kind: string;
  /** Height of its letters. */
  size: number;
  /** Where it may stand, the best first. */
  stands: () => Iterable<Stand>;
  /** It is left out where every stand is on a line; others then take the one on fewest lines. */
  optional?: true;
  /** What it keeps off beside lines, if it can. */
  shuns?: (box: Box) => boolean;
  /** The part that it tells of, and the view that it belongs to. */
  of?: string;
  view?: string;
}

export interface Placed extends Stand {
  label: Label;
}

/** Around a label nothing else is lettered, px. */
const AIR = 2;

/** What is on the sheet already while labels are placed. */
export interface Table {
  lines: Lines;
  /** Boxes of all that is lettered. */
  taken: Box[];
  /** Within this everything stands. */
  bounds: Box;
}

export const createTable = (bounds: Box): Table => ({ lines: createLines(), taken: [], bounds });

/** Whether a box is on nothing that is lettered. */
export const isFree = ({ taken, bounds }: Table, box: Box): boolean =>
  holds(bounds, box) && !taken.some((other) => meet(box, other, AIR));

/** Places labels one after the other, those that matter most first; those without a free place are left out. */
export function place(table: Table, labels: readonly Label[]): Placed[] {
  return labels.flatMap((label) => {
    const found = bestOf(table, label);
    if (!found) return [];
    table.taken.push(found.box);
    if (found.leader) table.lines.put(...found.leader);
    return [{ ...found, label }];
  });
}

/** What is on no line and yet on what is shunned comes before what is on a line. */
const HALF_ON = 0.5;

/** The first stand on nothing; else, where it must stand somewhere, the one on fewest lines. */
function bestOf(table: Table, { stands, optional, shuns }: Label): Stand | undefined {
  let best: Stand | undefined;
  let fewest = optional ? 1 : Infinity;
  for (const stand of stands()) {
    if (!isFree(table, stand.box) || !leaderIsClear(table, stand)) continue;
    const through = table.lines.through(stand.box, Math.ceil(fewest));
    if (through >= fewest) continue;
    if (through === 0 && !shuns?.(stand.box)) return stand;
    fewest = through === 0 ? HALF_ON : through;
    best = stand;
  }
  return best;
}

const leaderIsClear = ({ taken }: Table, { leader }: Stand): boolean =>
  !leader || !taken.some((box) => crosses(leader[0], leader[1], box));

/** Lines of words at a place, with the room that they take. */
export function standOf(
  lines: readonly string[],
  at: Point,
  {
    size,
    wide,
    anchor = "middle",
    upright,
  }: { size: number; wide: number; anchor?: Stand["anchor"]; upright?: true },
): Stand {
  const back = anchor === "start" ? 0 : anchor === "middle" ? wide / 2 : wide;
  const deep = (lines.length - 1) * LINE * size;
  // As written from left to right; upright words are that, turned a quarter about their place.
  const flat = { left: -back, right: wide - back, top: -ASCENT * size, foot: DESCENT * size + deep };
  const box = upright
    ? boxOf([
        [at[0] + flat.top, at[1] - flat.left],
        [at[0] + flat.foot, at[1] - flat.right],
      ])
    : boxOf([
        [at[0] + flat.left, at[1] + flat.top],
        [at[0] + flat.right, at[1] + flat.foot],
      ]);
  return { lines, at, anchor, ...(upright && { upright }), box };
}
