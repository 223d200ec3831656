/**
 * Every page of a chair's marking out, in the order to be printed.
 */
import type { Chair } from "../../chair/chair.ts";
import type { Piece } from "../../joinery/pieces/piece.ts";
import { piecesOf } from "../../joinery/pieces/pieces.ts";
import { Figures, type Step } from "./figures.ts";
import type { Page } from "./page.ts";
import { type PaperName, papers } from "./paper.ts";
import { type Drawn, pieceDrawn } from "./piece-sheet.ts";
import { sheetPage } from "./sheet-page.ts";

export interface MarkoutOptions {
  paper: PaperName;
  /** Steps to the inch, for files in inches. */
  step?: Step;
  /** Only this part, by the name of its sheet or any of the parts made to it. */
  part?: string;
  /** Only the rods and the templates. */
  templates?: boolean;
}

/** The pieces that were asked for; none when no part has that name. */
export function piecesAsked(chair: Chair, part?: string): Piece[] {
  const pieces = piecesOf(chair);
  if (part === undefined) return pieces;
  return pieces.filter(
    ({ name, parts }) =>
      name === part || parts.some((each) => each.name === part || each.name.startsWith(`${part}.`)),
  );
}

export function markoutPages(chair: Chair, options: MarkoutOptions): Page[] {
  const figures = new Figures(chair.design.units, options.step);
  const paper = papers[options.paper];
  const title = chair.design.title?.value ?? "Chair";
  const pieces = piecesAsked(chair, options.part);
  const drawn = options.templates
    ? []
    : pieces.map((piece) => ({ piece, pages: pieceDrawn(piece, figures, paper) }));
  const total = drawn.reduce((sum, { pages }) => sum + pages.length, 0);
  let number = 0;
  return drawn.flatMap(({ piece, pages }) =>
    pages.map((page, k) => {
      number++;
      return sheetPage(
        paper,
        titlesOf(title, piece, page, figures, `${number} of ${total}`, k > 0),
        page.items,
        {
          name: pages.length > 1 ? `${piece.name} ${k + 1}` : piece.name,
        },
      );
    }),
  );
}

function titlesOf(
  chair: string,
  piece: Piece,
  { scale }: Drawn,
  figures: Figures,
  sheet: string,
  continued: boolean,
) {
  const timber = piece.timber ? `, ${piece.timber.replaceAll("-", " ")}` : "";
  const unit = figures.unit === "in" ? `inches, to 1/${figures.parts}` : figures.unit;
  return {
    chair,
    part: continued ? `${piece.name}, continued` : piece.name,
    about: `${piece.is}, ${piece.parts.length} off${timber}`,
    scale: `Drawn 1 : ${scale}. Figures in ${unit}.`,
    caution:
      "Work to the figures, not to the drawing.\nCut each tenon to its own mortise, and try the frame dry before any glue.",
    sheet,
  };
}
