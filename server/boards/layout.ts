/**
 * Laying out one board: crosscut into sections where that is better, each section ripped to strips, each strip crosscut to cells.
 */
import { laidAround } from "./around.ts";
import type { Cell } from "./cells.ts";
import { chosenFor, type Filled, fillStrip, type Placed, type Prices, type Stretch } from "./strip.ts";
import type { Box } from "./wood.ts";

export interface Strip {
  y: number;
  wide: number;
  placed: Placed[];
}

export interface Section {
  x: number;
  long: number;
  strips: Strip[];
}

/** What is to be sawn from one board, and what is left of it. */
export interface Layout {
  sections: Section[];
  offcuts: Box[];
  /** Area worth of all that is cut, as the pass prices it, mm². */
  worth: number;
  /** The area of the board that is not an offcut, mm². */
  used: number;
  /** How many of each thing wanted it gives. */
  gives: Map<number, number>;
}

export interface Task {
  board: { long: number; wide: number };
  clear: Box;
  defects: readonly Box[];
  cells: readonly Cell[];
  /** How many of each thing are still wanted. */
  left: readonly number[];
  saw: number;
  /** What one of each thing wanted is worth, mm². */
  value: readonly number[];
  /** The least offcut worth keeping. */
  offcut: { long: number; wide: number };
  /** It ends, though more would fit, where what it gives for what it uses falls this far below the best; absent: it goes on. */
  stops?: number;
  /** How many half-made layouts are followed at once. */
  beam: number;
  /** Strips filled before at the same values. */
  known: Prices["known"];
  /** The cells that have room in a strip, by its width, as far as they were asked for. */
  within: Map<number, Within>;
}

interface Within {
  cells: Cell[];
  /** Those of them that may lie over a defect. */
  hiding: Cell[];
}

/** Strips of so many widths are tried at each place; of fewer for a plan that is to be there at once. */
const MOST_WIDTHS = 16;
const FEW_WIDTHS = 6;

/**
 * A layout of a board, section by section from its first end: each time the section that loses least for what it gives. Undefined when
 * nothing fits.
 */
export const layOut = (task: Task): Layout | undefined => laidBy(task, bestSection);

/** A layout of sections, each chosen by `next` for the rest of the board and what is still left, until there is none. */
export function laidBy(task: Task, next: (rest: Task) => Made | undefined): Layout | undefined {
  const { clear, saw, offcut } = task;
  const left = [...task.left];
  const whole: Layout = { sections: [], offcuts: [], worth: 0, used: 0, gives: new Map() };
  const merit = ({ worth, used }: Layout) => worth / used;
  let best: Layout | undefined;
  let top = 0;
  const end = clear.x + clear.long;
  let from = clear.x;
  while (end - from > 0) {
    const rest = { ...task, clear: { ...clear, x: from, long: end - from }, left };
    const made = next(rest);
    if (!made) break;
    const start = from;
    const gap = made.section.x - saw - start;
    if (made.section.x > from + saw && gap >= offcut.long)
      whole.offcuts.push({ x: start, y: 0, long: gap, wide: task.board.wide });
    from = made.section.x + made.section.long + saw;
    whole.offcuts.push(...made.offcuts);
    whole.sections.push(made.section);
    whole.worth += made.worth;
    for (const { placed } of made.section.strips)
      for (const { cell, used } of placed) {
        left[cell.wanted]! -= used;
        whole.gives.set(cell.wanted, (whole.gives.get(cell.wanted) ?? 0) + used);
      }
    const ended = endedAt(whole, from, task);
    top = Math.max(top, merit(ended));
    if (task.stops === undefined || merit(ended) >= top - task.stops) best = ended;
  }
  return best;
}

/** A layout whose last section ends at a place along the board. What is left is a shorter board, its own end, edges and defects still on it. */
function endedAt(whole: Layout, from: number, { board, offcut }: Task): Layout {
  const offcuts = [...whole.offcuts];
  if (board.long - from >= offcut.long)
    offcuts.push({ x: from, y: 0, long: board.long - from, wide: board.wide });
  const used = board.long * board.wide - offcuts.reduce((sum, box) => sum + box.long * box.wide, 0);
  return { ...whole, offcuts, used, sections: [...whole.sections], gives: new Map(whole.gives) };
}

