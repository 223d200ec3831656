/**
 * How little wood a plan could use at best: a bound that no plan in sections, strips and cells can go below.
 */
import type { Cell } from "./cells.ts";
import sawn from "./sawn-sizes.json" with { type: "json" };
import { leastCost, type Program } from "./simplex.ts";
import type { WoodBoard } from "./wood.ts";

interface Demand {
  /** How many of each thing wanted the plan gives. */
  number: readonly number[];
  /** The cells of each kind of board. */
  cells: readonly (readonly Cell[])[];
  boards: readonly WoodBoard[];
  saw: number;
}

/** Branchings after which the bound is left as it is. */
const MOST_NODES = 40;
/** Patterns of one kind of board beyond which the best of them stands for all. */
const MOST_PATTERNS = 1200;

/**
 * mm³. Look right across a board at any place along it. The pieces there, each with a saw cut at one edge, lie beside each other: a
 * pattern. What is not an offcut is used there, so a pattern costs the board's width, or what its pieces take up to an offcut beside them.
 * Each piece runs on for its length and a saw cut. So a plan uses no less than the cheapest mix of patterns, so many mm of each, that
 * gives every piece its length; and of each board its first end. That is a linear program; whole numbers of boards are branched on.
 */
export function boundOf(demand: Demand): number {
  const { program, unit } = programOf(demand);
  return program.rows.length === 0 ? 0 : branched(program, demand.boards.length, unit) * 1e6;
}

/** What one more of each thing wanted costs at the bound, whole boards not insisted on, mm³; undefined where the boards do not give all. */
export function pricesOf(demand: Demand): number[] | undefined {
  const { program, things } = programOf(demand);
  const least = program.rows.length === 0 ? undefined : leastCost(program);
  if (!least) return undefined;
  const prices = demand.number.map(() => 0);
  for (const [r, wanted] of things.entries()) prices[wanted] = least.price[r]! * 1e6;
  return prices;
}

interface Stated {
  program: Program;
  things: readonly number[];
  unit: (at: number, value?: number) => number[];
}

function programOf({ boards, number, cells, saw }: Demand): Stated {
  const things = number.flatMap((many, wanted) => (many > 0 ? [wanted] : []));
  if (things.length === 0) return { program: { cost: [], rows: [] }, things, unit: () => [] };
  // Where less than a saw cut is taken off the ends the last cut may lie beyond the board: then only the pieces themselves count.
  const grows = boards.map(({ clear }) => (clear.x >= saw ? saw : 0));
  const patterns = boards.flatMap((board, kind) =>
    patternsOf(board, cells[kind]!, number, grows[kind]!).map((pattern) => ({ ...pattern, kind })),
  );
  const n = boards.length + patterns.length;
  const unit = (at: number, value = 1) => Array.from({ length: n }, (_, k) => (k === at ? value : 0));
  const zeros = boards.map(() => 0);
  const cost = [
    ...boards.map(({ clear, wide, thick }, k) => (grows[k]! > 0 ? clear.x * wide * thick : 0)),
    ...patterns.map(({ kind, used }) => used * boards[kind]!.thick),
  ];
  const rows: Program["rows"][number][] = things.map((wanted) => ({
    of: [...zeros, ...patterns.map(({ gives }) => gives.get(wanted) ?? 0)],
    least: number[wanted]!,
  }));
  for (const [k, { clear, count }] of boards.entries()) {
    const along = patterns.map(({ kind, share }) => (kind === k ? -share : 0));
    rows.push({ of: [...zeros.map((_, b) => (b === k ? clear.long + grows[k]! : 0)), ...along], least: 0 });
    if (Number.isFinite(count)) rows.push({ of: unit(k, -1), least: -count });
  }
  return { program: { cost: cost.map((each) => each / 1e6), rows }, things, unit };
}

/** Pieces beside each other: what they cost of the board's width, mm, and how many of each thing they give, for each mm along it. */
interface Pattern {
  used: number;
  gives: Map<number, number>;
  /** How much of the board's width it keeps from other patterns: all of it, but where patterns stand for parts of others. */
  share: number;
}

function patternsOf(
  { clear, wide }: WoodBoard,
  cells: readonly Cell[],
  number: readonly number[],
  grow: number,
): Pattern[] {
  const kinds = cells
    .filter((cell) => number[cell.wanted]! > 0 && (cell.count <= 1 || cell.nested || isFirst(cell, cells)))
    .map((cell) => ({ cell, width: cell.wide + grow, rate: cell.count / (cell.long + grow) }))
    .sort((a, b) => b.width - a.width);
  const wane = wide - clear.wide;
  const room = clear.wide + grow;
  const patterns: Pattern[] = [];
  const made = (chosen: readonly number[], taken: number): void => {
    const offcut = clear.wide - taken >= sawn.offcut.wide;
    const gives = new Map<number, number>();
    for (const k of chosen) {
      const { cell, rate } = kinds[k]!;
      gives.set(cell.wanted, (gives.get(cell.wanted) ?? 0) + rate);
    }
    patterns.push({ used: offcut ? taken + wane : wide, gives, share: 1 });
  };
  const narrowest = kinds[kinds.length - 1]?.width ?? 0;
  const walk = (from: number, chosen: number[], taken: number): void => {
    if (patterns.length > MOST_PATTERNS) return;
    // With no offcut beside it a fuller pattern costs the same.
    const offcut = clear.wide - taken >= sawn.offcut.wide;
    const counts = offcut || taken + narrowest > room + 1e-9;
    if (chosen.length > 0 && counts) made(chosen, taken);
    for (let k = from; k < kinds.length; k++)
      if (taken + kinds[k]!.width <= room + 1e-9) walk(k, [...chosen, k], taken + kinds[k]!.width);
  };
  walk(0, [], 0);
  if (patterns.length <= MOST_PATTERNS) return patterns;
  // Too many to try: every width may be filled to the last.
  const least = Math.min(1, wide / room);
  return kinds.map(({ cell, width, rate }) => ({
    used: width * least,
    gives: new Map([[cell.wanted, rate]]),
    share: width / room,
  }));
}

/** Of cells that only lay equal pieces side by side, one piece beside another says the same. */
const isFirst = ({ wanted, wide }: Cell, cells: readonly Cell[]): boolean =>
  cells.every((other) => other.wanted !== wanted || other.wide >= wide);

/** The least cost with whole numbers of the first `whole` unknowns, or the best bound on it when the nodes run out. */
function branched(program: Program, whole: number, unit: (at: number, value?: number) => number[]): number {
  const root = leastCost(program);
  if (!root) return 0;
  const open = [{ rows: program.rows, ...root }];
  for (let node = 0; node < MOST_NODES; node++) {
    open.sort((a, b) => a.cost - b.cost);
    const best = open[0]!;
    const at = best.x.findIndex((value, k) => k < whole && Math.abs(value - Math.round(value)) > 1e-6);
    if (at < 0) return best.cost;
    open.shift();
    const value = best.x[at]!;
    for (const row of [
      { of: unit(at), least: Math.ceil(value) },
      { of: unit(at, -1), least: -Math.floor(value) },
    ]) {
      const rows = [...best.rows, row];
      const solved = leastCost({ cost: program.cost, rows });
      if (solved) open.push({ ...solved, rows, cost: Math.max(solved.cost, best.cost) });
    }
    if (open.length === 0) return best.cost;
  }
  return Math.min(...open.map(({ cost }) => cost));
}
