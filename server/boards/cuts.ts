/**
 * The saw cuts of a laid-out board, in the order to make them.
 */

import type { CutPiece } from "./cells.ts";
import { piecesUsed } from "./cells.ts";
import type { Layout, Section, Strip } from "./layout.ts";
import type { Box } from "./wood.ts";

/**
 * A cut: across the board at x, along it at y, through its thickness at z, or along outlines. `at` is the near side of the kerf; `from`
 * and `to` say how far it goes: of a crosscut and an outline across, of a rip and a resaw along. mm.
 */
export interface SawCut {
  is: "crosscut" | "rip" | "resaw" | "outline";
  at: number;
  from: number;
  to: number;
}

const NEAR = 1e-6;

/** Ends first, then sections, strips, cells, and what lies in them. */
export function cutsOf(
  layout: Layout,
  board: { long: number; wide: number; clear: Box },
  saw: number,
): SawCut[] {
  const { clear, wide } = board;
  const cuts: SawCut[] = [];
  const cross = (at: number) => cuts.push({ is: "crosscut", at, from: 0, to: wide });
  // The kerf of the last cut, or the board's own end.
  let last = 0;
  if (clear.x > NEAR) {
    cross(clear.x - saw);
    last = clear.x;
  }
  for (const section of layout.sections) {
    const start = section.x - saw;
    if (section.x > NEAR && section.x > last + NEAR) cross(start);
    const end = section.x + section.long;
    if (end < board.long - NEAR) cross(end);
    last = end + saw;
    sectionCuts(section, clear, saw, cuts);
  }
  return cuts;
}

function sectionCuts(section: Section, clear: Box, saw: number, cuts: SawCut[]): void {
  const { x: from, long } = section;
  const to = from + long;
  let last = Number.NEGATIVE_INFINITY;
  const rip = (at: number) => {
    if (at > last + NEAR) cuts.push({ is: "rip", at, from, to });
    last = Math.max(last, at);
  };
  for (const strip of section.strips) {
    const edge = strip.y > clear.y + NEAR || clear.y > NEAR;
    if (edge) rip(strip.y - saw);
    const top = strip.y + strip.wide;
    if (top < clear.y + clear.wide - NEAR || clear.y > NEAR) rip(top);
  }
  for (const strip of section.strips) stripCuts(strip, section, saw, cuts);
}

function stripCuts(strip: Strip, section: Section, saw: number, cuts: SawCut[]): void {
  const [from, to] = [strip.y, strip.y + strip.wide];
  let last = section.x;
  const placed = [...strip.placed].sort((a, b) => a.x - b.x);
  for (const { cell, x } of placed) {
    if (x - saw > last + NEAR) cuts.push({ is: "crosscut", at: x - saw, from, to });
    const end = x + cell.long;
    if (end < section.x + section.long - NEAR) cuts.push({ is: "crosscut", at: end, from, to });
    last = end;
  }
  for (const { cell, x, used } of placed) {
    const pieces = piecesUsed(cell.pieces, cell.count, used).map((piece) => ({
      ...piece,
      x: piece.x + x,
      y: piece.y + strip.y,
    }));
    cellCuts(pieces, { x, y: strip.y, long: cell.long, wide: strip.wide }, saw, cuts);
  }
}

/** Within a cell: first the cuts right across it that part its pieces, then each piece to its size, then its layers. */
function cellCuts(pieces: readonly CutPiece[], box: Box, saw: number, cuts: SawCut[]): void {
  const seen = new Set<string>();
  const once = (cut: SawCut) => {
    const key = `${cut.is} ${cut.at.toFixed(3)} ${cut.from.toFixed(3)}`;
    if (!seen.has(key)) cuts.push(cut);
    seen.add(key);
  };
  const plain = pieces.filter(({ outline }) => !outline || pieces.length === 1 || apart(pieces));
  const endToEnd = plain.some(({ x }) => x > box.x + NEAR);
  const [first, second] = endToEnd ? ([crossAfter, ripAbove] as const) : ([ripAbove, crossAfter] as const);
  for (const piece of plain) first(piece, box, box, once);
  for (const piece of plain) {
    const own = endToEnd
      ? { ...box, x: piece.x, long: piece.long }
      : { ...box, y: piece.y, wide: piece.wide };
    second(piece, box, own, once);
  }
  for (const piece of pieces) {
    if (piece.outline) once({ is: "outline", at: piece.x, from: piece.y, to: piece.y + piece.wide });
    if (piece.z > NEAR) once({ is: "resaw", at: piece.z - saw, from: piece.x, to: piece.x + piece.long });
  }
}

type Once = (cut: SawCut) => void;

function ripAbove(piece: CutPiece, { y, wide }: Box, { x, long }: Box, once: Once): void {
  const top = piece.y + piece.wide;
  if (top < y + wide - NEAR) once({ is: "rip", at: top, from: x, to: x + long });
}

function crossAfter(piece: CutPiece, { x, long }: Box, { y, wide }: Box, once: Once): void {
  const end = piece.x + piece.long;
  if (end < x + long - NEAR) once({ is: "crosscut", at: end, from: y, to: y + wide });
}

/** Whether the boxes of curved pieces lie clear of each other, so that straight cuts part them. */
const apart = (pieces: readonly CutPiece[]): boolean =>
  pieces.every((a, k) =>
    pieces.every(
      (b, n) =>
        n <= k ||
        a.z !== b.z ||
        a.x + a.long <= b.x + NEAR ||
        b.x + b.long <= a.x + NEAR ||
        a.y + a.wide <= b.y + NEAR ||
        b.y + b.wide <= a.y + NEAR,
    ),
  );
