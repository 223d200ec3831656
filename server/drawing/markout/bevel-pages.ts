/**
 * Every setting of the sliding bevel once, at its true angle, with where it is used.
 */
import { printAngle } from "../../design/units.ts";
import type { Piece } from "../../joinery/pieces/piece.ts";
import type { Figures } from "./figures.ts";
import type { Room } from "./larger-type.ts";
import { linesOf } from "./lettering.ts";
import { enlarged, type Item, line, moved, type Point, SMALL, TYPE, words } from "./page.ts";
import type { Paper } from "./paper.ts";
import { edgesOf } from "./plan-block.ts";
import { sheetOf } from "./sheet/part.ts";
import { told } from "./sheet/printer.ts";
import type { SheetMark, SheetPart } from "./sheet/sheet.ts";
import { roomOn, type Unnumbered } from "./sheet-page.ts";
import { LINE } from "./table.ts";

/** A setting, degrees from the stock to the blade, at most 90: the other side of the blade is what it leaves of 180. */
interface Setting {
  degrees: number;
  /** As `83.4°`, and as a rise in a run where that is told. */
  text: string;
  slope: string;
  uses: string[];
}

/** Length of the drawn stock and of the blade, mm. */
const STOCK = 42;
const BLADE = 34;
const THICK = 4;
/** Beside the stock for the figures, and between cells. */
const FIGURES = 25;
const GAP = 5;

export function bevelPages(pieces: readonly Piece[], figures: Figures, paper: Paper): Unnumbered[] {
  const settings = settingsOf(pieces, figures);
  const [by] = TYPE;
  const { wide, high } = roomOn(paper);
  return laid(settings, { wide: wide / by, high: high / by }, by).map((page) => ({
    ...page,
    items: page.items.map((item) => enlarged(item, by)),
  }));
}

/** All of it is enlarged `by` so much afterwards, which leaves the drawn bevels as large as they are. */
function laid(settings: readonly Setting[], { wide, high }: Room, by: number): Unnumbered[] {
  const columns = Math.max(1, Math.floor((wide + GAP) / (STOCK / by + FIGURES + GAP)));
  const cell = (wide - (columns - 1) * GAP) / columns;
  const pages: Item[][] = [[]];
  // Down each column, then to the next.
  let [column, y] = [0, 0];
  for (const { items, height } of settings.map((setting) => cellOf(setting, cell, by))) {
    if (y > 0 && y + height > high) {
      [column, y] = [column + 1, 0];
      if (column === columns) {
        pages.push([]);
        column = 0;
      }
    }
    const x = column * (cell + GAP);
    pages[pages.length - 1]!.push(...items.map((item) => moved(item, x, y)));
    y += height + GAP;
  }
  return pages.map((items, k) => ({
    titles: {
      part: k > 0 ? "Bevel settings, continued" : "Bevel settings",
      about: `${settings.length} of the sliding bevel; square is left out${k + 1 < pages.length ? "; continued on the next sheet" : ""}`,
      scale: "Angles are true at any size.",
      caution:
        "Set the bevel to the drawing, or by its rise in a run on a board with a straight edge.\nTry each setting on a piece of waste first. The blade's other side has what is left of 180°.",
    },
    items,
    page: { name: pages.length > 1 ? `bevels ${k + 1}` : "bevels" },
  }));
}

/** All settings, the smallest angle first. */
export function settingsOf(pieces: readonly Piece[], figures: Figures): Setting[] {
  const found = new Map<string, { slope: string; uses: Use[] }>();
  for (const piece of pieces) {
    const sheet = sheetOf(piece, figures);
    for (const { value, slope, where, what } of [...anglesOf(sheet), ...cornersOf(piece)]) {
      const degrees = Math.min(value, 180 - value);
      const key = degrees.toFixed(1);
      if (degrees <= 0 || key === "90.0") continue;
      const setting = found.get(key) ?? { slope, uses: [] };
      setting.uses.push({ piece: piece.name, where, what });
      if (!setting.slope) setting.slope = slope;
      found.set(key, setting);
    }
  }
  return [...found]
    .map(([key, { slope, uses }]) => ({
      degrees: Number(key),
      text: `${Number(key)}°`,
      slope,
      uses: usesTold(uses),
    }))
    .sort((a, b) => a.degrees - b.degrees);
}

interface Use {
  piece: string;
  where: string;
  what: string;
}

