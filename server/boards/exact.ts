/**
 * The most that one clear rectangle can give, exactly, for few pieces: every set of pieces is tried, smaller sets first, with the smallest
 * rectangles each can be cut from.
 */

/** Pieces that are alike; `most` of them at the most. */
export interface Kind {
  long: number;
  wide: number;
  value: number;
  most: number;
}

export interface Sheet {
  long: number;
  wide: number;
  saw: number;
  kinds: readonly Kind[];
  /** How many times the direction of the cuts may change, trimming apart; absent: as often as they like. */
  stages?: number;
  /** The direction of the first cuts, where stages are counted. */
  first?: "crosscut" | "rip";
  /** Pieces may be turned, where the grain does not matter. */
  turning?: true;
}

/** A rectangle cut apart: along x (crosscuts) or along y (rips), down to single pieces. */
export type Cutting =
  | { is: "piece"; kind: number; long: number; wide: number }
  | { is: "crosscut" | "rip"; long: number; wide: number; parts: [Cutting, Cutting] };

interface Best {
  value: number;
  counts: number[];
  cutting?: Cutting;
}

/** Sets of pieces beyond which it is not tried. */
const MOST_SETS = 20_000;

/** How many sets the kinds make. */
export const setsOf = (kinds: readonly Kind[]): number =>
  kinds.reduce((sets, { most }) => sets * (most + 1), 1);

/** The best, cut from as little of the length as it can be; undefined for more sets than can be tried. */
export function bestOf(sheet: Sheet): Best | undefined {
  const { kinds } = sheet;
  const count = setsOf(kinds);
  if (count > MOST_SETS) return undefined;
  const space = spaceOf(kinds, count);
  const fits = sheet.stages === undefined ? anyStages(sheet, space) : staged(sheet, space, sheet.stages);
  let best: Best = { value: 0, counts: kinds.map(() => 0) };
  for (let set = 1; set < count; set++) {
    const [first, ...others] = fits[set]!;
    if (!first || space.value[set]! <= best.value) continue;
    const cutting = others.reduce((short, each) => (each.long < short.long ? each : short), first);
    best = { value: space.value[set]!, counts: space.digits(set), cutting };
  }
  return best;
}

/** All sets of pieces, numbered with one digit a kind. */
interface Space {
  count: number;
  steps: number[];
  value: Float64Array;
  digits: (set: number) => number[];
  /** The sets within a set that hold at least one of its first kind, itself left out. */
  within: (set: number) => number[];
}

function spaceOf(kinds: readonly Kind[], count: number): Space {
  const steps: number[] = [];
  let step = 1;
  for (const { most } of kinds) {
    steps.push(step);
    step *= most + 1;
  }
  const digits = (set: number) => kinds.map(({ most }, k) => Math.floor(set / steps[k]!) % (most + 1));
  const value = new Float64Array(count);
  for (let set = 0; set < count; set++)
    value[set] = digits(set).reduce((sum, many, k) => sum + many * kinds[k]!.value, 0);
  const within = (set: number): number[] => {
    const own = digits(set);
    const first = own.findIndex((many) => many > 0);
    let sets = [0];
    for (const [k, many] of own.entries()) {
      const next: number[] = [];
      for (const base of sets)
        for (let n = k === first ? 1 : 0; n <= many; n++) next.push(base + n * steps[k]!);
      sets = next;
    }
    return sets.filter((each) => each !== set);
  };
  return { count, steps, value, digits, within };
}

/** Of each set the smallest rectangles it can be cut from: none is both longer and wider than another. */
type Fits = Cutting[][];

function singles({ kinds, turning, long, wide }: Sheet, { count, steps }: Space): Fits {
  const fits: Fits = Array.from({ length: count }, () => []);
  for (const [kind, piece] of kinds.entries()) {
    if (piece.most === 0) continue;
    const ways = turning ? [piece, { long: piece.wide, wide: piece.long }] : [piece];
    for (const way of ways)
      put(fits[steps[kind]!]!, { is: "piece", kind, long: way.long, wide: way.wide }, long, wide);
  }
  return fits;
}

function staged(sheet: Sheet, space: Space, stages: number): Fits {
  let fits = singles(sheet, space);
  for (let stage = stages; stage >= 1; stage--) {
    const outer = sheet.first ?? "crosscut";
    const other = outer === "crosscut" ? "rip" : "crosscut";
    fits = rows(sheet, space, fits, stage % 2 === 1 ? outer : other);
  }
  return fits;
}

/** Blocks in a row, one cut after the other. */
function rows(sheet: Sheet, { count, within }: Space, blocks: Fits, is: "crosscut" | "rip"): Fits {
  const fits: Fits = Array.from({ length: count }, () => []);
  for (let set = 1; set < count; set++) {
    const own = fits[set]!;
    for (const block of blocks[set]!) put(own, block, sheet.long, sheet.wide);
    for (const part of within(set)) {
      if (blocks[part]!.length === 0) continue;
      for (const rest of fits[set - part]!)
        for (const block of blocks[part]!)
          put(own, joined(is, block, rest, sheet.saw), sheet.long, sheet.wide);
    }
  }
  return fits;
}

function anyStages(sheet: Sheet, space: Space): Fits {
  const fits = singles(sheet, space);
  for (let set = 1; set < space.count; set++) {
    const own = fits[set]!;
    for (const part of space.within(set))
      for (const one of fits[part]!)
        for (const other of fits[set - part]!)
          for (const is of ["crosscut", "rip"] as const)
            put(own, joined(is, one, other, sheet.saw), sheet.long, sheet.wide);
  }
  return fits;
}

function joined(is: "crosscut" | "rip", one: Cutting, other: Cutting, saw: number): Cutting {
  const parts: [Cutting, Cutting] = [one, other];
  return is === "crosscut"
    ? { is, long: one.long + saw + other.long, wide: Math.max(one.wide, other.wide), parts }
    : { is, long: Math.max(one.long, other.long), wide: one.wide + saw + other.wide, parts };
}

const NEAR = 1e-6;

/** Keeps a cutting that fits the sheet and that no other beats in both measures. */
function put(kept: Cutting[], cutting: Cutting, long: number, wide: number): void {
  if (cutting.long > long + NEAR || cutting.wide > wide + NEAR) return;
  for (const other of kept)
    if (other.long <= cutting.long + NEAR && other.wide <= cutting.wide + NEAR) return;
  for (let k = kept.length - 1; k >= 0; k--) {
    const other = kept[k]!;
    if (cutting.long <= other.long + NEAR && cutting.wide <= other.wide + NEAR) kept.splice(k, 1);
  }
  kept.push(cutting);
}
