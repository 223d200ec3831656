/**
 * Every page of a chair's marking out, in the order to be printed.
 */

import type { Chair } from "../../chair/chair.ts";
import { stemOf } from "../../design/identity.ts";
import type { Piece } from "../../joinery/pieces/piece.ts";
import { piecesOf } from "../../joinery/pieces/pieces.ts";
import { fullSizeViews } from "../arrangement/full-size.ts";
import { sectionSheet } from "../arrangement/section-sheet.ts";
import { arrangement } from "../arrangement/sheet.ts";
import { viewsOf } from "../arrangement/views.ts";
import { bevelPages } from "./bevel-pages.ts";
import { Figures, type Step } from "./figures.ts";
import { glueUpPages } from "./glue-up-pages.ts";
import { linesOf } from "./lettering.ts";
import type { Item, Page } from "./page.ts";
import { LARGE, words } from "./page.ts";
import { angleOn, onShortSide, type Paper, type PaperName, papers } from "./paper.ts";
import { pieceDrawn } from "./piece-sheet.ts";
import { readingPage } from "./reading-pages.ts";
import { sheetsOf } from "./sheet/part.ts";
import type { Sheets } from "./sheet/sheet.ts";
import { roomOn, sheetPage, type Unnumbered } from "./sheet-page.ts";
import { stockPages, withBlank } from "./stock-pages.ts";
import { stickDrawings } from "./story-sticks.ts";
import { type Template, templatesOf } from "./templates.ts";
import { checkSquare, type FullSize, type Tile, tiles } from "./tiles.ts";

export interface MarkoutOptions {
  paper: PaperName;
  /** Steps to the inch, for files in inches. */
  step?: Step;
  /** Only this part, by the name of its sheet or any of the parts made to it. */
  part?: string;
  /** Only what is printed at full size. */
  templates?: boolean;
  /** The day that the sheets are of, as it is printed; the last dated note of the file unless given. */
  day?: string;
  /** That day where neither it nor a note gives one. */
  dayUnlessNoted?: string;
  /** The short hash of the text that the chair is made from. */
  text?: string;
}

/** The pieces that were asked for, with the blanks they are planed from; none when no part has that name. */
export function piecesAsked(chair: Chair, part?: string): Piece[] {
  const pieces = piecesOf(chair).map((piece) => withBlank(chair, piece));
  if (part === undefined) return pieces;
  return pieces.filter(
    ({ name, parts }) =>
      name === part || parts.some((each) => each.name === part || each.name.startsWith(`${part}.`)),
  );
}

/** What the sheets of the pieces that were asked for say, as data. */
export const sheetsAsked = (chair: Chair, { part, step }: Pick<MarkoutOptions, "part" | "step">): Sheets =>
  sheetsOf(piecesAsked(chair, part), new Figures(chair.design.units, step));

/**
 * How to read them, the whole chair, its stock, sheets of the pieces, the bevel's settings, the order of gluing up; then what is printed at full
 * size: the check page, story sticks, templates, the views as a rod.
 */
export function markoutPages(chair: Chair, options: MarkoutOptions): Page[] {
  const figures = new Figures(chair.design.units, options.step);
  const paper = papers[options.paper];
  const pieces = piecesAsked(chair, options.part);
  const whole = options.part === undefined;
  const full = [
    ...fullSizePages(pieces, figures, paper),
    ...(whole ? rodPages(chair, pieces, figures, paper) : []),
  ];
  const all = [
    ...(options.templates ? [] : sheetPages(chair, pieces, figures, options)),
    ...(full.length ? [checkPage(paper), ...full] : []),
  ];
  const stamp = stampOf(chair, options);
  return all.map(({ titles, items, page, upright }, k) =>
    sheetPage(
      upright ? onShortSide(paper) : paper,
      {
        ...titles,
        ...stamp,
        caution: `${titles.caution}\n${warningFor(chair)}`,
        sheet: `${k + 1} of ${all.length}`,
      },
      items,
      page,
    ),
  );
}

/** What every sheet of a chair bears: its name, the day, the version of its text. */
function stampOf({ design }: Chair, { day, dayUnlessNoted, text }: MarkoutOptions) {
  const dated = design.notes.flatMap((note) => note.date?.value ?? []).sort();
  const date = day ?? dated.at(-1) ?? dayUnlessNoted;
  return {
    chair: design.title?.value ?? "Chair",
    ...(date !== undefined && { date }),
    ...(text !== undefined && { text }),
  };
}

