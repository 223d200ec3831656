/**
 * Which boards are sawn, and how: a first plan at once, then better ones, by a fixed number of passes and never by the clock, so that
 * the same text gives the same plan on every machine.
 */
import type { Steps } from "../../grammar/steps.ts";
import type { Allowances } from "./allowances.ts";
import { layAlong } from "./along-skeleton.ts";
import { byLayouts, type Column } from "./by-layouts.ts";
import { type Cell, cellsOf, type Wanted } from "./cells.ts";
import { dearness, dive, type Made } from "./dive.ts";
import { exactLayout } from "./exact-layout.ts";
import { type Layout, layOut, type Task } from "./layout.ts";
import { areaOf } from "./outline.ts";
import { type Pricing, pricingOf } from "./pricing.ts";
import sawn from "./sawn-sizes.json" with { type: "json" };
import type { WoodBoard } from "./wood.ts";

/** One board, sawn. */
interface Sawn {
  board: WoodBoard;
  name: string;
  layout: Layout;
}

export interface Cutting {
  sawn: Sawn[];
  /** Of each thing wanted, how many no board had room for. */
  lacking: number[];
  /** mm³: boards touched less the offcuts that are listed. */
  used: number;
  /** mm³. */
  bound: number;
}

interface Job {
  wanted: readonly Wanted[];
  boards: readonly WoodBoard[];
  allowances: Allowances;
  /** How many passes after the first; more find less waste. */
  passes: number;
}

/** Within this of the bound a plan is left as it is. */
const GOOD = 0.01;

/** Plans, each better than the one before; the last is the answer. Rests after each board. */
export function* planSteps(job: Job, better: (cutting: Cutting, pass: number) => void): Steps<Cutting> {
  const setup = setUp(job);
  let best: Cutting | undefined;
  let closer: Closer | undefined;
  const random = seeded(1);
  for (let pass = 0; pass <= job.passes; pass++) {
    if (pass === CLOSER && best) {
      closer = yield* closerBound(job, setup, best);
      best.bound = Math.max(best.bound, closer.bound);
      better(best, pass - 1);
    }
    const anew = !best || best.sawn.length < 2 || pass % ANEW === 0;
    const kept = anew ? [] : spared(best!.sawn, random);
    const sawnAnew = yield* sawAll(job, setup, { kept, pass, random });
    const cutting = best ? mixed(sawnAnew, best) : sawnAnew;
    if (!best || isBetter(cutting, best, job.wanted)) {
      cutting.bound = best && sameLacking(best, cutting) ? best.bound : volumeCut(job, cutting);
      // With more cut it can only be more.
      if (closer && cutting.lacking.every((many, k) => many <= closer!.lacking[k]!))
        cutting.bound = Math.max(cutting.bound, closer.bound);
      best = cutting;
      better(best, pass);
    }
    if (isDone(best)) break;
    yield;
  }
  return best!;
}

/** Nothing is lacking, next to no wood could be saved, and none has to be bought. */
const isDone = ({ used, bound, lacking, sawn }: Cutting): boolean =>
  used <= bound * (1 + GOOD) &&
  lacking.every((many) => many === 0) &&
  sawn.every(({ board }) => board.from === "hand");

/** The pass before which a closer bound, and closer prices, are looked for. */
const CLOSER = 2;

interface Closer {
  bound: number;
  /** What the plan lacks that it holds for. */
  lacking: readonly number[];
}

/** The bound by whole layouts; its prices guide the passes that follow. */
function* closerBound({ wanted, boards, allowances }: Job, setup: Setup, best: Cutting): Steps<Closer> {
  const number = wanted.map((each) => each.number);
  setup.pricings = boards.map((board, kind) =>
    pricingOf({ board, cells: setup.cells[kind]!, number, saw: allowances.saw }),
  );
  const { bound, prices, columns } = yield* byLayouts({
    number: number.map((many, k) => many - best.lacking[k]!),
    boards,
    pricings: setup.pricings,
    first: best.sawn.map(({ board, layout }) => ({
      kind: boards.indexOf(board),
      used: layout.used,
      gives: layout.gives,
      layout,
    })),
    prices: wanted.map((_, k) => leastRoom(setup, boards, k)),
  });
  setup.prices = prices;
  setup.columns = columns;
  return { bound, lacking: best.lacking };
}

