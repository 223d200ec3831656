/**
 * A plan made from the cheapest mix of layouts: the layout that the mix has most of is sawn from a real board, and a new mix is found for
 * what is still left, until nothing is.
 */
import type { Steps } from "../../grammar/steps.ts";
import { type Column, mixOf } from "./by-layouts.ts";
import type { Layout } from "./layout.ts";
import type { Pricing } from "./pricing.ts";
import type { WoodBoard } from "./wood.ts";

interface Asked {
  boards: readonly WoodBoard[];
  pricings: readonly (Pricing | undefined)[];
  /** Layouts to mix; new ones are added. */
  columns: Column[];
  /** What is still to be cut, and how many boards of each kind are sawn; both change. */
  left: number[];
  taken: number[];
  /** What it would cost to go without one of each thing, mm³: more than any board does. */
  without: readonly number[];
  random: () => number;
  /** A real board of a kind sawn like a column, of what is left, at what one of each thing is worth, mm³. */
  saw: (column: Column, prices: readonly number[]) => Made | undefined;
  /** It is sawn so. */
  done: (kind: number, made: Made) => void;
}

export interface Made {
  name: string;
  layout: Layout;
}

/** An offcut is as good as this share of new wood: most of one to hand, less of a board that has to be bought for it. */
const KEEPS = { hand: 0.9, bought: 0.5 };
/** Wood to hand is used first: what is bought counts for so many times as much. */
const BOUGHT = 4;

/** What a sawn board costs in wood, mm³: what is used of it, and what an offcut is worse than a whole board. */
export function dearness({ long, wide, thick, from }: WoodBoard, used: number): number {
  const isBought = from !== "hand";
  const keeps = isBought ? KEEPS.bought : KEEPS.hand;
  return (isBought ? BOUGHT : 1) * (used + (1 - keeps) * (long * wide - used)) * thick;
}

/** Layouts tried on a real board before the best of them is sawn. */
const TRIED = 3;
/** A mix has room for chance: a layout counts this much more or less. */
const CHANCE = 0.5;

/** Saws boards until nothing is left that any of them can give; rests after each look. */
export function* dive(asked: Asked): Steps<void> {
  const { boards, pricings, columns, left, taken, without, random, saw, done } = asked;
  while (left.some((many) => many > 0)) {
    const count = boards.map((board, kind) => board.count - taken[kind]!);
    const cost = ({ kind, used }: Column) => dearness(boards[kind]!, used);
    const limits = { count, without, cost };
    const first = mixOf({ number: left, boards }, columns, limits);
    if (!first) return;
    for (const [kind, pricing] of pricings.entries()) {
      if (!pricing || count[kind]! <= 0) continue;
      const { thick } = boards[kind]!;
      const times = boards[kind]!.from === "hand" ? 1 : BOUGHT;
      const given = pricing({ value: first.prices.map((price) => price / thick / times), left });
      if (given) columns.push({ kind, ...given });
      yield;
    }
    const mix = mixOf({ number: left, boards }, columns, limits) ?? first;
    const most = columns
      .map((column, k) => ({ column, share: (mix.boards[k] ?? 0) * (1 + CHANCE * (random() - 0.5)) }))
      .filter(({ share, column }) => share > 1e-6 && count[column.kind]! > 0)
      .sort((a, b) => b.share - a.share)
      .slice(0, TRIED);
    let best: (Made & { kind: number; merit: number }) | undefined;
    for (const { column } of most) {
      const made = saw(column, mix.prices);
      if (!made) continue;
      const worth = [...made.layout.gives].reduce((sum, [k, many]) => sum + many * mix.prices[k]!, 0);
      const merit = worth / dearness(boards[column.kind]!, made.layout.used);
      if (!best || merit > best.merit) best = { ...made, kind: column.kind, merit };
    }
    if (!best) return;
    taken[best.kind]! += 1;
    for (const [wanted, many] of best.layout.gives) left[wanted]! -= many;
    done(best.kind, best);
    yield;
  }
}