/** The caution that stands on every sheet. */
function warningFor({ design: { sitter, stability } }: Chair): string {
  const isChild =
    sitter.value.is === "child" ||
    sitter.value.is === "school-mark" ||
    stability?.value.childAge !== undefined;
  return `Machines hurt: keep their guards on. Make one and try it with care before more.${isChild ? " For a child: look up the rules that hold where it is used." : ""}`;
}

function sheetPages(
  chair: Chair,
  pieces: readonly Piece[],
  figures: Figures,
  options: MarkoutOptions,
): Unnumbered[] {
  const paper = papers[options.paper];
  const sheets = pieces.flatMap((piece) => pieceSheets(piece, figures, paper));
  if (options.part !== undefined) return sheets;
  return [
    readingPage(paper, unitOf(figures), angleOn(options.paper)),
    ...arrangementPages(chair, pieces, figures, options.paper),
    ...stockPages(chair, paper),
    ...sheets,
    ...bevelPages(pieces, figures, paper),
    ...gluingUp(chair, paper),
  ];
}

const unitOf = (figures: Figures): string =>
  figures.unit === "in" ? `inches, to 1/${figures.parts}` : figures.unit;

function arrangementPages(
  chair: Chair,
  pieces: readonly Piece[],
  figures: Figures,
  name: PaperName,
): Unnumbered[] {
  if (viewsOf(chair).front.strokes.length === 0) return [];
  const paper = papers[name];
  const rooms = { level: roomOn(paper), upright: roomOn(onShortSide(paper)) };
  const { items, scale, upright } = arrangement(chair, pieces, figures, rooms, angleOn(name));
  const sections = sectionSheet(chair, pieces, figures, rooms.level);
  const caution = "As it stands on the floor. Work to the figures, not to the drawing.";
  const titles = { caution, about: "the whole chair" };
  return [
    {
      titles: { ...titles, part: "Arrangement", scale: `Scale 1:${scale}. Figures in ${unitOf(figures)}.` },
      items,
      page: { name: "arrangement" },
      ...(upright && { upright }),
    },
    ...(sections
      ? [
          {
            titles: {
              ...titles,
              part: "Sections",
              scale: `Scales under the sections. Figures in ${unitOf(figures)}.`,
            },
            items: sections,
            page: { name: "sections" },
          },
        ]
      : []),
  ];
}

function pieceSheets(piece: Piece, figures: Figures, paper: Paper): Unnumbered[] {
  const pages = pieceDrawn(piece, figures, paper);
  return pages.map(({ items, scale }, k) => ({
    titles: {
      part: k > 0 ? `${piece.name}, continued` : piece.name,
      about: aboutPiece(piece),
      scale: `Drawn 1 : ${scale}. Figures in ${unitOf(figures)}.`,
      caution:
        "Work to the figures, not to the drawing.\nCut each tenon to its own mortise, and try the frame dry before any glue.",
    },
    items,
    page: { name: pages.length > 1 ? `${piece.name} ${k + 1}` : piece.name },
  }));
}

function aboutPiece({ is, parts, timber, moisture }: Piece): string {
  const dry = moisture === undefined ? "" : ` at ${Number(moisture.toFixed(1))} % moisture`;
  const wood = timber ? `, ${timber.replaceAll("-", " ")}${dry}` : "";
  return `${is}, ${parts.length} off${wood}`;
}

function gluingUp(chair: Chair, paper: Paper): Unnumbered[] {
  return glueUpPages(chair, paper).map(({ items, steps, of }, k): Unnumbered => {
    const some = steps.length > 1 ? `steps ${steps[0]} and ${steps[1]}` : `step ${steps[0]}`;
    return {
      titles: {
        part: k > 0 ? "Gluing up, continued" : "Gluing up",
        about: `${some} of ${of}`,
        scale: "Pictures are not to scale.",
        caution:
          "Try every frame dry, cramps and all, before any glue.\nWhat needs more springing than a hand gives is not to be forced: look for what binds.",
      },
      items,
      page: { name: `gluing up ${k + 1}` },
    };
  });
}

const FULL_SIZE = {
  scale: "Full size. Print at 100 %, not fitted to the page.",
  caution:
    "Check the 100 mm square before using a template.\nJoin pages at the circles: lay one cross on the other.",
};

