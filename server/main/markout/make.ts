/**
 * Marking-out sheets as files. Loaded only when they are asked for: what writes PDF is large.
 */
import type { Chair } from "../../chair/chair.ts";
import type { Page } from "../../drawing/markout/page.ts";
import { type MarkoutOptions, markoutPages } from "../../drawing/markout/pages.ts";
import { pagesToPdf } from "../../drawing/markout/pdf.ts";
import { pageToSvg } from "../../drawing/markout/svg.ts";

export type MarkoutFormat = "pdf" | "svg";

export interface Made {
  pages: number;
  /** Pages that are true only at full size. */
  fullSize: number;
  /** One PDF, or an SVG for each page; names without a folder. */
  files: { name: string; bytes: Uint8Array }[];
}

/** Hears how far it has come; what it gives is waited for. */
type Told = (done: number, of: number) => void | Promise<void>;

export async function makeMarkout(
  chair: Chair,
  options: MarkoutOptions & { format: MarkoutFormat; date: Date },
  told?: Told,
): Promise<Made> {
  const pages = markoutPages(chair, options);
  const title = chair.design.title?.value ?? "Chair";
  const counted = { pages: pages.length, fullSize: pages.filter(({ fullSize }) => fullSize).length };
  if (options.format === "pdf") {
    const bytes = await pagesToPdf(pages, {
      title: `${title}: marking out`,
      date: options.date,
      made: (done) => told?.(done, pages.length),
    });
    return { ...counted, files: [{ name: "markout.pdf", bytes }] };
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
