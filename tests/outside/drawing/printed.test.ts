/**
 * The PDF as it is printed: pages rasterised by poppler (`pdftoppm`, an independent reader of PDF) at 400 dots to the inch, and lines on
 * them measured. The figures beside them come from the chair's text.
 */
import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { type MarkoutOptions, markoutPages } from "../../../server/drawing/markout/pages.ts";
import { pagesToPdf } from "../../../server/drawing/markout/pdf.ts";
import { sampleChair } from "../../server/drawing/chairs.ts";

const DPI = 400;
const MM = 25.4 / DPI;
/** Darker than this is a line, not a fill. */
const INK = 110;
/** mm, as the checks ask for. */
const CLOSE = 0.1;

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "printed-"));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

class Raster {
  readonly width: number;
  readonly height: number;
  private readonly grey: Uint8Array;

  /** A binary PGM. */
  constructor(bytes: Uint8Array) {
    const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(Buffer.from(bytes.subarray(0, 64)).toString("latin1"))!;
    this.width = Number(head[1]);
    this.height = Number(head[2]);
    this.grey = bytes.subarray(head[0].length);
  }

  /** Middles of the lines that cross a level row, mm from the left, between two places. */
  across(y: number, from: number, to: number): number[] {
    const row = Math.round(y / MM);
    return this.lines(from, to, (k) => this.grey[row * this.width + k]!);
  }

  /** The same down a column, mm from the top. */
  down(x: number, from: number, to: number): number[] {
    const column = Math.round(x / MM);
    return this.lines(from, to, (k) => this.grey[k * this.width + column]!);
  }

  private lines(from: number, to: number, at: (k: number) => number): number[] {
    const found: number[] = [];
    let start = -1;
    for (let k = Math.round(from / MM); k <= Math.round(to / MM); k++) {
      const dark = at(k) < INK;
      if (dark && start < 0) start = k;
      if (!dark && start >= 0) {
        found.push(((start + k) / 2) * MM);
        start = -1;
      }
    }
    return found;
  }
}

/** The named page of a sample's marking out, as paper. */
async function printed(sample: string, options: MarkoutOptions, ...names: string[]): Promise<Raster[]> {
  const pages = markoutPages(sampleChair(sample), options);
  const bytes = await pagesToPdf(pages, { title: "Printed", date: new Date(0) });
  const pdf = join(folder, "sheets.pdf");
  writeFileSync(pdf, bytes);
  return names.map((name) => {
    const number = String(pages.findIndex((page) => page.name === name) + 1);
    const stem = join(folder, `page-${number}`);
    execFileSync("pdftoppm", [
      "-r",
      String(DPI),
      "-gray",
      "-f",
      number,
      "-l",
      number,
      "-singlefile",
      pdf,
      stem,
    ]);
    return new Raster(readFileSync(`${stem}.pgm`));
  });
}

const gaps = (places: readonly number[]): number[] => places.slice(1).map((x, k) => x - places[k]!);
const near = (found: number | undefined, wanted: number, what: string) =>
  expect(Math.abs((found ?? Number.NaN) - wanted), `${what}: ${found} for ${wanted} mm`).toBeLessThan(CLOSE);

describe.each(["a4", "letter"] as const)("printed on %s", (paper) => {
  const sheet = paper === "a4" ? [297, 210] : [279.4, 215.9];

  it("the check square is 100 mm each way", { timeout: 60_000 }, async () => {
    const [page] = await printed("boathouse-mess-chair", { paper }, "check");
    near(page!.width * MM, sheet[0]!, "width of the paper");
    near(page!.height * MM, sheet[1]!, "height of the paper");
    // A row and a column through the square, clear of its graduations and its words.
    const [left, right] = page!.across(45, 14, 125);
    near(right! - left!, 100, "across");
    const [top, bottom] = page!.down(30, 14, 125);
    near(bottom! - top!, 100, "down");
    // Its graduations, along the foot.
    const ticks = gaps(page!.across(bottom! - 1, left! - 1, right! + 1));
    expect(ticks).toHaveLength(10);
    for (const tick of ticks) near(tick, 10, "a graduation");
  });

  it("a post's template is as thick as its post", { timeout: 60_000 }, async () => {
    const [page] = await printed("boathouse-mess-chair", { paper }, "back template 1");
    // Section 36 x 36, straight from 125 up: the page's middle.
    const lines = page!.down(180, 14, sheet[1]! - 40);
    near(lines[1]! - lines[0]!, 36, "the back post's depth");
  });

  it("an arched rail's template is right on one page and over two", { timeout: 60_000 }, async () => {
    const [one, two] = await printed(
      "boathouse-mess-chair",
      { paper },
      "seat-front template 1",
      "seat-front template 2",
    );
    // A row through the tenon and clear of the arch: the tenon's end, the shoulder, the line to join the next page by.
    const row = 44;
    const [tip, shoulder] = one!.across(row, 14, 60);
    near(shoulder! - tip!, 28, "the tenon's length");
    const seam = sheet[0]! - 13 - 7.5;
    const [onOne] = one!.across(seamRow(one!, seam), seam - 1, seam + 1);
    const [onTwo] = two!.across(seamRow(two!, 20.5), 19.5, 21.5);
    const [far] = two!.across(row, 24, 200);
    // Front posts stand 410 between centre lines and are 40 thick.
    near(onOne! - shoulder! + (far! - onTwo!), 370, "between the shoulders, over two pages");
  });

  it("a story stick has its mortises where the chair has its rails", { timeout: 60_000 }, async () => {
    const [page] = await printed("boathouse-mess-chair", { paper }, "sticks front back 1");
    // The lane of the back face, third of four: D1, then the stretcher's mortise.
    const rod = 13 + 8 + 6.5;
    const lane = rod + 2.5 * 4.5;
    const lines = page!.across(lane - 1.6, 25, 230);
    const wide = gaps(lines).find((gap) => gap > 15 && gap < 30);
    // The stretcher is 40 wide less 12 and 6.
    near(wide, 22, "the stretcher's mortise");
    const from = lines[gaps(lines).indexOf(wide!)]!;
    // Up 190 less the shoulder of 12 is the mortise's top, 178 up its leg, whose foot is on the floor but for the trim.
    // The datum alone stands out above the stick.
    const [datum] = page!.across(rod - 0.8, 25, 60);
    near(from + wide! - datum!, 178, "from the floor to the mortise's top");
  });
});

/** A row where a broken line has ink. */
function seamRow(page: Raster, x: number): number {
  const [dash] = page.down(x, 14, 60);
  return dash!;
}