/** One line for each part, places that it is used alike at together: `rail, left end and right end: top, bottom`. */
function usesTold(uses: readonly Use[]): string[] {
  return [...new Set(uses.map(({ piece }) => piece))].map((piece) => {
    const own = uses.filter((use) => use.piece === piece);
    const places = new Map<string, string[]>();
    for (const where of new Set(own.map((use) => use.where))) {
      const whats = [...new Set(own.filter((use) => use.where === where).map(({ what }) => what))].join(", ");
      places.set(whats, [...(places.get(whats) ?? []), where]);
    }
    const told = [...places].map(([whats, wheres]) =>
      wheres.some(Boolean) ? `${wheres.join(" and ")}: ${whats}` : whats,
    );
    return `${piece}, ${told.join("; ")}`;
  });
}

interface Used extends Omit<Use, "piece"> {
  value: number;
  slope: string;
}

/** Every angle of a sheet that a bevel is set to, as it is printed there. */
function anglesOf(sheet: SheetPart): Used[] {
  return sheet.marks.flatMap((mark): Used[] => {
    const use = (name: string, where: string, what: string, slope = ""): Used[] => {
      const value = mark.figures[name]?.value;
      return typeof value === "number" ? [{ value, slope, where, what }] : [];
    };
    switch (mark.kind) {
      case "line":
        return use("bevel", `${told(mark, "end")} end`, mark.face, slopeOf(mark));
      case "mitre":
        return use("angle", `${mark.face} end`, "mitre of the tenon");
      case "end":
        return use("slant", `${mark.face} end`, "shoulder to the axis");
      case "bore":
      case "through-bore":
        return use("bevel", "", `socket ${told(mark, "letter")}`);
      case "mortise":
      case "through-mortise":
      case "hole":
      case "through-hole":
      case "bow-bore":
      case "through-bow-bore":
        return leansOf(mark);
      default:
        return [];
    }
  });
}

/** What a chisel or a bit is sighted by: a bevel that stands on the face. */
const leansOf = (mark: SheetMark): Used[] =>
  Object.entries(mark.figures).flatMap(([name, { value, text }]) =>
    name.startsWith("leans to ") && typeof value === "number"
      ? [
          {
            value: 90 - value,
            slope: text.replace(/^.*\((.*)\)$/, "$1"),
            where: mark.face,
            what: `${told(mark, "letter")} going in, to the ${name.slice("leans to ".length)}`,
          },
        ]
      : [],
  );

/** The corners between straight edges of a part in plan. */
const cornersOf = ({ plan }: Piece): Used[] =>
  (plan ? edgesOf(plan.ring) : []).flatMap(({ corner, curved }, k, edges) =>
    curved || edges[(k + 1) % edges.length]!.curved
      ? []
      : [
          {
            value: Number.parseFloat(printAngle(corner)),
            slope: "",
            where: "",
            what: `corner after edge ${k + 1}`,
          },
        ],
  );

const slopeOf = (mark: SheetMark): string => told(mark, "slope");

/** The stock with its blade at the angle, the figure beside it, the uses under it. */
function cellOf(
  { degrees, text, slope, uses }: Setting,
  wide: number,
  by: number,
): { items: Item[]; height: number } {
  const [long, blade, thick] = [STOCK / by, BLADE / by, THICK / by];
  const angle = (degrees * Math.PI) / 180;
  const rise = blade * Math.sin(angle) + 2;
  const foot: Point = [6 / by, rise];
  const on = (far: number): Point => [foot[0] + far * Math.cos(angle), foot[1] - far * Math.sin(angle)];
  const arc = Array.from({ length: 13 }, (_, k): Point => {
    const at = (angle * k) / 12;
    return [foot[0] + (14 / by) * Math.cos(at), foot[1] - (14 / by) * Math.sin(at)];
  });
  const stock: Point[] = [
    [0, foot[1]],
    [long, foot[1]],
    [long, foot[1] + thick],
    [0, foot[1] + thick],
  ];
  const lines = uses.flatMap((use) => linesOf(use, SMALL, wide - 2));
  const first = foot[1] + thick + 4;
  return {
    items: [
      line(stock, "knife", { closed: true }),
      line([foot, on(blade)], "outline"),
      line(arc, "fine"),
      words([long + 3, foot[1] - 3], text, 12, { bold: true }),
      ...(slope ? [words([long + 3, foot[1] + 1.4], `${slope} from square`, SMALL)] : []),
      ...lines.map((each, k) => words([0, first + k * LINE], each, SMALL)),
    ],
    height: first + (lines.length - 1) * LINE + 2,
  };
}
