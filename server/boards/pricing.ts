/**
 * The most that one board can give at given prices, less the area it uses, over all layouts in sections, strips and cells: a knapsack of
 * cells for each strip, of strips for each section, of sections for the board. Defects are left out of account and sizes are taken down to
 * the grid, so that it is never less than what a real layout gives.
 */
import type { Cell } from "./cells.ts";
import sawn from "./sawn-sizes.json" with { type: "json" };
import type { WoodBoard } from "./wood.ts";

/** What one board gives. */
export interface Given {
  /** Worth of all that is cut less the area used, mm². */
  gain: number;
  /** The board's area less its offcuts, mm². */
  used: number;
  /** How many of each thing. */
  gives: Map<number, number>;
  /** Its sections from its first end: how long each is to the millimetre, and the widths of its strips. */
  sections: Skeleton[];
}

/** A section before its strips are filled. */
export interface Skeleton {
  /** From the board's first end, and its length, mm, too short by up to a millimetre for each cell. */
  x: number;
  long: number;
  wides: number[];
}

interface Sheet {
  board: WoodBoard;
  cells: readonly Cell[];
  /** How many of each thing are needed. */
  number: readonly number[];
  saw: number;
}

/** Cells of one length: how many of a thing, and its length with a saw cut, whole mm. */
interface Item {
  wanted: number;
  count: number;
  size: number;
}

interface Strip {
  wide: number;
  items: Item[];
}

const NEAR = 1e-6;
/** Sums of widths times widths beyond which widths are taken down to a coarser grid. */
const MOST_STATES = 6000;

/** What one of each thing is worth, mm², and how many are left to be cut. */
interface Prices {
  value: readonly number[];
  left: readonly number[];
}

/** The best layout at some prices; undefined where none gains more than `least`, mm². */
export type Pricing = (prices: Prices, least?: number) => Given | undefined;

/** A pricing of one kind of board; undefined where nothing fits it. */
export function pricingOf({ board, cells, number, saw }: Sheet): Pricing | undefined {
  const { clear } = board;
  const most = Math.floor(clear.long + saw + NEAR);
  const strips = stripsOf(cells, number, saw, most, clear.wide);
  const shortest = Math.min(...strips.flatMap(({ items }) => items.map(({ size }) => size)));
  if (!Number.isFinite(shortest)) return undefined;
  const across = acrossOf(strips, saw, clear.wide);
  // Whole millimetres take up to one off each cell along a strip.
  const slack = Math.floor(most / shortest);
  const kept = Math.floor(sawn.offcut.long + saw) - slack;
  const lengths = windowsOf(lengthsOf(strips, most, kept));
  const space = spaceFor(across.sums.length);
  const stretches = stretchesOf(board, cells, most, saw);
  const area = board.wide * board.long;
  return ({ value, left }, least = NEAR) => {
    const fills = strips.map((strip) => fillOf(strip, value, left, most));
    const tops = new Map(lengths.map(({ t, top }) => [t, top]));
    const worthAt = (t: number): number => sectionOf({ t, fills, across, saw, kept, space }).worth;
    const sectionAt = (t: number): Section =>
      sectionOf({ t: tops.get(t) ?? t, fills, across, saw, kept, space });
    const known = new Map(lengths.map(({ t, top }) => [t, worthAt(top)]));
    for (;;) {
      const best = boardOf({
        known,
        most,
        stretches,
        long: board.long - clear.x,
        wide: board.wide,
        kept: kept - saw,
      });
      if (best.worth <= area + least) return undefined;
      const guessed = best.sections.find(({ t }) => !known.has(t));
      if (guessed === undefined) return givenBy(best, sectionAt);
      known.set(guessed.t, worthAt(guessed.t));
      lengths.push({ t: guessed.t, top: guessed.t });
    }

    function givenBy({ worth: all, sections }: Along, at: (t: number) => Section): Given {
      const gives = new Map<number, number>();
      const skeletons: Skeleton[] = [];
      for (const { x, t } of sections) {
        const { strips: own } = at(t);
        for (const { strip, size } of own)
          for (const { wanted, count } of fills[strip]!.chosen(size))
            gives.set(wanted, (gives.get(wanted) ?? 0) + count);
        skeletons.push({ x: clear.x + x, long: t - saw, wides: own.map(({ strip }) => strips[strip]!.wide) });
      }
      const gain = all - area;
      const worth = [...gives].reduce((sum, [wanted, many]) => sum + many * value[wanted]!, 0);
      return { gain, used: worth - gain, gives, sections: skeletons };
    }
  };
}

