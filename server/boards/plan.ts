/**
 * From a chair to its stock list and its plan of the boards.
 */
import { finish, type Steps } from "../../grammar/steps.ts";
import type { Chair } from "../chair/chair.ts";
import type { HiddenFace, MatchDesign, TimberDesign } from "../design/design.ts";
import { type Allowances, allowancesOf } from "./allowances.ts";
import type { CutPiece, Wanted } from "./cells.ts";
import { piecesUsed } from "./cells.ts";
import { cutsOf, type SawCut } from "./cuts.ts";
import { hiddenIn } from "./hidden.ts";
import { type FinishedPart, finishedParts } from "./parts.ts";
import { type Cutting, planSteps } from "./planner.ts";
import { type StockLine, stockOf, volumeOf } from "./stock.ts";
import { type Box, usualWood, type WoodBoard, woodOf } from "./wood.ts";

/**
 * A stock line with the thickness of board it is sawn from, as far as any is thick enough, and its share of what such a board costs, where
 * that has a price.
 */
export interface Stock {
  lines: (StockLine & { sawn?: number; price?: number })[];
  make: number;
  allowances: Allowances;
  /** What the lines can be sawn from, boards to hand first. */
  wood: WoodBoard[];
  /** Timbers for which the file gives neither board nor yard; an empty name is timber that is not named. */
  assumed: string[];
  parts: FinishedPart[];
}

/** The stock list of a chair; quick. */
export function stockList(chair: Chair): Stock {
  const { design } = chair;
  const allowances = allowancesOf(design);
  const parts = finishedParts(chair);
  const make = design.make?.value ?? 1;
  const wood = woodOf(design, allowances);
  const assumed: string[] = [];
  for (const { timber } of parts) {
    const key = timber?.species ?? "";
    if (assumed.includes(key) || wood.some((board) => serves(board, timber))) continue;
    assumed.push(key);
    wood.push(...usualWood(design, timber, allowances));
  }
  const widest = (timber: TimberDesign | undefined, thick: number) => widestFor(wood, timber, thick);
  const lines = stockOf(parts, allowances, make, widest).map((line) => {
    const part = parts.find(({ name }) => name === line.members[0])!;
    const from = boardFor(part, design.matches);
    return {
      ...line,
      ...sawnFor(line, from === undefined ? wood : wood.filter(({ source }) => source === from)),
    };
  });
  lines.sort((a, b) => (a.sawn ?? 1e9) - (b.sawn ?? 1e9) || a.blank.thick - b.blank.thick);
  return { lines, make, allowances, wood, assumed, parts };
}

const serves = (board: WoodBoard, timber: TimberDesign | undefined): boolean =>
  !timber || !board.timber || board.timber.species === timber.species;

/** The board that a part is pinned to or matched from. */
const boardFor = (part: FinishedPart, matches: readonly MatchDesign[]): string | undefined =>
  part.sawnFrom?.value.name ??
  matches.find(({ parts }) => parts.some(({ value }) => isMeant(part, value)))?.board.value.name;

function sawnFor(line: StockLine, wood: readonly WoodBoard[]): { sawn?: number; price?: number } {
  const thick = wood.filter((board) => serves(board, line.timber) && board.thick >= line.blank.thick - 1e-9);
  if (thick.length === 0) return {};
  const sawn = Math.min(...thick.map((board) => board.thick));
  const each = priceOfVolume(thick.filter((board) => board.thick === sawn));
  return { sawn, ...(each !== undefined && { price: each * volumeOf(line) }) };
}

/** What a cubic millimetre costs: of boards to hand on average, else at the cheapest yard. */
function priceOfVolume(boards: readonly WoodBoard[]): number | undefined {
  const hand = boards.filter(({ from }) => from === "hand");
  if (hand.some(({ price }) => price === undefined)) return undefined;
  const volume = ({ long, wide, thick }: WoodBoard) => long * wide * thick;
  const sum = (of: (board: WoodBoard) => number) =>
    hand.reduce((all, board) => all + board.count * of(board), 0);
  if (hand.length > 0) return sum(({ price }) => price!) / sum(volume);
  const yards = boards.flatMap((board) => (board.price === undefined ? [] : board.price / volume(board)));
  return yards.length > 0 ? Math.min(...yards) : undefined;
}