/** The least that one of a thing takes on any kind of board, mm³; 0 where it fits none. */
function leastRoom({ room }: Setup, boards: readonly WoodBoard[], wanted: number): number {
  const each = boards.flatMap(({ thick }, kind) => {
    const own = room[kind]![wanted];
    return own === undefined ? [] : own * thick;
  });
  return each.length > 0 ? Math.min(...each) : 0;
}

/** Of each thickness the boards of the plan that uses less, where both give the same from it. */
function mixed(one: Cutting, other: Cutting): Cutting {
  const sawn: Sawn[] = [];
  for (const thick of new Set([...one.sawn, ...other.sawn].map(({ board }) => board.thick))) {
    const [own, theirs] = [one, other].map((cutting) =>
      cutting.sawn.filter(({ board }) => board.thick === thick),
    );
    if (givenBy(own!) !== givenBy(theirs!)) return one;
    sawn.push(...(costOf(own!) <= costOf(theirs!) ? own! : theirs!));
  }
  return { ...one, sawn, used: usedBy(sawn) };
}

function givenBy(sawn: readonly Sawn[]): string {
  const gives = new Map<number, number>();
  for (const { layout } of sawn)
    for (const [thing, many] of layout.gives) gives.set(thing, (gives.get(thing) ?? 0) + many);
  return JSON.stringify([...gives].sort(([a], [b]) => a - b));
}

/** mm³. */
const usedBy = (sawn: readonly Sawn[]): number =>
  sawn.reduce((sum, { board, layout }) => sum + board.thick * layout.used, 0);

/** What some boards cost in wood, mm³. */
const costOf = (sawn: readonly Sawn[]): number =>
  sawn.reduce((sum, { board, layout }) => sum + dearness(board, layout.used), 0);

const sameLacking = (one: Cutting, other: Cutting): boolean =>
  one.lacking.every((many, k) => many === other.lacking[k]);

/** Every so many passes all boards are laid out anew; in between only the worst of a plan. */
const ANEW = 2;
/** How many boards are laid out anew at a time. */
const AT_ONCE = 3;
/** How often those may be of any thickness. */
const ANY = 0.5;
/** How often all boards of a thickness are. */
const WHOLE = 0.6;

/** A plan without some boards of one thickness: its worst, and others by chance; or without some of any. */
function spared(sawn: readonly Sawn[], random: () => number): Sawn[] {
  if (random() < ANY) {
    const many = 2 + Math.floor(random() * 3);
    const order = sawn
      .map((each, k) => ({ k, merit: each.layout.worth / each.layout.used - random() }))
      .sort((a, b) => a.merit - b.merit);
    const out = new Set(order.slice(0, many).map(({ k }) => k));
    return sawn.filter((_, k) => !out.has(k));
  }
  const thicks = [...new Set(sawn.map(({ board }) => board.thick))];
  const thick = thicks[Math.floor(random() * thicks.length)]!;
  const own = sawn.filter(({ board }) => board.thick === thick);
  if (random() < WHOLE) return sawn.filter((each) => !own.includes(each));
  const poor = ({ layout }: Sawn) => layout.worth / layout.used - 0.3 * random();
  const out = new Set(
    own
      .map((each) => ({ each, merit: poor(each) }))
      .sort((a, b) => a.merit - b.merit)
      .slice(0, AT_ONCE)
      .map(({ each }) => each),
  );
  return sawn.filter((each) => !out.has(each));
}

interface Setup {
  /** For each kind of board the cells of everything that may come from it. */
  cells: Cell[][];
  /** The least room of one of each thing wanted on each kind of board, mm². */
  room: (number | undefined)[][];
  /** What one more of each thing wanted costs at the bound, mm³, and the best layouts at given prices; once the closer bound is known. */
  prices?: readonly number[];
  pricings?: readonly (Pricing | undefined)[];
  /** The layouts they gave. */
  columns?: Column[];
}

