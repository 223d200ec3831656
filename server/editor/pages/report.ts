/**
 * What is read about a chair, as neither a terminal nor a page: sections of figures in columns and of sentences. Text of the maker's is as
 * written: whoever shows it makes it harmless.
 */
import { plain } from "../about/markdown.ts";

export interface Report {
  title: string;
  sections: Section[];
  /** Printed under all. */
  ending: string[];
}

export interface Section {
  heading: string;
  /** Rows of cells, or a sentence. */
  items: (readonly string[][] | string)[];
}

/** The report as Markdown. */
export function markdownOf(kind: string, { title, sections, ending }: Report): string {
  return `${[
    `# ${plain(title)}: ${kind}`,
    ...sections.flatMap(({ heading, items }) => [`## ${plain(heading)}`, ...items.map(itemMarkdown)]),
    ...ending.map((each) => `*${plain(each)}*`),
  ].join("\n\n")}\n`;
}

/** Rows become a table; it has no head, since each row begins with what it tells of. */
function itemMarkdown(item: readonly string[][] | string): string {
  if (typeof item === "string") return plain(item);
  const wide = Math.max(0, ...item.map((row) => row.length));
  if (wide === 0) return "";
  const line = (cells: readonly string[]) => `| ${cells.join(" | ")} |`;
  const cellsOf = (row: readonly string[]) =>
    Array.from({ length: wide }, (_, k) => unbroken(plain((row[k] ?? "").trim())));
  return [
    line(Array.from({ length: wide }, () => " ")),
    line(Array.from({ length: wide }, () => "---")),
    ...item.map((row) => line(cellsOf(row))),
  ].join("\n");
}

/** A figure alone in its cell stays on one line with its unit. */
const unbroken = (cell: string): string =>
  /^[\d−-][^ ]* [a-zA-Z°%²]+$/.test(cell) ? cell.replace(" ", "\u00a0") : cell;