/** The stretches of a board between defects that go right across, by the lengths they have room for, in whole mm from its clear end. */
function stretchesOf(
  { clear, defects }: WoodBoard,
  cells: readonly Cell[],
  most: number,
  saw: number,
): Stretch[] {
  // Under hidden faces a defect may stay.
  const hides = cells.some(({ pieces }) => pieces.some((piece) => piece.hides));
  const across = hides
    ? []
    : defects
        .filter(({ y, wide }) => y <= clear.y + NEAR && y + wide >= clear.y + clear.wide - NEAR)
        .sort((a, b) => a.x - b.x);
  const stretches: Stretch[] = [];
  let from = 0;
  for (const { x, long } of across) {
    const to = Math.min(most, Math.floor(x - clear.x + saw + NEAR));
    if (to > from) stretches.push({ from, to });
    from = Math.max(from, Math.floor(x + long - clear.x + NEAR));
  }
  if (most > from) stretches.push({ from, to: most });
  return stretches;
}

interface Stretch {
  from: number;
  to: number;
}

/** Strips by their width, each with the cells that have room in it, none of which another beats. */
function stripsOf(
  cells: readonly Cell[],
  number: readonly number[],
  saw: number,
  most: number,
  room: number,
): Strip[] {
  const some = cells.filter((cell) => number[cell.wanted]! > 0 && cell.wide <= room + NEAR);
  const widths = [...new Set(some.map(({ wide }) => wide))].sort((a, b) => a - b);
  const strips: Strip[] = [];
  for (const wide of widths) {
    const items: Item[] = [];
    for (const cell of some) {
      if (cell.wide > wide + NEAR) continue;
      const size = Math.floor(cell.long + saw + NEAR);
      if (size > most) continue;
      put(items, { wanted: cell.wanted, count: Math.min(cell.count, number[cell.wanted]!), size });
    }
    const before = strips[strips.length - 1];
    if (items.length > 0 && !(before && sameItems(before.items, items))) strips.push({ wide, items });
  }
  return strips;
}

function put(items: Item[], item: Item): void {
  const beats = (a: Item, b: Item) => a.wanted === b.wanted && a.size <= b.size && a.count >= b.count;
  if (items.some((other) => beats(other, item))) return;
  for (let k = items.length - 1; k >= 0; k--) if (beats(item, items[k]!)) items.splice(k, 1);
  items.push(item);
}

const sameItems = (a: readonly Item[], b: readonly Item[]): boolean =>
  a.length === b.length &&
  a.every((one) => b.some((o) => o.wanted === one.wanted && o.count === one.count && o.size === one.size));

/** Lengths of sections, each with a saw cut: those that cells fill, and those that leave just an offcut beside them. */
function lengthsOf(strips: readonly Strip[], most: number, kept: number): number[] {
  const sizes = new Set(strips.flatMap(({ items }) => items.map(({ size }) => size)));
  const filled = new Uint8Array(most + 1);
  filled[0] = 1;
  for (let t = 0; t <= most; t++)
    if (filled[t]) for (const size of sizes) if (t + size <= most) filled[t + size] = 1;
  const lengths = new Set<number>([most]);
  for (let t = 0; t <= most; t++) {
    if (!filled[t]) continue;
    if (t > 0) lengths.add(t);
    if (t + kept <= most) lengths.add(t + kept);
  }
  return [...lengths].sort((a, b) => a - b);
}

/** More lengths than this are taken together where they are near each other. */
const MANY = 300;
/** As near as this, mm. */
const WINDOW = 2;

/** Lengths taken together: a section is worth what it is at the longest of them and takes the room of the shortest. */
interface Length {
  t: number;
  top: number;
}

function windowsOf(lengths: readonly number[]): Length[] {
  const windows: Length[] = [];
  for (const t of lengths) {
    const last = windows[windows.length - 1];
    if (last && lengths.length > MANY && t <= last.t + WINDOW) last.top = t;
    else windows.push({ t, top: t });
  }
  return windows;
}

/** Room to work in, kept from section to section. */
interface Space {
  best: Float64Array;
  by: Int16Array;
  from: Int32Array;
}

const spaceFor = (size: number): Space => ({
  best: new Float64Array(size),
  by: new Int16Array(size),
  from: new Int32Array(size),
});

interface Fill {
  wide: number;
  /** Worth of the best cells, by the length they may take. */
  best: Float64Array;
  /** The most of worth less area taken, and where it is reached, by the same. */
  spare: Float64Array;
  spareAt: Int32Array;
  chosen: (size: number) => Item[];
}

