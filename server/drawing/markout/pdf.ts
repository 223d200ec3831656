/**
 * Pages as one PDF, by pdfkit: with letters that are embedded where their files are at hand, else with the standard fonts that every reader
 * has. Letters are made narrower to what the layout has them as, so that all pages are laid out alike.
 */
import * as pdfkit from "pdfkit";
import Helvetica from "pdfkit/standard-fonts/Helvetica";
import HelveticaBold from "pdfkit/standard-fonts/HelveticaBold";
import { widthOf } from "./lettering.ts";
import type { Letters } from "./letters/letters.ts";
import { type Item, type Page, POINT, pens } from "./page.ts";

/** Points in a millimetre. */
const MM = 72 / 25.4;

/** What the newer pdfkit has beyond its published types. */
interface Registry {
  default: new (options: PDFKit.PDFDocumentOptions) => PDFKit.PDFDocument;
  /** Only where fonts are not read from files. */
  registerStdFonts?(...fonts: unknown[]): void;
}
const { default: Document, registerStdFonts } = pdfkit as unknown as Registry;
registerStdFonts?.(Helvetica, HelveticaBold);

/** The bytes of a PDF of these pages, in order; `made` is told after each. The same pages and date give the same bytes. */
export async function pagesToPdf(
  pages: Iterable<Page>,
  {
    title,
    date,
    made,
    letters,
  }: {
    title: string;
    date: NonNullable<PDFKit.DocumentInfo["CreationDate"]>;
    made?: (count: number) => void | Promise<void>;
    /** Embedded; a PDF without them has the signs of western Europe alone. */
    letters?: Letters;
  },
): Promise<Uint8Array> {
  const document = new Document({
    autoFirstPage: false,
    margin: 0,
    info: { Title: plain(title), Creator: "Seatwright", CreationDate: date },
  });
  const chunks: Uint8Array[] = [];
  document.on("data", (chunk: Uint8Array) => chunks.push(chunk));
  const ended = new Promise<void>((resolve, reject) => {
    document.on("end", resolve);
    document.on("error", reject);
  });
  let count = 0;
  for (const { width, height, items } of pages) {
    document.addPage({ size: [width * MM, height * MM], margin: 0 });
    document.lineCap("round").lineJoin("round");
    for (const item of items) put(document, item, letters);
    count++;
    await made?.(count);
  }
  document.end();
  await ended;
  return joined(chunks);
}

type Pdf = PDFKit.PDFDocument;

function put(document: Pdf, item: Item, letters: Letters | undefined): void {
  if (item.is === "words") {
    if (letters) embed(document, item, letters);
    else write(document, item);
    return;
  }
  const { width, grey: ink, dash } = pens[item.pen];
  item.points.forEach(([x, y], k) => {
    if (k === 0) document.moveTo(x * MM, y * MM);
    else document.lineTo(x * MM, y * MM);
  });
  if (item.closed) document.closePath();
  document.lineWidth(width * MM).strokeColor(grey(ink));
  // All lengths of a pattern at once, which its types do not know.
  if (dash) document.dash(dash.map((mm) => mm * MM) as unknown as number, {});
  if (item.pen === "none") document.fill(grey(item.fill ?? 1));
  else if (item.fill === undefined) document.stroke();
  else document.fillAndStroke(grey(item.fill), grey(ink));
  if (dash) document.undash();
}

function write(
  document: Pdf,
  { at, text, size, bold, anchor, upright }: Extract<Item, { is: "words" }>,
): void {
  const [x, y] = [at[0] * MM, at[1] * MM];
  const sized = widthOf(text, size, bold) / POINT;
  const back = anchor === "middle" ? sized / 2 : anchor === "end" ? sized : 0;
  document.font(bold ? "Helvetica-Bold" : "Helvetica", size).fillColor("black");
  document.save();
  if (upright) document.rotate(-90, { origin: [x, y] });
  document.text(plain(text), x - back, y, { lineBreak: false, baseline: "alphabetic" });
  document.restore();
}

/** Words in embedded letters, run by run. */
function embed(
  document: Pdf,
  { at, text, size, bold, anchor, upright }: Extract<Item, { is: "words" }>,
  letters: Letters,
): void {
  const [x, y] = [at[0] * MM, at[1] * MM];
  const runs = letters.runsOf(text, bold);
  const own = (runs.reduce((sum, { width }) => sum + width, 0) / 1000) * size;
  const room = widthOf(text, size, bold) / POINT;
  const narrow = own > 0 ? Math.min(1, Math.max(NARROWEST, room / own)) : 1;
  const long = own * narrow;
  const back = anchor === "middle" ? long / 2 : anchor === "end" ? long : 0;
  document.fontSize(size).fillColor("black");
  document.save();
  if (upright) document.rotate(-90, { origin: [x, y] });
  let start = x - back;
  for (const { name, font, text: run, width } of runs) {
    // The font itself the first time, by its name from then on.
    document.registerFont(name, font as unknown as PDFKit.Mixins.PDFFontSource);
    document.font(name);
    const options = { lineBreak: false, baseline: "alphabetic" as const, horizontalScaling: narrow * 100 };
    document.text(run, start, y, options);
    start += (width / 1000) * size * narrow;
  }
  document.restore();
}

/** Letters are made no narrower than this share of their own width. */
const NARROWEST = 0.75;

const grey = (share: number): [number, number, number] => {
  const level = Math.round(share * 255);
  return [level, level, level];
};

/** The standard fonts have the signs of western Europe; a letter with a mark that they lack loses it, any other sign becomes a question mark. */
export function plain(text: string): string {
  return [...text.normalize("NFC")].map((sign) => (known(sign) ? sign : bare(sign))).join("");
}

const known = (sign: string): boolean => {
  const code = sign.codePointAt(0)!;
  return (code >= 32 && code < 127) || (code >= 160 && code < 256) || "–—‘’“”…•€".includes(sign);
};

function bare(sign: string): string {
  const letter = sign.normalize("NFD")[0] ?? "";
  return known(letter) ? letter : "?";
}

function joined(chunks: readonly Uint8Array[]): Uint8Array {
  const bytes = new Uint8Array(chunks.reduce((sum, { length }) => sum + length, 0));
  let offset = 0;
  for (const chunk of chunks) {
    bytes.set(chunk, offset);
    offset += chunk.length;
  }
  return bytes;
}
