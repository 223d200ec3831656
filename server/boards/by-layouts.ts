/**
 * A bound from whole layouts: a plan is so many boards of each layout, and the cheapest mix of layouts that gives everything is a linear
 * program whose columns are found as they are needed (column generation).
 */
import type { Steps } from "../../grammar/steps.ts";
import type { Layout } from "./layout.ts";
import type { Given, Pricing } from "./pricing.ts";
import { leastCost } from "./simplex.ts";
import type { WoodBoard } from "./wood.ts";

/** A layout of one kind of board; what a plan already has is there whole. */
export interface Column extends Pick<Given, "used" | "gives"> {
  kind: number;
  sections?: Given["sections"];
  layout?: Layout;
}

interface Asked {
  /** How many of each thing are cut. */
  number: readonly number[];
  boards: readonly WoodBoard[];
  /** Of each kind of board, where anything fits it. */
  pricings: readonly (Pricing | undefined)[];
  /** Layouts that together give everything. */
  first: readonly Column[];
  /** What one of each thing may cost, to begin with, mm³. */
  prices: readonly number[] | undefined;
}

export interface ByLayouts {
  /** mm³. */
  bound: number;
  /** What one more of each thing costs, mm³. */
  prices: readonly number[];
  /** All layouts that were found. */
  columns: Column[];
}

/** Rounds of new layouts after which it is left as it is. */
const MOST_ROUNDS = 30;
/** Nearer to the best mix of the layouts there are than this it is done. */
const CLOSE = 0.001;
/** How far prices stay with the best so far: those of a mix of few layouts jump about. */
const STEADY = 0.5;
/** How often prices are lowered before boards without number gain nothing at them. */
const MOST_LOWERED = 8;

/**
 * Of any prices, what all things are worth less what the boards to hand could gain at them is a bound, where boards that are bought gain
 * nothing; the best of those tried. Rests after each kind of board.
 */
export function* byLayouts(asked: Asked): Steps<ByLayouts> {
  const { number, boards, pricings, first } = asked;
  const columns = [...first];
  let best: ByLayouts = { bound: 0, prices: asked.prices ?? number.map(() => 0), columns };
  let prices = best.prices;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const before = columns.length;
    let gains = 0;
    let share = 1;
    for (const [kind, pricing] of pricings.entries()) {
      if (!pricing) continue;
      const { thick, count } = boards[kind]!;
      const priced = (by: number): Given | undefined => {
        const given = pricing({ value: prices.map((price) => (price * by) / thick), left: number });
        if (given) columns.push({ kind, ...given });
        return given;
      };
      if (Number.isFinite(count)) gains += (priced(1)?.gain ?? 0) * thick * count;
      else share = Math.min(share, lowered(priced, share));
      yield;
    }
    const bound = share * number.reduce((sum, many, k) => sum + many * prices[k]!, 0) - gains;
    if (bound > best.bound) best = { bound, prices: prices.map((price) => price * share), columns };
    const mix = mixOf(asked, columns);
    if (!mix || best.bound >= mix.cost * (1 - CLOSE) || (columns.length === before && round > 0)) break;
    prices = mix.prices.map((price, k) => STEADY * best.prices[k]! + (1 - STEADY) * price);
  }
  return best;
}

/** The share of the prices at which a board gains nothing; 0 where it is not found. */
function lowered(priced: (share: number) => Given | undefined, from: number): number {
  let share = from;
  for (let turn = 0; turn < MOST_LOWERED; turn++) {
    const given = priced(share);
    if (!given) return share;
    share *= given.used / (given.used + given.gain);
  }
  return 0;
}

/** The cheapest mix of layouts. */
export interface Mix {
  /** mm³. */
  cost: number;
  /** What one more of each thing costs in it, mm³. */
  prices: number[];
  /** How many boards of each layout. */
  boards: number[];
}

interface Limits {
  /** How many boards of each kind; absent: all there are. */
  count?: readonly number[];
  /** What it costs to go without one of each thing, mm³; absent: nothing may be lacking. */
  without?: readonly number[];
  /** What a layout costs, mm³; absent: what it uses. */
  cost?: (column: Column) => number;
}

/** The cheapest mix of the layouts there are that gives everything; undefined where none does. */
export function mixOf(
  { number, boards }: Pick<Asked, "number" | "boards">,
  columns: readonly Column[],
  { count = boards.map((board) => board.count), without, cost }: Limits = {},
): Mix | undefined {
  const costOf = cost ?? (({ kind, used }: Column) => used * boards[kind]!.thick);
  const things = number.flatMap((many, wanted) => (many > 0 ? [wanted] : []));
  const limited = boards.flatMap((_, kind) => (Number.isFinite(count[kind]!) ? [kind] : []));
  const going = without ? things : [];
  const least = leastCost({
    cost: [
      ...columns.map((column) => costOf(column) / 1e6),
      ...going.map((wanted) => without![wanted]! / 1e6),
    ],
    rows: [
      ...things.map((wanted) => ({
        of: [
          ...columns.map(({ gives }) => gives.get(wanted) ?? 0),
          ...going.map((each) => (each === wanted ? 1 : 0)),
        ],
        least: number[wanted]!,
      })),
      ...limited.map((at) => ({
        of: [...columns.map(({ kind }) => (kind === at ? -1 : 0)), ...going.map(() => 0)],
        least: -count[at]!,
      })),
    ],
  });
  if (!least) return undefined;
  const prices = number.map(() => 0);
  for (const [r, wanted] of things.entries()) prices[wanted] = least.price[r]! * 1e6;
  return { cost: least.cost * 1e6, prices, boards: least.x.slice(0, columns.length) };
}