function bestSection(task: Task): Made | undefined {
  const { clear, saw, board, offcut } = task;
  let best: { made: Made; merit: number } | undefined;
  for (const long of lengthsFor(task)) {
    const made = tightSection({ ...task, clear: { ...clear, long } });
    if (!made) continue;
    const { section, offcuts } = made;
    const lead = section.x - clear.x;
    // A long enough piece of board before the section stays whole.
    const before = lead - saw >= offcut.long ? saw + LEAD * lead : lead;
    const area =
      (before + section.long + saw) * board.wide - offcuts.reduce((sum, box) => sum + box.long * box.wide, 0);
    const merit = made.worth / area;
    if (!best || merit > best.merit + 1e-9) best = { made, merit };
  }
  return best?.made;
}

/** A piece of board left whole before a section costs this share of it: it is better used. */
const LEAD = 0.15;

/** The best section no longer than its pieces need, from the first of them. */
const tightSection = (task: Task): Made | undefined => tightened(task, sectionOf);

/** A section made again no longer than its pieces need. */
export function tightened(task: Task, make: (task: Task) => Made | undefined): Made | undefined {
  const { clear } = task;
  const made = make(task);
  if (!made) return undefined;
  const placed = made.section.strips.flatMap((strip) => strip.placed);
  const from = Math.min(...placed.map(({ x }) => x));
  const to = Math.max(...placed.map(({ x, cell }) => x + cell.long));
  if (from - clear.x < NEAR && clear.x + clear.long - to < NEAR) return made;
  // Strips are filled by whole millimetres: each cell may need one more.
  const most = Math.max(...made.section.strips.map(({ placed: cells }) => cells.length));
  const long = Math.min(to - from + most, clear.x + clear.long - from);
  return make({ ...task, clear: { ...clear, x: from, long } }) ?? made;
}

/** Lengths nearer than this are tried as one, mm. */
const NEAR = 1.5;

/** The lengths a section is tried at: those of cells; with more effort those of two, up to and past the next defect, and all that is left. */
function lengthsFor({ clear, cells, defects, left, saw, beam }: Task): number[] {
  const single = [
    ...new Set(
      cells.filter(({ wanted }) => left[wanted]! > 0).map(({ long }) => Math.ceil(long + saw) - saw),
    ),
  ];
  const all = [...single];
  if (beam > 1) {
    for (const a of single) for (const b of single) if (a <= b) all.push(a + b + saw);
    for (const { x, long } of defects) all.push(x - clear.x, x + long - clear.x);
  }
  // Past what is in the way of the longest.
  for (const { x, long } of defects)
    if (x >= clear.x - 1e-9 || x + long > clear.x)
      for (const each of single) all.push(x + long + each - clear.x);
  if (beam > 1 || all.length === 0) all.push(clear.long);
  const fitting = all.filter((long) => long > 0 && long <= clear.long + 1e-9).sort((a, b) => b - a);
  return fitting.filter((long, k) => k === 0 || fitting[k - 1]! - long > NEAR);
}

interface Half {
  y: number;
  left: number[];
  strips: Strip[];
  offcuts: Box[];
  worth: number;
  /** Area lost so far: no piece and no offcut. */
  lost: number;
}

/** A section with its strips, and what is left beside them. */
export type Made = Pick<Half, "offcuts" | "worth"> & { section: Section };

function sectionOf(task: Task): Made | undefined {
  const { clear } = task;
  const top = clear.y + clear.wide;
  let halves: Half[] = [emptyHalf(task)];
  const done: Half[] = [];
  for (let depth = 0; depth < 60 && halves.length > 0; depth++) {
    const next: Half[] = [];
    for (const half of halves) {
      done.push(closed(task, half));
      for (const wide of widthsFor(task, half, top - half.y)) {
        next.push(...withStrip(task, half, wide));
      }
      const skipped = skip(task, half);
      if (skipped) next.push(skipped);
    }
    next.sort((a, b) => rank(b) - rank(a) || a.y - b.y);
    halves = next.slice(0, task.beam);
  }
  return madeOf(task, done);
}

/** The best of some finished sections. */
function madeOf({ clear, offcut }: Task, done: readonly Half[]): Made | undefined {
  let best: Half | undefined;
  for (const half of done) if (half.worth > 0 && (!best || final(half) > final(best) + 1e-9)) best = half;
  if (!best) return undefined;
  return {
    section: { x: clear.x, long: clear.long, strips: best.strips.filter(({ placed }) => placed.length > 0) },
    offcuts: best.offcuts.filter(({ long, wide }) => long >= offcut.long && wide >= offcut.wide),
    worth: best.worth,
  };
}

