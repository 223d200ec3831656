import type { Plan, Spot } from "../../../joinery/pieces/piece.ts";
import { boreMarks } from "./bore-marks.ts";
import { count, mark, type Printer } from "./printer.ts";
import type { SheetFigure, SheetMark } from "./sheet.ts";

/**
 * The corners of each slab of a part in plan, in order round it, from the lower left of its upper face; below where its lower face
 * differs. Then those of each opening in it; of a solid seat the contours of its hollow, from the rim in, and its sockets.
 */
export const planMarks = ({ layers, seen, bores = [], hollow = [] }: Plan, printer: Printer): SheetMark[] => [
  ...layers.flatMap(({ name, from, to, top, under, openings }) => {
    const deep = { from: printer.long(from), to: printer.long(to) };
    const corner = (kind: string, more: Record<string, SheetFigure>, spot: Spot, below?: Spot) =>
      mark(kind, seen, name, {
        ...more,
        right: printer.long(spot[0]),
        up: printer.long(spot[1]),
        "right below": below && printer.long(below[0]),
        "up below": below && printer.long(below[1]),
        ...deep,
      });
    return [
      ...top.map((spot, k) => corner("corner", {}, spot, under?.[k])),
      ...openings.flatMap((ring, number) =>
        ring.top.map((spot, k) => corner("opening", { number: count(number + 1) }, spot, ring.under[k])),
      ),
    ];
  }),
  ...hollow.flatMap(({ deep, ring }, number) =>
    ring.map(([right, up]) =>
      mark("hollow", seen, "", {
        number: count(number + 1),
        deep: printer.long(deep),
        right: printer.long(right),
        up: printer.long(up),
      }),
    ),
  ),
  ...boreMarks(bores, printer),
];