function setUp({ wanted, boards, allowances }: Job): Setup {
  const cells: Cell[][] = [];
  for (const [at, board] of boards.entries()) {
    const room = { long: board.clear.long, wide: board.clear.wide, thick: board.thick };
    // The largest board that is sold is only asked for where the typical one, which stands before it, has no room.
    const typical = boards.findIndex(
      (other) => board.largest && other.source === board.source && other.thick === board.thick,
    );
    const served = new Set(typical >= 0 && typical < at ? cells[typical]!.map((cell) => cell.wanted) : []);
    cells.push(
      wanted.flatMap((each, k) =>
        mayUse(each, board) && !served.has(k) ? cellsOf(each, k, room, allowances) : [],
      ),
    );
  }
  const { saw } = allowances;
  const room = cells.map((own) => {
    const least: (number | undefined)[] = wanted.map(() => undefined);
    for (const cell of own) {
      const each = ((cell.long + saw) * (cell.wide + saw)) / cell.count;
      least[cell.wanted] = Math.min(least[cell.wanted] ?? Number.POSITIVE_INFINITY, each);
    }
    return least;
  });
  return { cells, room };
}

/** Whether any of these boards may be sawn for it: the same timber, and one it is pinned to. */
export function mayUse(wanted: Wanted, board: WoodBoard): boolean {
  if (wanted.only && board.from !== "hand") return false;
  if (wanted.only && !board.names.some((name) => wanted.only!.has(name))) return false;
  const own = board.timber?.species;
  return wanted.lines.every(
    ({ stock: { timber } }) => timber === undefined || own === undefined || timber.species === own,
  );
}

/** Fewer pieces lacking, then less used, whole boards counting for a little. */
function isBetter(one: Cutting, other: Cutting, wanted: readonly Wanted[]): boolean {
  const short = ({ lacking }: Cutting) =>
    lacking.reduce((sum, many, k) => sum + many * wanted[k]!.lines.length, 0);
  if (short(one) !== short(other)) return short(one) < short(other);
  return costOf(one.sawn) < costOf(other.sawn) * (1 - 1e-9);
}

interface Start {
  /** Boards that stay as they are laid out. */
  kept: readonly Sawn[];
  pass: number;
  random: () => number;
}

function* sawAll(job: Job, setup: Setup, { kept, pass, random }: Start): Steps<Cutting> {
  const { wanted, boards } = job;
  const left = wanted.map(({ number }) => number);
  for (const { layout } of kept) for (const [thing, many] of layout.gives) left[thing]! -= many;
  const taken = boards.map((board) => kept.filter((each) => each.board === board).length);
  const cutting: Cutting = { sawn: [...kept], lacking: left, used: 0, bound: 0 };
  // Boards to hand before any is bought; of each, the thinnest that serve first, so that thick ones are left for thick parts.
  const levels = [boards.filter(({ from }) => from === "hand"), boards.filter(({ from }) => from !== "hand")];
  const priced = setup.prices !== undefined && pass % 4 !== 0;
  const stops = priced && pass % 2 === 1 ? 0.03 * random() : undefined;
  const bias = wanted.map(
    (each) =>
      1 +
      weightOf(each, wanted) * (pass === 0 ? 0.15 : (priced ? 0.1 : 0.4) * random()) +
      (pass === 0 ? 0 : (priced ? 0.05 : 0.15) * random()),
  );
  // At first what only some boards may give is cut from them before anything else; later it is also tried where it wastes least.
  const pins = wanted.map(() => (pass === 0 ? PINNED : 1 + (PINNED - 1) * random() ** 2));
  const common: Omit<ClassOf, "kinds" | "known"> = {
    random,
    job,
    setup,
    left,
    taken,
    bias,
    pins,
    priced,
    stops,
    pass,
    cutting,
  };
  if (setup.pricings && setup.columns && pass % SLOWLY !== 0) {
    yield* dive({
      boards,
      pricings: setup.pricings,
      columns: setup.columns,
      left,
      taken,
      without: wanted.map((_, k) => DEAR * leastRoom(setup, boards, k)),
      random,
      saw: (column, prices) =>
        sawnLike({ ...common, kinds: [column.kind], known: new Map() }, column, prices),
      done: (kind, { name, layout }) => cutting.sawn.push({ board: boards[kind]!, name, layout }),
    });
  }
  for (const level of levels) {
    const thicks = [...new Set(level.map(({ thick }) => thick))].sort((a, b) => a - b);
    for (const thick of thicks) {
      const kinds = boards.flatMap((board, k) => (level.includes(board) && board.thick === thick ? [k] : []));
      yield* sawClass({ ...common, kinds, known: new Map() });
    }
  }
  cutting.used = usedBy(cutting.sawn);
  return cutting;
}

