/**
 * The bound beside a plan against HiGHS: its program of layouts solved by both, and the least wood of small jobs of which one strip fills a
 * board, as a program in whole numbers. No bound lies above that, no plan below it.
 */
import highsLoader from "highs";
import { expect, test } from "vitest";
import { usualIn } from "../../../server/boards/allowances.ts";
import type { FinishedPart } from "../../../server/boards/parts.ts";
import { type Stock, wholePlan } from "../../../server/boards/plan.ts";
import sawn from "../../../server/boards/sawn-sizes.json" with { type: "json" };
import { leastCost } from "../../../server/boards/simplex.ts";
import { stockOf } from "../../../server/boards/stock.ts";
import type { WoodBoard } from "../../../server/boards/wood.ts";
import { randomOf } from "./random-jobs.ts";

const RUNS = process.env.SEATWRIGHT_RUNS ? 40 : 4;
const WIDE = 100;
const SAW = 3;

/** Parts of one section, one of which fills a board's width, and enough boards for them. */
function oneStripJob(seed: number): Stock {
  const { whole } = randomOf(seed);
  const allowances = { ...usualIn("mm"), saw: SAW, ends: 0, plane: 0, jointing: 0 };
  const parts = Array.from({ length: whole(2, 4) }, (_, k): FinishedPart => {
    const name = `part-${k}`;
    const finished = { thick: 20, wide: WIDE - 10, long: whole(200, 900) };
    return {
      ...{ name, id: { stem: name, side: "middle" }, timber: { species: "white-ash" }, is: "straight" },
      ...{ grainSlope: 0, hidden: [], finished },
    };
  });
  const make = whole(1, 3);
  const long = whole(1200, 2400);
  const count = parts.length * make;
  const plank: WoodBoard = {
    ...{ source: "plank", from: "hand", names: Array.from({ length: count }, (_, n) => `plank.${n + 1}`) },
    ...{ count, timber: { species: "white-ash" }, long, wide: WIDE, thick: 25, defects: [] },
    clear: { x: 0, y: 0, long, wide: WIDE },
  };
  const lines = stockOf(parts, allowances, make, () => WIDE);
  return { lines, make, allowances, wood: [plank], assumed: [], parts };
}

/** The least length that is used: of each board what its pieces and their cuts take, or all where no offcut worth keeping is left. */
function leastModel({ lines, wood: [plank] }: Stock): string {
  const { long, count } = plank!;
  const boards = Array.from({ length: count }, (_, b) => b);
  const cut = (b: number) => lines.map(({ blank }, k) => `${blank.long + SAW} n${b}_${k}`).join(" + ");
  const rows = [
    ...lines.map(({ number }, k) => `${boards.map((b) => `n${b}_${k}`).join(" + ")} = ${number}`),
    ...boards.flatMap((b) => [
      `${cut(b)} - ${sawn.offcut.long + SAW} f${b} <= ${long - sawn.offcut.long}`,
      `${cut(b)} - ${SAW} f${b} - u${b} <= 0`,
      `${long} f${b} - u${b} <= 0`,
    ]),
  ];
  const pieces = boards.flatMap((b) => lines.map((_, k) => `n${b}_${k}`));
  return `Minimize
 obj: ${boards.map((b) => `u${b}`).join(" + ")}
Subject To
${rows.map((row, k) => ` c${k}: ${row}`).join("\n")}
General
 ${pieces.join("\n ")}
Binary
 ${boards.map((b) => `f${b}`).join("\n ")}
End
`;
}

test(`${RUNS} small jobs: bound, least and plan in this order`, { timeout: RUNS * 30_000 }, async () => {
  const highs = await highsLoader();
  for (let seed = 1; seed <= RUNS; seed++) {
    const stock = oneStripJob(seed);
    const solved = highs.solve(leastModel(stock), { output_flag: false });
    expect(solved.Status).toBe("Optimal");
    const least = solved.ObjectiveValue * WIDE * stock.wood[0]!.thick;
    const plan = wholePlan(stock, [], 4);
    expect(plan.lacking).toEqual([]);
    expect([seed, plan.bound <= least * (1 + 1e-9)]).toEqual([seed, true]);
    expect([seed, plan.used >= least * (1 - 1e-9)]).toEqual([seed, true]);
  }
});

test("programs of layouts cost what HiGHS finds", async () => {
  const highs = await highsLoader();
  for (let seed = 1; seed <= 40; seed++) {
    const { random, whole } = randomOf(seed);
    const columns = whole(2, 12);
    const cost = Array.from({ length: columns }, () => whole(1, 90));
    const rows = Array.from({ length: whole(1, 8) }, () => ({
      of: cost.map(() => (random() < 0.5 ? whole(1, 6) : 0)),
      least: whole(1, 12),
    })).filter(({ of }) => of.some((many) => many > 0));
    const sum = (of: readonly number[]) => of.map((many, k) => `${many} x${k}`).join(" + ");
    const text = `Minimize\n obj: ${sum(cost)}\nSubject To\n${rows
      .map(({ of, least }, r) => ` c${r}: ${sum(of)} >= ${least}`)
      .join("\n")}\nEnd\n`;
    const solved = highs.solve(text, { output_flag: false });
    expect([seed, leastCost({ cost, rows })?.cost]).toEqual([seed, expect.closeTo(solved.ObjectiveValue, 6)]);
  }
});