/** The clear width of the widest board that is thick enough; of what is sold, of typical size. */
function widestFor(wood: readonly WoodBoard[], timber: TimberDesign | undefined, thick: number): number {
  const some = wood.filter((board) => serves(board, timber) && board.thick >= thick - 1e-9);
  const hand = some.filter(({ from }) => from === "hand");
  const widths = (hand.length > 0 ? hand : some.filter(({ largest }) => !largest)).map(
    ({ clear }) => clear.wide,
  );
  return Math.max(0, ...widths);
}

export interface PlannedPiece extends Omit<CutPiece, "line" | "hides"> {
  part: string;
  /** Defects of the board that stay in it, under its hidden faces. */
  under?: Hiding[];
}

/** A defect that stays in a piece, under a hidden face. */
export interface Hiding extends Box {
  what?: string;
  face: HiddenFace;
  /** Where the face lies flat in the board: how deep the defect may go into the finished part, mm; the text does not say how deep it does. */
  deepest?: number;
  /** The end of the part that lies towards the board's first end. */
  firstEnd?: string;
}

export interface PlannedBoard {
  board: WoodBoard;
  name: string;
  pieces: PlannedPiece[];
  cuts: SawCut[];
  offcuts: Box[];
}

export interface Plan {
  boards: PlannedBoard[];
  lacking: { part: string; number: number }[];
  /** mm³. */
  used: number;
  bound: number;
  /** What the boards cost, and whether some have no price. */
  price?: { sum: number; atLeast: boolean };
}

/** Passes after the first that a plan is given. */
export const PASSES = 20;

/** The plan of a stock list, better and better; `told` hears of each. Rests as it goes. */
export function* planOf(
  stock: Stock,
  matches: readonly MatchDesign[],
  told: (plan: Plan, pass: number) => void = () => undefined,
  passes: number = PASSES,
): Steps<Plan> {
  const wanted = wantedOf(stock, matches);
  const job = { wanted, boards: stock.wood, allowances: stock.allowances, passes };
  const cutting = yield* planSteps(job, (better, pass) => told(planned(stock, wanted, better), pass));
  return planned(stock, wanted, cutting);
}

const planned = (stock: Stock, wanted: readonly Wanted[], cutting: Cutting): Plan => {
  const { lines, allowances } = stock;
  const boards = inOrder(cutting.sawn, stock.wood).map(({ board, name, layout }): PlannedBoard => {
    const pieces = layout.sections.flatMap(({ strips }) =>
      strips.flatMap((strip) =>
        strip.placed.flatMap(({ cell, x, used }) =>
          piecesUsed(cell.pieces, cell.count, used).map((piece) =>
            placedPiece(piece, x, strip.y, { lines, board }),
          ),
        ),
      ),
    );
    return { board, name, pieces, cuts: cutsOf(layout, board, allowances.saw), offcuts: layout.offcuts };
  });
  const short = new Map<string, number>();
  for (const [k, many] of cutting.lacking.entries())
    if (many > 0)
      for (const { stock: line } of wanted[k]!.lines)
        short.set(line.name, (short.get(line.name) ?? 0) + many);
  const priced = boards.filter(({ board }) => board.price !== undefined);
  return {
    boards,
    lacking: [...short].map(([part, number]) => ({ part, number })),
    used: cutting.used,
    bound: cutting.bound,
    ...(priced.length > 0 && {
      price: {
        sum: priced.reduce((sum, { board }) => sum + board.price!, 0),
        atLeast: priced.length < boards.length,
      },
    }),
  };
};