/** No more of a thing than are left. */
function fillOf(
  { wide, items }: Strip,
  value: readonly number[],
  left: readonly number[],
  most: number,
): Fill {
  const lots = items.flatMap((item) => lotsOf(item, left[item.wanted]!, value[item.wanted]!, most));
  const best = filled(lots, most);
  const spare = new Float64Array(most + 1);
  const spareAt = new Int32Array(most + 1);
  for (let t = 1; t <= most; t++) {
    const own = best[t]! - t * wide;
    const more = own > spare[t - 1]!;
    spare[t] = more ? own : spare[t - 1]!;
    spareAt[t] = more ? t : spareAt[t - 1]!;
  }
  const chosen = (size: number): Item[] => {
    const taken: Uint8Array[] = [];
    filled(lots, size, taken);
    const found: Item[] = [];
    let t = size;
    for (let k = lots.length - 1; k >= 0; k--) {
      if (!taken[k]![t]) continue;
      found.push(lots[k]!.item);
      t -= lots[k]!.size;
    }
    return found;
  };
  return { wide, best, spare, spareAt, chosen };
}

/** So many cells of a kind together, to be taken or left. */
interface Lot {
  item: Item;
  size: number;
  worth: number;
}

/** Lots of 1, 2, 4 … cells, of which any number up to all that are needed can be made. */
function lotsOf(item: Item, left: number, value: number, most: number): Lot[] {
  const lots: Lot[] = [];
  let many = Math.min(Math.ceil(left / item.count), Math.floor(most / item.size));
  let there = left;
  for (let some = 1; many > 0; some *= 2) {
    const own = Math.min(some, many);
    const count = Math.min(there, own * item.count);
    if (count <= 0) break;
    lots.push({ item: { ...item, count }, size: own * item.size, worth: count * value });
    many -= own;
    there -= count;
  }
  return lots;
}

/** The most that lots come to, by the length they may take; `taken` says of each lot where it is. */
function filled(lots: readonly Lot[], most: number, taken?: Uint8Array[]): Float64Array {
  const best = new Float64Array(most + 1);
  for (const { size, worth } of lots) {
    const own = taken && new Uint8Array(most + 1);
    for (let t = most; t >= size; t--) {
      const sum = best[t - size]! + worth;
      if (sum <= best[t]! + NEAR) continue;
      best[t] = sum;
      if (own) own[t] = 1;
    }
    if (own) taken.push(own);
  }
  return best;
}

/** Sums of strips' widths, each with a saw cut, that a board has room for, and which sum each strip leads to from each. */
interface Across {
  sums: number[];
  next: Int32Array;
  wide: number;
}

function acrossOf(strips: readonly Strip[], saw: number, wide: number): Across {
  for (let grid = 0.01; ; grid *= 2) {
    const steps = strips.map((strip) => Math.max(1, Math.floor((strip.wide + saw) / grid + NEAR)));
    const most = Math.floor((wide + saw) / grid + NEAR);
    const seen = new Set<number>([0]);
    const open = [0];
    while (open.length > 0 && seen.size * strips.length <= MOST_STATES) {
      const at = open.pop()!;
      for (const step of steps) {
        const to = at + step;
        if (to > most || seen.has(to)) continue;
        seen.add(to);
        open.push(to);
      }
    }
    if (seen.size * strips.length > MOST_STATES) continue;
    const sorted = [...seen].sort((a, b) => a - b);
    const index = new Map(sorted.map((sum, k) => [sum, k]));
    const next = new Int32Array(sorted.length * steps.length).fill(-1);
    for (const [s, sum] of sorted.entries())
      for (const [k, step] of steps.entries()) next[s * steps.length + k] = index.get(sum + step) ?? -1;
    return { sums: sorted.map((sum) => sum * grid), next, wide };
  }
}

interface Section {
  /** Of what is cut, and of the offcuts beside it, mm². */
  worth: number;
  /** Its strips, and how much of their length cells take. */
  strips: { strip: number; size: number }[];
}

