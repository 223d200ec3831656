/**
 * Both ends of a piece beside each other: where the line crosses each arris, the bevels to set, the tenon.
 */
import type { CutEnd, Piece } from "../../joinery/pieces/piece.ts";
import type { Block } from "./faces.ts";
import type { Figures } from "./figures.ts";
import { type Item, moved, SMALL, words } from "./page.ts";
import { paragraphs, tableBlock } from "./table.ts";
import { bevel, endNamed, tenonLines } from "./wording.ts";

/** A line that crosses a face with less fall than this is square, mm. */
const LEAST = 0.1;

export function endsBlock(piece: Piece, figures: Figures, wide: number): Block {
  const each = (wide - 8) / 2;
  const blocks = ([0, 1] as const).map((which) => endBlock(piece, which, figures, each));
  const items = blocks.flatMap(({ items: own }, k) => own.map((item) => moved(item, k * (each + 8), 0)));
  return { items, height: Math.max(...blocks.map(({ height }) => height)) };
}

function endBlock(piece: Piece, which: 0 | 1, figures: Figures, wide: number): Block {
  const end = piece.ends[which]!;
  const name = endNamed(piece, which);
  const title = `${name.charAt(0).toUpperCase()}${name.slice(1)}${end.enters ? `, into ${end.enters}` : ""}`;
  const items: Item[] = [words([0, 3.2], title, SMALL + 1, { bold: true })];
  let y = 4;
  const add = (block: Block) => {
    items.push(...block.items.map((item) => moved(item, 0, y)));
    y += block.height;
  };
  const from = piece.datums.length > 1 ? ` from ${end.datum}` : "";
  if (end.cuts.length && !isSquare(end)) {
    const rows = end.bevels.map(({ face, from: stock, angle }, k) => {
      // The arris shared with the face that the stock lies on, and the other one of this face.
      const next = end.bevels[(k + 1) % 4]!.face === stock;
      const [near, far] = [end.cuts[next ? k : (k + 3) % 4]!, end.cuts[next ? (k + 3) % 4 : k]!];
      const [degrees, slope] = Math.abs(near.at - far.at) < LEAST ? ["square", ""] : bevel(angle);
      return [face, figures.print(near.at), figures.print(far.at), degrees, slope, `on the ${stock}`];
    });
    add(tableBlock("", ["line on", `at the stock${from}`, "across", "bevel", "", "stock"], rows, wide));
  } else if (end.cuts.length) {
    const { at } = end.cuts[0]!;
    const place = figures.steps(at) === 0 ? ` at ${end.datum}` : `, ${figures.print(at)} from ${end.datum}`;
    add(paragraphs([`Square all round${place}.`], wide));
  }
  if (end.slant) {
    const [degrees, slope] = bevel(end.slant.angle);
    const round = (((end.slant.round * 180) / Math.PI + 360) % 360).toFixed(0);
    if (slope)
      add(
        paragraphs(
          [`Cut at ${degrees} to the axis (${slope} off square), longest at ${round}° round from the front.`],
          wide,
        ),
      );
  } else if (piece.turned && !end.enters) add(paragraphs(["Cut square."], wide));
  add(paragraphs(tenonLines(piece, end, figures), wide));
  return { items, height: y };
}

const isSquare = ({ cuts }: CutEnd): boolean => cuts.every(({ at }) => Math.abs(at - cuts[0]!.at) < LEAST);
