/**
 * The stock list and the boards as plain lines and words, for a panel to show.
 */
import type { Plan, PlannedBoard, Stock } from "../../boards/plan.ts";
import type { Box } from "../../boards/wood.ts";
import type { LengthUnit } from "../../design/design.ts";
import { printLength } from "../../design/units.ts";
import { hidingText, planFigures, stockSums, stockTable } from "./words.ts";

type Point = readonly [number, number];

export interface BoardsShown {
  /** Rows of the stock list. */
  stock: { part: string; parts: string[]; cells: string[] }[];
  headings: string[];
  sums: string[];
  /** None while there is no plan yet. */
  boards: ShownBoard[];
}

/** A board in mm, y up from its first edge. */
interface ShownBoard {
  title: string;
  long: number;
  wide: number;
  pieces: { part: string; parts: string[]; label: string; at: Point; points: Point[] }[];
  offcuts: Point[][];
  defects: { what: string; points: Point[] }[];
  /** Lines along which its wane is cut off. */
  wane: Point[][];
  cuts: { number: number; line: [Point, Point] }[];
  /** Its cuts in words, what stays hidden, what is left over. */
  says: string[];
}

/** What there is so far: the stock list at once, the boards when there is a plan. */
export function boardsShown(stock: Stock, plan: Plan | undefined, unit: LengthUnit): BoardsShown {
  // A strip is written in the rail that it is fixed to.
  const written = new Map(stock.parts.map(({ name, fixedTo = name }) => [name, fixedTo]));
  const parts = new Map(
    stock.lines.map(({ name, members }) => [name, [...new Set(members.map((each) => written.get(each)!))]]),
  );
  const { headings, rows } = stockTable(stock, unit);
  return {
    headings,
    stock: stock.lines.map(({ name }, k) => ({ part: name, parts: parts.get(name)!, cells: rows[k]! })),
    sums: [...stockSums(stock, unit), ...(plan ? planFigures(stock, plan, unit) : [])],
    boards: (plan?.boards ?? []).map((planned) => shownBoard(planned, stock, parts, unit)),
  };
}

const ring = ({ x, y, long, wide }: Box): Point[] => [
  [x, y],
  [x + long, y],
  [x + long, y + wide],
  [x, y + wide],
];

function shownBoard(
  { name, board, pieces, offcuts, cuts }: PlannedBoard,
  { allowances }: Stock,
  parts: ReadonlyMap<string, string[]>,
  unit: LengthUnit,
): ShownBoard {
  const mm = (number: number) => printLength(number, unit);
  const { clear, long, wide } = board;
  const half = allowances.saw / 2;
  return {
    title: `${name}: ${[long, wide, board.thick].map(mm).join(" × ")}${board.timber ? `, ${board.timber.species}` : ""}`,
    long,
    wide,
    pieces: pieces.map((piece) => ({
      part: piece.part,
      parts: parts.get(piece.part) ?? [],
      label: piece.part,
      at: [piece.x + piece.long / 2, piece.y + piece.wide / 2],
      points: piece.outline ?? ring(piece),
    })),
    offcuts: offcuts.map(ring),
    defects: board.defects.map((defect) => ({ what: defect.what ?? "defect", points: ring(defect) })),
    wane:
      clear.y > 0
        ? [clear.y, clear.y + clear.wide].map((y): Point[] => [
            [0, y],
            [long, y],
          ])
        : [],
    cuts: cuts.flatMap(({ is, at, from, to }, k): ShownBoard["cuts"] => {
      const middle = at + half;
      if (is === "crosscut")
        return [
          {
            number: k + 1,
            line: [
              [middle, from],
              [middle, to],
            ],
          },
        ];
      if (is === "rip")
        return [
          {
            number: k + 1,
            line: [
              [from, middle],
              [to, middle],
            ],
          },
        ];
      return [];
    }),
    says: [
      ...(cuts.length > 0
        ? [`Cuts in order: ${cuts.map(({ is, at }, k) => `${k + 1} ${is} ${mm(at)}`).join("; ")}.`]
        : []),
      ...pieces.flatMap((piece) => (piece.under ?? []).map((each) => `${hidingText(piece, each, unit)}.`)),
      ...(offcuts.length > 0
        ? [`Left over: ${offcuts.map((box) => `${mm(box.long)} × ${mm(box.wide)}`).join(", ")}.`]
        : []),
    ],
  };
}