/** A section of strips of given widths, widest first or last, whichever its defects harm less. */
export function sectionOfWidths(task: Task, wides: readonly number[]): Made | undefined {
  const top = task.clear.y + task.clear.wide;
  const widest = [...wides].sort((a, b) => b - a);
  const done = [widest, [...widest].reverse()].map((order) => {
    let half = emptyHalf(task);
    for (const wide of order) {
      if (half.y + wide > top + 1e-9) continue;
      const ways = withStrip(task, half, wide);
      if (ways.length > 0) half = ways.reduce((a, b) => (final(b) > final(a) ? b : a));
    }
    return closed(task, half);
  });
  return madeOf(task, done);
}

const emptyHalf = ({ clear, left }: Task): Half => ({
  y: clear.y,
  left: [...left],
  strips: [],
  offcuts: [],
  worth: 0,
  lost: 0,
});

/** How promising: what is cut over what it cost, for halves of any height. */
const rank = ({ worth, lost }: Half): number => (worth > 0 ? worth / (worth + lost) + worth * 1e-9 : 0.5);

/** What a finished section comes to: all that is cut less what is lost. */
const final = ({ worth, lost }: Half): number => worth - 1.5 * lost;

function widthsFor({ cells, left, beam }: Task, half: Half, room: number): number[] {
  const widths = new Set<number>();
  for (const cell of cells)
    if (
      cell.wide <= room + 1e-9 &&
      half.left[cell.wanted]! > 0 &&
      left[cell.wanted]! > 0 &&
      !widths.has(cell.wide)
    ) {
      // A row that holds more than is left is no wider than it must be.
      if (cell.count === 1 || half.left[cell.wanted]! * 2 > cell.count) widths.add(cell.wide);
    }
  return [...widths].sort((a, b) => b - a).slice(0, beam > 1 ? MOST_WIDTHS : FEW_WIDTHS);
}

/** The half-made layout with one more strip: its defects crosscut out, or left in where no piece is the worse for them. */
function withStrip(task: Task, half: Half, wide: number): Half[] {
  const { clear, saw, offcut, value } = task;
  const { cells, hiding } = withinOf(task, wide);
  const prices: Prices = {
    worth: (cell, used) => used * value[cell.wanted]!,
    loss: (rest) => (rest >= offcut.long && wide >= offcut.wide ? 0 : Math.max(0, rest) * (wide + saw)),
    known: task.known,
    wide,
  };
  const left = [...half.left];
  const filled = fillStrip(stretchesOf(task, half.y, wide), cells, left, saw, prices);
  const made = filled.placed.length > 0 ? [raised(task, half, { ...filled, wide, left })] : [];
  const defects = defectsIn(task, half.y, wide).filter(
    ({ x, long }) => x + long > clear.x && x < clear.x + clear.long,
  );
  if (defects.length === 0) return made;
  for (const own of hiding.length > 0 ? [cells, hiding] : [cells]) {
    const over = [...half.left];
    const around = filledAround(task, { y: half.y, wide, over: own, cells, left: over, prices, defects });
    if (around.placed.length > 0) made.push(raised(task, half, { ...around, wide, left: over }));
  }
  return made;
}

function withinOf({ cells, within }: Task, wide: number): Within {
  const known = within.get(wide);
  if (known) return known;
  const own = cells.filter((cell) => cell.wide <= wide + 1e-9);
  const hiding = own.filter(({ pieces }) => pieces.some(({ hides }) => hides));
  const made = { cells: own, hiding };
  within.set(wide, made);
  return made;
}

interface Around {
  y: number;
  wide: number;
  /** Cells to lay over the defects, and those to fill the gaps with. */
  over: readonly Cell[];
  cells: readonly Cell[];
  left: number[];
  prices: Prices;
  defects: readonly Box[];
}

