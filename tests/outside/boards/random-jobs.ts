/**
 * Random parts and boards, the same for the same seed.
 */
import { usualIn } from "../../../server/boards/allowances.ts";
import type { Hides } from "../../../server/boards/hidden.ts";
import type { Outline } from "../../../server/boards/outline.ts";
import type { FinishedPart } from "../../../server/boards/parts.ts";
import type { Stock } from "../../../server/boards/plan.ts";
import { stockOf } from "../../../server/boards/stock.ts";
import type { WoodBoard } from "../../../server/boards/wood.ts";
import type { MatchDesign } from "../../../server/design/design.ts";

export function randomOf(seed: number) {
  let state = seed * 7919 + 1;
  const random = () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
  return { random, whole: (low: number, high: number) => low + Math.floor(random() * (high - low + 1)) };
}

/** A knee or a bow as a curved part's outline. */
function curvedOutline(whole: (low: number, high: number) => number): Outline {
  const long = whole(300, 900);
  const wide = whole(20, 45);
  const at = whole(Math.round(long / 3), Math.round((2 * long) / 3));
  const rise = whole(5, 40);
  return {
    low: [
      [0, 0],
      [at, rise],
      [long, 0],
    ],
    high: [
      [0, wide],
      [at, wide + rise],
      [long, wide],
    ],
  };
}

export interface RandomJob {
  stock: Stock;
  matches: MatchDesign[];
}

/** Every other seed has parts with hidden faces, and boards with more defects. */
export function randomJob(seed: number): RandomJob {
  const { random, whole } = randomOf(seed);
  const hiding = seed % 2 === 0;
  const randomHides = (): Hides | undefined => {
    if (random() < 0.3) return undefined;
    const from = whole(40, 300);
    const face = random() < 0.4 ? { flat: "inside" as const } : { low: "top" as const };
    return {
      ...face,
      joints: [
        [0, 30],
        [from, from + 40],
      ],
      firstEnd: "foot",
    };
  };
  const allowances = { ...usualIn("mm"), saw: whole(0, 4), ends: whole(0, 60), plane: whole(0, 3) };
  const parts: FinishedPart[] = Array.from({ length: whole(1, 7) }, (_, k): FinishedPart => {
    const stem = `part-${k}`;
    const common = {
      name: stem,
      id: { stem, side: "middle" as const },
      timber: { species: random() < 0.85 ? "white-ash" : "white-oak" },
      grainSlope: 0,
      hidden: [],
    };
    const hides = hiding ? randomHides() : undefined;
    if (random() < 0.3) {
      const outline = curvedOutline(whole);
      const high = Math.max(...outline.high.map(([, y]) => y));
      const finished = { thick: whole(15, 40), wide: high, long: outline.low[2]![0] };
      return { ...common, is: "curved", outline, finished, ...(hides && { hides }) };
    }
    const [a, b] = [whole(8, 45), whole(20, 120)];
    return {
      ...common,
      ...(hides && { hides: { ...hides, eitherEdge: true as const } }),
      is: "straight",
      finished: { thick: Math.min(a, b), wide: Math.max(a, b), long: whole(150, 900) + random() },
    };
  });
  const make = whole(1, 6);
  const wood = Array.from({ length: whole(1, 4) }, (_, k): WoodBoard => {
    const size = { long: whole(900, 3200), wide: whole(90, 300), thick: whole(20, 70) };
    const wane = random() < 0.3 ? whole(5, 25) : 0;
    const count = whole(1, 4);
    return {
      source: `plank-${k}`,
      from: "hand",
      names: count === 1 ? [`plank-${k}`] : Array.from({ length: count }, (__, n) => `plank-${k}.${n + 1}`),
      count,
      timber: { species: random() < 0.85 ? "white-ash" : "white-oak" },
      ...size,
      clear: {
        x: allowances.ends,
        y: wane,
        long: size.long - 2 * allowances.ends,
        wide: size.wide - 2 * wane,
      },
      defects: Array.from({ length: whole(0, hiding ? 6 : 3) }, () => {
        const [x, y] = [whole(0, size.long - 60), whole(0, size.wide - 20)];
        return { x, y, long: whole(1, 60), wide: Math.min(whole(1, 80), size.wide - y) };
      }),
    };
  });
  const lines = stockOf(parts, allowances, make, () => 200);
  const stock: Stock = { lines, make, allowances, wood, assumed: [], parts };
  const matches: MatchDesign[] = [];
  if (parts.length >= 2 && random() < 0.5) {
    const at = { start: 0, end: 0 };
    matches.push({
      parts: parts.slice(0, 2).map(({ name }) => ({ value: { name }, at })),
      board: { value: { name: wood[0]!.source }, at },
      laid: random() < 0.5 ? "side by side" : "end to end",
      at,
      statement: undefined as never,
    });
  }
  return { stock, matches };
}