/** The best strips of a section that takes a length t, a saw cut with it. */
function sectionOf(given: {
  t: number;
  fills: readonly Fill[];
  across: Across;
  saw: number;
  kept: number;
  space: Space;
}): Section {
  const { t, fills, across, saw, kept, space } = given;
  const { sums, next, wide } = across;
  const count = fills.length;
  // A strip that is worth no more than a narrower one is not tried.
  const tried: { strip: number; worth: number; size: number }[] = [];
  let top = 0;
  for (const [strip, { best, spare, spareAt, wide: own }] of fills.entries()) {
    let worth = best[t]!;
    let size = t;
    const until = t - kept;
    if (own >= sawn.offcut.wide - NEAR && until >= 0) {
      const left = spare[until]! + (t - saw) * own;
      if (left > worth) [worth, size] = [left, spareAt[until]!];
    }
    if (worth > top + NEAR) {
      top = worth;
      tried.push({ strip, worth, size });
    }
  }
  const { best, by, from } = space;
  best.fill(Number.NEGATIVE_INFINITY);
  best[0] = 0;
  let at = 0;
  let all = 0;
  const steps = tried.map(({ strip }) => strip);
  const worths = tried.map(({ worth }) => worth);
  for (let s = 0; s < sums.length; s++) {
    const sum = best[s]!;
    if (sum === Number.NEGATIVE_INFINITY) continue;
    const band = wide - sums[s]!;
    const worth = sum + (band >= sawn.offcut.wide - NEAR && t >= kept ? band * Math.max(0, t - saw) : 0);
    if (s > 0 && worth > all + NEAR) [at, all] = [s, worth];
    for (let k = 0; k < steps.length; k++) {
      const to = next[s * count + steps[k]!]!;
      if (to < 0) break;
      const more = sum + worths[k]!;
      if (more <= best[to]! + NEAR) continue;
      best[to] = more;
      by[to] = k;
      from[to] = s;
    }
  }
  const chosen: Section["strips"] = [];
  for (let s = at; s > 0; s = from[s]!) chosen.push(tried[by[s]!]!);
  return { worth: all, strips: chosen };
}

interface Along {
  worth: number;
  /** From the board's first end on: where each begins, and the length it takes with a saw cut. */
  sections: { x: number; t: number }[];
}

/**
 * The best sections along a board: either an offcut is left at its far end, or the last section takes all that is left; so it is before
 * each defect right across. What such a section of a length that is not yet known is worth lies under the straight line between its
 * neighbours, for between two lengths at which anything changes every choice of strips is worth a straight line.
 */
function boardOf(given: {
  known: ReadonlyMap<number, number>;
  most: number;
  stretches: readonly Stretch[];
  /** From the first clear end. */
  long: number;
  wide: number;
  kept: number;
}): Along {
  const { known, most, stretches, long, wide, kept } = given;
  const at = [...known.keys()].sort((a, b) => a - b);
  const between = betweenOf(known, at, most);
  const sections: number[] = [];
  let top = 0;
  for (const t of at)
    if (known.get(t)! > top + NEAR) {
      top = known.get(t)!;
      sections.push(t);
    }
  const worths = sections.map((t) => known.get(t)!);
  const best = new Float64Array(most + 1).fill(Number.NEGATIVE_INFINITY);
  /** The section that ends there; what was left out, negative. */
  const by = new Int32Array(most + 1);
  const from = new Int32Array(most + 1);
  const put = (x: number, t: number, to: number, worth: number) => {
    if (worth <= best[to]! + NEAR) return;
    best[to] = worth;
    by[to] = t;
    from[to] = x;
  };
  best[0] = 0;
  let found = { worth: 0, x: 0, last: 0 };
  for (const [k, stretch] of stretches.entries()) {
    const next = stretches[k + 1];
    if (k === 0 && stretch.from > 0) put(0, 0, stretch.from, stretch.from >= kept ? stretch.from * wide : 0);
    for (let x = stretch.from; x <= stretch.to; x++) {
      const sum = best[x]!;
      if (sum === Number.NEGATIVE_INFINITY) continue;
      const end = long - x;
      if (x > 0 && end >= kept && sum + end * wide > found.worth)
        found = { worth: sum + end * wide, x, last: 0 };
      if (sum > found.worth) found = { worth: sum, x, last: 0 };
      const rest = stretch.to - x;
      if (rest > 0 && sum + between[rest]! > found.worth)
        found = { worth: sum + between[rest]!, x, last: rest };
      if (next) {
        const gap = next.from - x;
        put(x, 0, next.from, sum + (gap >= kept ? gap * wide : 0));
        if (rest > 0) put(x, rest, next.from, sum + between[rest]!);
      }
      for (let n = 0; n < sections.length && sections[n]! <= rest; n++)
        put(x, sections[n]!, x + sections[n]!, sum + worths[n]!);
    }
  }
  const chosen = found.last > 0 ? [{ x: found.x, t: found.last }] : [];
  for (let x = found.x; x > 0; x = from[x]!) if (by[x]! > 0) chosen.push({ x: from[x]!, t: by[x]! });
  return { worth: found.worth, sections: chosen.reverse() };
}

function betweenOf(known: ReadonlyMap<number, number>, at: readonly number[], most: number): Float64Array {
  const between = new Float64Array(most + 1);
  let k = 0;
  for (let t = 1; t <= most; t++) {
    while (at[k]! < t) k++;
    const to = at[k]!;
    const from = k > 0 ? at[k - 1]! : 0;
    const [low, high] = [known.get(from) ?? 0, known.get(to)!];
    between[t] = low + ((high - low) * (t - from)) / (to - from);
  }
  return between;
}
