/**
 * Cells laid along a strip with defects in it: past them, and over them where a defect falls beside the pieces or under a hidden face.
 */
import { piecesUsed } from "./cells.ts";
import { hiddenIn } from "./hidden.ts";
import type { Chosen, Placed, Stretch } from "./strip.ts";
import type { Box } from "./wood.ts";

/** Places tried for a strip before the best so far is kept. */
const MOST_TRIED = 60;

interface Strip extends Stretch {
  y: number;
  saw: number;
  /** Those that lie in the strip. */
  defects: readonly Box[];
}

/** The chosen cells in an order and at places where no defect spoils one; those that find no place are left out. Worth most. */
export function laidAround(
  { cells }: Pick<Chosen, "cells">,
  strip: Strip,
  worth: (one: Chosen["cells"][number]) => number,
): Placed[] {
  const end = strip.x + strip.long;
  const jumps = strip.defects.map(({ x, long }) => x + long).sort((a, b) => a - b);
  const sorted = [...cells].sort((a, b) => b.cell.long - a.cell.long);
  const all = sorted.reduce((sum, each) => sum + worth(each), 0);
  let best: { placed: Placed[]; worth: number } = { placed: [], worth: 0 };
  let tried = 0;
  const go = (x: number, left: Chosen["cells"], placed: Placed[], sum: number): void => {
    if (sum > best.worth) best = { placed, worth: sum };
    if (tried++ >= MOST_TRIED || best.worth >= all - 1e-9) return;
    const seen = new Set<unknown>();
    for (const one of left) {
      const { cell, used } = one;
      if (seen.has(cell) || x + cell.long > end + 1e-9) continue;
      seen.add(cell);
      if (!fitsAt(one, x, strip)) continue;
      const rest = left.filter((other) => other !== one);
      go(x + cell.long + strip.saw, rest, [...placed, { cell, x, used }], sum + worth(one));
    }
    const next = jumps.find((jump) => jump > x + 1e-9 && jump < end);
    if (next !== undefined && left.length > 0) go(next, left, placed, sum);
  };
  go(strip.x, sorted, [], 0);
  return best.placed;
}

const fitsAt = ({ cell, used }: Chosen["cells"][number], x: number, { y, defects }: Strip): boolean => {
  const there = defects.filter((box) => box.x < x + cell.long && box.x + box.long > x);
  return (
    there.length === 0 ||
    piecesUsed(cell.pieces, cell.count, used).every(
      (piece) => hiddenIn(placedAt(piece, x, y), there) !== undefined,
    )
  );
};

const placedAt = (piece: Placed["cell"]["pieces"][number], x: number, y: number) => ({
  ...piece,
  x: piece.x + x,
  y: piece.y + y,
  ...(piece.outline && { outline: piece.outline.map(([u, v]) => [u + x, v + y] as const) }),
});
