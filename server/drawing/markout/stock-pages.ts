/**
 * The stock that the parts are made from: the blank of each, and all of them by thickness and timber.
 */
import { stockFor } from "../../boards/questions.ts";
import type { Chair } from "../../chair/chair.ts";
import { stripCorners } from "../../chair/rails/rests.ts";
import { withoutSides } from "../../design/identity.ts";
import { printLength, printLengthUp } from "../../design/units.ts";
import { dot, sub } from "../../geometry/vec.ts";
import type { Piece } from "../../joinery/pieces/piece.ts";
import { inAll, kindOf, volumeText } from "../boards/words.ts";
import { moved } from "./page.ts";
import type { Paper } from "./paper.ts";
import { roomOn, type Unnumbered } from "./sheet-page.ts";
import { paragraphs, tableBlock } from "./table.ts";

/** A piece with the blank that its first part is planed from; as it is where the stock list has none for it. */
export function withBlank(chair: Chair, piece: Piece): Piece {
  const { lines } = stockFor(chair);
  const line = lines.find(({ members }) => members.includes(piece.parts[0]!.name));
  if (!line) return piece;
  const { blank, sawn } = line;
  const staves = line.glued > 0 ? line.members.length : 1;
  const kind = kindOf(line);
  return {
    ...piece,
    // Ends are sawn to length: the sheet's own length, in its figures, is the one to keep.
    blank: {
      ...blank,
      long: Math.max(blank.long, piece.size.long),
      staves,
      ...(sawn !== undefined && { sawn }),
      ...(kind && { kind }),
    },
  };
}

/** Rows on one page. */
const ROWS = 33;
const GAP = 5;

/** All blanks by thickness and timber, with the volume of each thickness; no page for a chair of which nothing is sawn. */
export function stockPages(chair: Chair, paper: Paper): Unnumbered[] {
  const stock = stockFor(chair);
  const { units } = chair.design;
  const { wide } = roomOn(paper);
  const print = (mm: number) => printLength(mm, units);
  const size = ({ thick, wide: across, long }: { thick: number; wide: number; long: number }) =>
    [thick, across, long].map(print).join(" × ");
  const rows = stock.lines.map((line) => [
    line.sawn === undefined ? "not at hand" : print(line.sawn),
    line.timber?.species.replaceAll("-", " ") ?? "",
    line.name,
    String(line.number),
    size(line.finished),
    size(line.blank),
    volumeText([line], units),
    kindOf(line),
  ]);
  const headings = ["sawn", "timber", "part", "number", "finished", "blank", "volume", ""];
  return Array.from({ length: Math.ceil(rows.length / ROWS) }, (_, page): Unnumbered => {
    const table = tableBlock("", headings, rows.slice(page * ROWS, (page + 1) * ROWS), wide);
    const isLast = (page + 1) * ROWS >= rows.length;
    const foot = isLast
      ? paragraphs([...sums(chair), inAll(stock, units), allowed(chair), ...strips(chair)], wide).items
      : [];
    return {
      titles: {
        part: page > 0 ? "Stock, continued" : "Stock",
        about: stock.make === 1 ? "for one chair" : `for ${stock.make} chairs`,
        scale: "Thickness × width × length; the grain runs along the length.",
        caution:
          "Look at each board before you cut, and leave out what is not sound.\nSaws and planers hurt: work with guards, and by the maker's instructions.",
      },
      items: [...table.items, ...foot.map((item) => moved(item, 0, table.height + GAP))],
      page: { name: page > 0 ? `stock ${page + 1}` : "stock" },
    };
  });
}

/** One sentence for each thickness and timber. */
function sums(chair: Chair): string[] {
  const { lines } = stockFor(chair);
  const { units } = chair.design;
  const keyOf = ({ sawn, timber }: (typeof lines)[number]) => `${sawn ?? ""} ${timber?.species ?? ""}`;
  return [...new Set(lines.map(keyOf))].map((key) => {
    const some = lines.filter((line) => keyOf(line) === key);
    const [first] = some;
    const thick =
      first?.sawn === undefined ? "Of no thickness at hand" : `${printLength(first.sawn, units)} thick`;
    const wood = first?.timber ? `, ${first.timber.species.replaceAll("-", " ")}` : "";
    return `${thick}${wood}: ${volumeText(some, units)} as blanks.`;
  });
}

/** Strips that are fixed to rails, finished sizes: they come out of offcuts and are not among the blanks. */
function strips(chair: Chair): string[] {
  const print = (mm: number) => printLength(mm, chair.design.units);
  const found = new Map<string, number>();
  for (const rail of chair.rails.values()) {
    for (const strip of rail.strips ?? []) {
      const xs = ([0, 1] as const).flatMap((which) =>
        stripCorners(rail, strip, which).map((corner) => dot(sub(corner, rail.start), rail.along)),
      );
      const { wide, thick } = strip.design.value;
      const long = printLengthUp(Math.max(...xs) - Math.min(...xs), chair.design.units);
      const bent = rail.bow ? ", to follow its curve" : "";
      const text = `${print(thick)} × ${print(wide)} × ${long}, strip of ${withoutSides(rail.name)}${bent}`;
      found.set(text, (found.get(text) ?? 0) + 1);
    }
  }
  return [...found].map(([text, number]) => `Besides, finished, from offcuts: ${number} of ${text}.`);
}

function allowed(chair: Chair): string {
  const { plane, ends, saw } = stockFor(chair).allowances;
  const print = (mm: number) => printLength(mm, chair.design.units);
  return `Allowed: ${print(plane)} off each face and each edge in planing, ${print(saw)} for each cut, ${print(ends)} off each end of a board.`;
}