const PINNED = 3;
/** Going without a thing costs this many times the room it takes. */
const DEAR = 40;
/** Nothing is worth less than this share of its room. */
const LEAST = 0.3;

/** Long and wide pieces are harder to place later. */
function weightOf(each: Wanted, all: readonly Wanted[]): number {
  const size = ({ lines }: Wanted) =>
    Math.max(...lines.map(({ stock }) => stock.blank.long * Math.sqrt(stock.blank.wide)));
  return size(each) / Math.max(...all.map(size));
}

interface ClassOf {
  random: () => number;
  job: Job;
  setup: Setup;
  kinds: readonly number[];
  left: number[];
  taken: number[];
  bias: readonly number[];
  /** How much more a thing is worth that only some boards may give. */
  pins: readonly number[];
  /** Things are worth what they cost at the bound. */
  priced: boolean;
  /** A board may be left before it is full. */
  stops: number | undefined;
  pass: number;
  cutting: Cutting;
  known: Map<string, Task["known"]>;
}

/** Saws boards of one thickness until nothing more is needed of them or none is left. */
function* sawClass(at: ClassOf): Steps<void> {
  const { job, kinds, left, taken, pass, cutting } = at;
  const made = new Map<string, Layout>();
  for (;;) {
    let best: { kind: number; name: string; layout: Layout; merit: number } | undefined;
    for (const kind of kinds) {
      const board = job.boards[kind]!;
      if (taken[kind]! >= board.count) continue;
      for (const { name, like } of namesLeft(board, at)) {
        // What was laid out for a board like this one still holds while all that it gives is needed.
        const before = made.get(`${kind} ${like}`);
        let layout = before && [...before.gives].every(([k, many]) => left[k]! >= many) ? before : undefined;
        if (!layout) {
          const task = taskFor(at, kind, name);
          if (!task) continue;
          layout = better(laidOut(at, kind, task), exactLayout(task));
          yield;
          if (!layout) continue;
          made.set(`${kind} ${like}`, layout);
        }
        const merit = layout.worth / layout.used + worthBuying(board);
        if (!best || merit > best.merit + 1e-9) best = { kind, name, layout, merit };
      }
      if (pass === 0 && best && board.from === "hand") break;
    }
    if (!best) return;
    taken[best.kind]! += 1;
    for (const [wanted, many] of best.layout.gives) left[wanted]! -= many;
    cutting.sawn.push({ board: job.boards[best.kind]!, name: best.name, layout: best.layout });
  }
}

/** A board of the column's kind that is left, sawn as it is, or along its sections. */
function sawnLike(at: ClassOf, column: Column, prices: readonly number[]): Made | undefined {
  const { job, left } = at;
  const board = job.boards[column.kind]!;
  const [first] = namesLeft(board, at);
  if (!first) return undefined;
  if (column.layout && [...column.layout.gives].every(([k, many]) => left[k]! >= many))
    return { name: first.name, layout: column.layout };
  const task = taskFor(at, column.kind, first.name);
  if (!task || !column.sections) return undefined;
  const value = prices.map((price) => price / board.thick);
  const layout = layAlong({ ...task, value, known: new Map() }, column.sections);
  return layout && { name: first.name, layout };
}