/** A strip filled as if it were clear, as far as its defects let it; then the gaps between. */
function filledAround(task: Task, { y, wide, over, cells, left, prices, defects }: Around): Filled {
  const { clear, saw } = task;
  const own = over === cells ? prices : { ...prices, known: new Map() };
  const chosen = chosenFor(clear.long, over, left, saw, own);
  const strip = { x: clear.x, long: clear.long, y, saw, defects };
  const placed = laidAround(chosen, strip, ({ cell, used }) => prices.worth(cell, used));
  const gaps: Stretch[] = [];
  let worth = 0;
  let from = clear.x;
  const gap = (to: number) => {
    if (to > from)
      gaps.push(...stretchesOf({ ...task, clear: { ...clear, x: from, long: to - from } }, y, wide));
  };
  for (const { cell, x, used } of placed) {
    gap(x - saw);
    left[cell.wanted]! -= used;
    worth += prices.worth(cell, used);
    from = x + cell.long + saw;
  }
  gap(clear.x + clear.long);
  const between = fillStrip(gaps, cells, left, saw, prices);
  return {
    placed: [...placed, ...between.placed].sort((a, b) => a.x - b.x),
    worth: worth + between.worth,
    rests: between.rests,
  };
}

/** A half-made layout with a filled strip on it. */
function raised(
  { clear, saw, offcut, value }: Task,
  half: Half,
  { placed, worth, rests, wide, left }: Filled & { wide: number; left: number[] },
): Half {
  const strip: Strip = { y: half.y, wide, placed };
  const kept = rests.filter(({ long }) => long >= offcut.long && wide >= offcut.wide);
  const area = clear.long * (wide + saw) - kept.reduce((sum, { long }) => sum + long * wide, 0);
  const cut = placed.reduce((sum, { cell, used }) => sum + used * value[cell.wanted]!, 0);
  return {
    y: half.y + wide + saw,
    left,
    strips: [...half.strips, strip],
    offcuts: [...half.offcuts, ...kept.map(({ x, long }) => ({ x, y: half.y, long, wide }))],
    worth: half.worth + worth,
    lost: half.lost + Math.max(0, area - cut),
  };
}

const defectsIn = ({ defects }: Pick<Task, "defects">, y: number, wide: number): Box[] =>
  defects.filter((box) => box.y < y + wide - 1e-9 && box.y + box.wide > y + 1e-9);

/** The clear stretches of a strip: defects in it are crosscut out. */
function stretchesOf(
  { clear, defects, saw }: Pick<Task, "clear" | "defects" | "saw">,
  y: number,
  wide: number,
): Stretch[] {
  const inIt = defectsIn({ defects }, y, wide).sort((a, b) => a.x - b.x);
  const stretches: Stretch[] = [];
  let from = clear.x;
  const end = clear.x + clear.long;
  for (const box of inIt) {
    if (box.x > from) stretches.push({ x: from, long: Math.min(box.x, end) - from });
    from = Math.max(from, box.x + box.long, box.x > from ? box.x + saw : from);
  }
  if (end > from) stretches.push({ x: from, long: end - from });
  return stretches.filter(({ long }) => long > 0);
}

/** The strip up to the next defect's far edge left out, as offcuts where it is clear. */
function skip(task: Task, half: Half): Half | undefined {
  const { clear, defects, saw } = task;
  const edges = defects
    .map(({ y, wide }) => y + wide)
    .filter((y) => y > half.y + 1e-9 && y < clear.y + clear.wide - 1e-9);
  if (edges.length === 0) return undefined;
  const y = Math.min(...edges);
  const wide = y - half.y - saw;
  const offcuts = wide > 0 ? leftOver(task, half.y, wide) : [];
  const kept = offcuts.reduce((sum, box) => sum + box.long * box.wide, 0);
  return {
    ...half,
    y,
    offcuts: [...half.offcuts, ...offcuts],
    lost: half.lost + clear.long * (y - half.y) - kept,
  };
}

/** A half-made layout left as it is: what is above its last strip is left over. */
function closed(task: Task, half: Half): Half {
  const { clear } = task;
  const wide = clear.y + clear.wide - half.y;
  if (wide <= 0) return half;
  const offcuts = leftOver(task, half.y, wide);
  const kept = offcuts.reduce((sum, box) => sum + box.long * box.wide, 0);
  return { ...half, offcuts: [...half.offcuts, ...offcuts], lost: half.lost + clear.long * wide - kept };
}

/** A band across a section as offcuts, where it is clear and worth keeping. */
export function leftOver(task: Task, y: number, wide: number): Box[] {
  const { offcut } = task;
  if (wide < offcut.wide) return [];
  return stretchesOf(task, y, wide)
    .filter(({ long }) => long >= offcut.long)
    .map(({ x, long }) => ({ x, y, long, wide }));
}