function fullSizePages(pieces: readonly Piece[], figures: Figures, paper: Paper): Unnumbered[] {
  const high = roomOn(paper).high - 30;
  const sticks = stickDrawings(pieces, figures, high).flatMap(({ names, drawing }) =>
    tiled(drawing, paper, {
      part: "Story sticks",
      about: names.join(", "),
      name: `sticks ${names.join(" ")}`,
    }),
  );
  const templates = templatesFor(pieces, figures).flatMap(({ of, drawing, serves }) => {
    const names = serves.map(({ name }) => name).join(", ");
    return tiled(drawing, paper, {
      part: `${serves[0]!.name}: ${of}`,
      about: `template for ${serves.length > 1 ? names : handsOf(serves[0]!)}`,
      name: `${serves[0]!.name} template`,
    });
  });
  return [...sticks, ...templates];
}

/** The maker's rod: the side and half the front of the chair at full size; sheets that would be empty are left out. */
const rodPages = (chair: Chair, pieces: readonly Piece[], figures: Figures, paper: Paper): Unnumbered[] =>
  fullSizeViews(chair, pieces, figures).flatMap(({ view, drawing }) => {
    const pages = tiles(drawing, paper).filter(({ empty }) => !empty);
    return titled(pages, { part: `Rod: ${view}`, about: "the whole chair", name: `rod ${view}` });
  });

/** Sizes nearer than this make do with one template, mm. */
const ALIKE = 1;

/** The templates of all pieces; members of a row that differ by next to nothing share one. */
function templatesFor(pieces: readonly Piece[], figures: Figures): (Template & { serves: Piece[] })[] {
  const made: (Template & { serves: Piece[] })[] = [];
  for (const piece of pieces) {
    for (const template of templatesOf(piece, figures)) {
      const { of, drawing } = template;
      const like = made.find(
        (other) =>
          other.of === of &&
          rowOf(other.serves[0]!) === rowOf(piece) &&
          Math.abs(other.drawing.width - drawing.width) < ALIKE &&
          Math.abs(other.drawing.height - drawing.height) < ALIKE &&
          !other.serves.includes(piece) &&
          piece.mortises.length === 0,
      );
      if (like) like.serves.push(piece);
      else made.push({ ...template, serves: [piece] });
    }
  }
  return made;
}

const rowOf = ({ parts }: Piece): string => stemOf(parts[0]!.name);

function handsOf({ parts }: Piece): string {
  const mirrored = parts.filter((part) => part.mirrored).length;
  return mirrored ? `${parts.length} off, ${mirrored} of them turned over` : `${parts.length} off`;
}

interface Called {
  part: string;
  about: string;
  name: string;
}

const tiled = (drawing: FullSize, paper: Paper, called: Called): Unnumbered[] =>
  titled(tiles(drawing, paper), called);

const titled = (pages: readonly Tile[], { part, about, name }: Called): Unnumbered[] =>
  pages.map(({ items, column, row, rows }) => {
    const place = rows > 1 ? `${row + 1}.${column + 1}` : `${column + 1}`;
    const of = pages.length > 1 ? `, page ${place} of ${pages.length}` : "";
    return {
      titles: { part, about: `${about}${of}`, ...FULL_SIZE },
      items,
      page: { name: `${name} ${place}`, fullSize: true as const },
    };
  });

/** The first of the full-size pages. */
function checkPage(paper: Paper): Unnumbered {
  const { wide } = roomOn(paper);
  const left = 118;
  const sentences = [
    "The pages that follow are true only at full size. Print this one first, at 100 % (“actual size”), and measure the square both ways with a steel rule.",
    "If it is not 100 mm each way to within a quarter of a millimetre, set the printer's scaling to 100 % or none, and print again. Some printers stretch one way more than the other: then plot elsewhere, or work from the figures on the sheets.",
    "Paper swells with damp. Print, join and use the pages on the same day, and check the whole length of a joined stick or template against its figures.",
    "Join pages at the circles: cut one of the two along the broken line, lay its crosses on the other's, and tape.",
    "A story stick is laid against its post with its D1 on the post's own D1, then its D2 on D2 and so on: between, where it is crossed out, the post bends.",
    "A template shows the piece as it is drawn on its sheet. Turn it over for the mirror image.",
  ];
  let y = 6;
  const items: Item[] = [...checkSquare([4, 4])];
  for (const sentence of sentences) {
    for (const text of linesOf(sentence, LARGE, wide - left)) {
      items.push(words([left, y], text, LARGE));
      y += 5;
    }
    y += 2;
  }
  return {
    titles: {
      part: "Full-size pages: check first",
      about: "story sticks, templates and the rod",
      ...FULL_SIZE,
    },
    items,
    page: { name: "check", fullSize: true },
  };
}