/** Boards in the order of the text, those to hand first; those that are bought numbered anew from 1. */
function inOrder(sawn: Cutting["sawn"], wood: readonly WoodBoard[]): Cutting["sawn"] {
  const place = ({ board, name }: Cutting["sawn"][number]) =>
    wood.indexOf(board) + (board.from === "hand" ? board.names.indexOf(name) / board.names.length : 0);
  const numbers = new Map<string, number>();
  return [...sawn]
    .sort((a, b) => place(a) - place(b))
    .map((each) => {
      const { board } = each;
      if (board.from === "hand") return each;
      const number = (numbers.get(board.source) ?? 0) + 1;
      numbers.set(board.source, number);
      return { ...each, name: `${board.source} ${number}` };
    });
}

function placedPiece(
  piece: CutPiece,
  x: number,
  y: number,
  { lines, board }: { lines: readonly StockLine[]; board: WoodBoard },
): PlannedPiece {
  const { line, outline, hides, ...rest } = piece;
  const placed = {
    ...rest,
    x: rest.x + x,
    y: rest.y + y,
    ...(outline && { outline: outline.map(([u, v]) => [u + x, v + y] as const) }),
  };
  const { name, finished } = lines[line]!;
  const under = (hiddenIn({ ...placed, ...(hides && { hides }) }, board.defects) ?? []).map(
    ({ defect, face, flat }): Hiding => ({
      ...defect,
      face,
      ...(flat && { deepest: finished.thick / 2 }),
      ...(hides && !outline && { firstEnd: hides.firstEnd }),
    }),
  );
  return { part: name, ...placed, ...(under.length > 0 && { under }) };
}

/** What is to be cut: matched sets, and of each line what no match takes. */
export function wantedOf({ lines, parts, make, wood }: Stock, matches: readonly MatchDesign[]): Wanted[] {
  const left = lines.map(({ number }) => number);
  const lineOf = new Map(lines.flatMap((line, k) => line.members.map((name) => [name, k] as const)));
  const taken = new Set<string>();
  const sets: Wanted[] = [];
  for (const { parts: refs, board, laid } of matches) {
    const members = refs.flatMap(({ value }) =>
      parts.filter((part) => isMeant(part, value)).map(({ name }) => name),
    );
    const own = [...new Set(members)].filter((name) => !taken.has(name));
    if (own.length < 2) continue;
    for (const name of own) taken.add(name);
    const pieces = own.flatMap((name) => {
      const line = lineOf.get(name);
      return line === undefined ? [] : [{ line, stock: lines[line]! }];
    });
    for (const { line } of pieces) left[line]! -= make;
    sets.push({ lines: pieces, laid, number: make, only: namesOf(wood, board.value) });
  }
  const alone = lines.flatMap((line, k): Wanted[] => {
    if (left[k]! <= 0) return [];
    const pin = parts.find(({ name }) => name === line.members[0])?.sawnFrom?.value;
    return [
      { lines: [{ line: k, stock: line }], number: left[k]!, ...(pin && { only: namesOf(wood, pin) }) },
    ];
  });
  return [...sets, ...alone];
}

/** Whether a reference (`front`, `front.left`, `ladder.2`) means a part. */
function isMeant({ id, called }: FinishedPart, ref: { name: string; side?: "left" | "right" }): boolean {
  const [stem, row] = ref.name.split(".");
  if (called !== undefined || stem !== id.stem || (row !== undefined && Number(row) !== id.row)) return false;
  return ref.side === undefined || ref.side === id.side;
}

function namesOf(wood: readonly WoodBoard[], { name, which }: { name: string; which?: number }): Set<string> {
  const board = wood.find((each) => each.from === "hand" && each.source === name);
  const names = board?.names ?? [];
  return new Set(
    which === undefined
      ? names
      : names.length === 1 && which === 1
        ? names
        : names.filter((each) => each === `${name}.${which}`),
  );
}

/** The whole plan at one go. */
export const wholePlan = (stock: Stock, matches: readonly MatchDesign[], passes?: number): Plan =>
  finish(planOf(stock, matches, undefined, passes));
