/**
 * The outline of stuff that is not plain, as tables of offsets beside each other.
 */
import type { Block } from "./faces.ts";
import { widthOf } from "./lettering.ts";
import { moved, SMALL, words } from "./page.ts";
import { told } from "./sheet/printer.ts";
import type { SheetMark, SheetPart } from "./sheet/sheet.ts";
import { LINE, paragraphs, tableBlock } from "./table.ts";
import { curveLine, marksOf } from "./wording.ts";

/** Between two tables, mm. */
const GAP = 7;

/** What the outline's offsets run from, then the rows; in several blocks where one would be higher than `high`. */
export function outlineBlocks(sheet: SheetPart, wide: number, high: number): Block[] {
  const rows = marksOf(sheet, "station");
  const own = marksOf(sheet, "datum").find(({ figures }) => figures.line);
  if (rows.length === 0 || !own?.figures.faces) return [];
  const names = [...new Set(rows.flatMap(({ figures }) => Object.keys(figures)))].filter(
    (name) => name !== "at",
  );
  const columns = told(own, "faces")
    .split(", ")
    .flatMap((face) => {
      const split = names.filter((name) => name.startsWith(`${face} at `));
      return split.length ? split : names.filter((name) => name === face);
    });
  // Turned stuff has its diameters in the drawing.
  if (columns.length === 0) return [];
  const even = columns.filter((name) => rows.every((row) => cell(row, name) === cell(rows[0]!, name)));
  const shown = columns.filter((name) => !even.includes(name));
  const steady = even.length
    ? ` ${even.map((name) => `${name} ${cell(rows[0]!, name)}`).join(", ")} throughout.`
    : "";
  const square = sheet.stock.section ? ", each face square to the next" : "";
  const says = [
    `How far each face is from the ${told(own, "line")} at ${told(own, "name")}, run on straight; minus is beyond it. Straight, or a fair curve, from mark to mark${square}.${steady}`,
    ...marksOf(sheet, "arch", "bow").map(curveLine),
  ];
  const text = paragraphs(says, wide);
  const headings = ["at", ...shown];
  const cells = rows.map((row) => ["at", ...shown].map((name) => cell(row, name)));
  const width =
    headings.reduce((sum, heading, k) => {
      const most = Math.max(widthOf(heading, SMALL, true), ...cells.map((row) => widthOf(row[k]!, SMALL)));
      return sum + most + 2.2;
    }, 0) + GAP;
  const sets = Math.max(1, Math.min(4, Math.floor((wide + GAP) / width), Math.ceil(cells.length / 4)));
  const most = Math.max(1, Math.floor((high - text.height - 12) / LINE)) * sets;
  const title = { items: [words([0, 3.2], "Outline", SMALL + 1, { bold: true })], height: 4 };
  const blocks: Block[] = [];
  for (let k = 0; k < cells.length; k += most) {
    const some = cells.slice(k, k + most);
    const each = Math.ceil(some.length / sets);
    const tables = Array.from({ length: Math.ceil(some.length / each) }, (_, set) =>
      tableBlock("", headings, some.slice(set * each, (set + 1) * each), width - GAP),
    );
    const above = k === 0 ? [title, text] : [continued];
    blocks.push(stacked([...above, beside(tables, width)]));
  }
  return blocks;
}

const continued: Block = {
  items: [words([0, 3.2], "Outline, continued", SMALL + 1, { bold: true })],
  height: 4,
};

const beside = (blocks: readonly Block[], step: number): Block => ({
  items: blocks.flatMap(({ items }, set) => items.map((item) => moved(item, set * step, 0))),
  height: Math.max(...blocks.map(({ height }) => height)),
});

function stacked(blocks: readonly Block[]): Block {
  let height = 0;
  const items = blocks.flatMap((block) => {
    const own = block.items.map((item) => moved(item, 0, height));
    height += block.height;
    return own;
  });
  return { items, height };
}

/** A face's own figure where its arrises have none apart. */
const cell = (row: SheetMark, name: string): string => told(row, name) || told(row, name.split(" at ")[0]!);
