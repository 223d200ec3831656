/**
 * The sections of a chair beside each other, each at the largest preferred scale that it has room for.
 */
import type { Chair } from "../../chair/chair.ts";
import { withoutSides } from "../../design/identity.ts";
import type { Piece } from "../../joinery/pieces/piece.ts";
import { around, extentOf } from "../dimension-lines.ts";
import type { Figures } from "../markout/figures.ts";
import { enlarged, type Item, moved, type Point, TYPE } from "../markout/page.ts";
import { paragraphs } from "../markout/table.ts";
import { type Cell, type CellView, cellItems, cellOf } from "./cells.ts";
import { namedLabels, numberedLabels } from "./labels.ts";
import { type CutThrough, hatched, levelCut, middleCut, seatRailsHeight } from "./sections.ts";
import { type Stop, setOutOf, type ViewSetOut } from "./set-out.ts";
import { fitted, type Room } from "./sheet.ts";

const GAP = 6;

type Section = Pick<CellView, "setOut" | "origins" | "floor"> & { cuts: CutThrough[]; caption: string };

/** Empty where nothing is cut. */
export function sectionSheet(
  chair: Chair,
  pieces: readonly Piece[],
  figures: Figures,
  room: Room,
): Item[] | undefined {
  const sections = sectionsOf(chair, figures);
  if (sections.length === 0) return undefined;
  const wide = (room.wide - (sections.length - 1) * GAP) / sections.length;
  const numbered = numberedLabels(pieces, figures);
  const ways = [namedLabels(pieces, figures), numbered];
  const keys = TYPE.map((by) => {
    const { items, height } = paragraphs([numbered.key], room.wide / by);
    return { items: items.map((item) => enlarged(item, by)), high: room.high - height * by - 1, by };
  });
  const tried = keys.map((key) => ({
    key,
    drawn: sections.map((section) =>
      fitted([{ wide, high: key.high }], ways, (one, labels) => {
        const cell = cellOf(viewOf(section), figures, labels, one);
        return { cell, labels, wide: cell.left + cell.right, high: cell.above + cell.below };
      }),
    ),
  }));
  // The key's letters are as large as leaves the sections to their scale, and to letters as large.
  const plain = tried[tried.length - 1]!;
  const { key, drawn } =
    tried.find(({ key: { by }, drawn }) =>
      drawn.every(
        (each, k) => each.scale === plain.drawn[k]!.scale && each.by >= Math.min(by, plain.drawn[k]!.by),
      ),
    ) ?? plain;
  const items = drawn.flatMap(({ laid: { cell }, room: own, by, scale }, k) => {
    const view = { ...cell.view, caption: `${sections[k]!.caption}, 1:${scale}` };
    return inRoom({ ...cell, view }, own).map((item) => moved(enlarged(item, by), k * (wide + GAP), 0));
  });
  // The key belongs to numbers alone.
  const isNumbered = drawn.some(({ laid }) => laid.labels === numbered);
  return isNumbered ? [...items, ...key.items.map((item) => moved(item, 0, key.high + 1))] : items;
}

function sectionsOf(chair: Chair, figures: Figures): Section[] {
  const setOut = setOutOf(chair);
  const height = seatRailsHeight(chair);
  const sections: Section[] = [
    {
      cuts: middleCut(chair),
      caption: "On the middle line, from the sitter's left",
      setOut: setOut.middle,
      origins: { below: setOut.origin },
      floor: true,
    },
  ];
  if (height !== undefined) {
    const cuts = levelCut(chair, height);
    sections.push({
      cuts,
      caption: `Level, ${figures.print(height)} over the floor, from above`,
      setOut: ofParts(setOut.plan, new Set(cuts.map(({ part }) => withoutSides(part)))),
      origins: { right: setOut.origin },
      floor: false,
    });
  }
  return sections.filter(({ cuts }) => cuts.length > 0);
}

/** What is set out of those parts alone. */
function ofParts(setOut: ViewSetOut, parts: ReadonlySet<string>): ViewSetOut {
  const own = (stops: readonly Stop[]): Stop[] =>
    stops.flatMap((stop) => {
      const of = stop.of.filter(({ part }) => parts.has(part));
      return of.length ? [{ ...stop, of }] : [];
    });
  const { left, right, above, below } = setOut;
  return { ...setOut, left: own(left), right: own(right), above: own(above), below: own(below) };
}

/** In the middle of its room. */
function inRoom(cell: Cell, { wide, high }: Room): Item[] {
  const x = (wide - cell.left - cell.right) / 2 + cell.left;
  return cellItems(cell, [x, (high - cell.above - cell.below) / 2 + cell.above]);
}

/** What is cut as lines on paper, parts beside each other hatched one way and the other. */
function viewOf({ cuts, ...section }: Section): CellView {
  const extent = extentOf(cuts.flatMap(({ outlines }) => outlines.flat()));
  const floor = { left: extent.left, right: extent.right, low: 0, high: 0 };
  return {
    ...section,
    extent: section.floor ? around(extent, floor) : extent,
    lines: (scale) =>
      cuts.flatMap(({ outlines }, k) =>
        outlines.flatMap((ring) =>
          hatched(
            ring.map(([u, v]): Point => [u / scale, -v / scale]),
            k % 2 === 1,
          ),
        ),
      ),
    axis: !section.floor,
  };
}
