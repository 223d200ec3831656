/**
 * Pages as files: one PDF, or an SVG for each.
 */
import type { LetterFiles } from "../../drawing/markout/letters/files.ts";
import { Letters } from "../../drawing/markout/letters/letters.ts";
import type { Page } from "../../drawing/markout/page.ts";
import { pagesToPdf } from "../../drawing/markout/pdf.ts";
import { pageToSvg } from "../../drawing/markout/svg.ts";

export type PageFormat = "pdf" | "svg";

export interface Made {
  pages: number;
  /** Pages that are true only at full size. */
  fullSize: number;
  /** One PDF, or an SVG for each page; names without a folder. */
  files: { name: string; bytes: Uint8Array }[];
}

/** Hears how far it has come; what it gives is waited for. */
export type Told = (done: number, of: number) => void | Promise<void>;

interface PagesAs {
  /** The chair's. */
  title: string;
  /** The kind of pages: `marking out`. */
  what: string;
  format: PageFormat;
  date: Date;
  /** Embedded in a PDF; an SVG is shown with what its reader has. */
  letters?: LetterFiles;
}

export async function pageFiles(
  pages: readonly Page[],
  { title, what, format, date, letters }: PagesAs,
  told?: Told,
): Promise<Made> {
  const counted = { pages: pages.length, fullSize: pages.filter(({ fullSize }) => fullSize).length };
  if (format === "pdf") {
    const bytes = await pagesToPdf(pages, {
      title: `${title}: ${what}`,
      date,
      ...(letters && { letters: new Letters(letters) }),
      made: (done) => told?.(done, pages.length),
    });
    return { ...counted, files: [{ name: `${what.replaceAll(" ", "-")}.pdf`, bytes }] };
  }
  const files: Made["files"] = [];
  for (const [k, page] of pages.entries()) {
    const bytes = new TextEncoder().encode(pageToSvg(page, title));
    files.push({ name: fileName(page, k, pages.length), bytes });
    await told?.(k + 1, pages.length);
  }
  return { ...counted, files };
}

/** `03-seat-front.svg`: in the order of the pages, safe on any disk. */
function fileName({ name }: Page, index: number, count: number): string {
  const number = String(index + 1).padStart(Math.max(2, String(count).length), "0");
  const plain = name.replace(/[^a-z0-9.]+/gi, "-").replace(/^[-.]+|[-.]+$/g, "");
  return `${number}-${plain || "page"}.svg`;
}