/** By the prices of the bound where there are any; now and then, and at first, section by section. */
function laidOut({ setup, left, pass, random }: ClassOf, kind: number, task: Task): Layout | undefined {
  const pricing = setup.pricings?.[kind];
  if (!pricing || pass % SLOWLY === 0) return layOut(task);
  // At prices just so a board gains nothing by being filled.
  const more = 1.02 + 0.1 * random();
  const given = pricing({ value: task.value.map((value) => value * more), left }, Number.NEGATIVE_INFINITY);
  return given && layAlong(task, given.sections);
}

/** Every so many passes boards are laid out section by section. */
const SLOWLY = 16;

/** Of two layouts of a board the one that gives more for what it uses. */
const better = (one: Layout | undefined, other: Layout | undefined): Layout | undefined =>
  !other || (one && one.worth / one.used >= other.worth / other.used) ? one : other;

function knownFor(known: ClassOf["known"], key: string): Task["known"] {
  const own = known.get(key) ?? new Map();
  known.set(key, own);
  return own;
}

/** Of two boards that are used as well the cheaper is taken. */
const worthBuying = ({ price, long, wide, thick }: WoodBoard): number =>
  price === undefined ? 0 : -1e-3 * Math.min(1, (price / (long * wide * thick)) * 1e5);

/** A board that is left, and which others of its kind serve as it does: those that no part is pinned to singly are alike. */
interface LeftBoard {
  name: string;
  like: string;
}

/** The boards of a kind that are left; alike ones once, those that a part is pinned to each for itself. */
function namesLeft(board: WoodBoard, { job, cutting }: ClassOf): LeftBoard[] {
  if (board.from !== "hand") {
    const alike = cutting.sawn.filter(({ board: other }) => other.source === board.source);
    const taken = new Set(alike.map(({ name }) => name));
    let number = 1;
    while (taken.has(`${board.source} ${number}`)) number++;
    return [{ name: `${board.source} ${number}`, like: "" }];
  }
  const gone = new Set(cutting.sawn.map(({ name }) => name));
  const there = board.names.filter((name) => !gone.has(name));
  const pinned = there.filter((name) =>
    job.wanted.some(
      ({ only, number }) => number > 0 && only !== undefined && only.size < board.count && only.has(name),
    ),
  );
  const plain = there.find((name) => !pinned.includes(name));
  const singly = pinned.map((name) => ({ name, like: name }));
  return plain === undefined ? singly : [...singly, { name: plain, like: "" }];
}

function taskFor(
  { job, setup, left, bias, pins, priced, stops, pass, known }: ClassOf,
  kind: number,
  name: string,
): Task | undefined {
  const board = job.boards[kind]!;
  const cells = setup.cells[kind]!.filter(({ wanted }) => {
    const only = job.wanted[wanted]!.only;
    return left[wanted]! > 0 && (!only || only.has(name));
  });
  if (cells.length === 0) return undefined;
  // By the room it takes, or by what it costs at the bound, so that a board is not spent on what another gives for less.
  const worthOf = (each: Wanted, k: number): number => {
    const room = setup.room[kind]![k];
    if (room === undefined) return 0;
    if (!priced) return room * bias[k]! * (each.only ? pins[k]! : 1);
    return Math.max(setup.prices![k]! / board.thick, LEAST * room) * bias[k]!;
  };
  return {
    board,
    known: knownFor(known, `${kind} ${cells.length}`),
    within: new Map(),
    clear: board.clear,
    defects: board.defects,
    cells,
    left,
    saw: job.allowances.saw,
    value: job.wanted.map((each, k) => worthOf(each, k)),
    offcut: sawn.offcut,
    ...(stops !== undefined && { stops }),
    beam: pass === 0 ? 1 : 4,
  };
}

/** What the pieces themselves hold: no plan uses less, mm³. */
const volumeCut = ({ wanted }: Job, { lacking }: Cutting): number =>
  wanted.reduce((sum, { lines, number }, k) => {
    const each = lines.reduce((all, { stock: { blank, outline } }) => {
      const area = outline ? areaOf(outline) : blank.long * blank.wide;
      return all + area * blank.thick;
    }, 0);
    return sum + (number - lacking[k]!) * each;
  }, 0);

/** A fixed row of numbers from 0 to 1: mulberry32. */
function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}
