/**
 * The exact cutting engine against a published problem, an integer program solved by HiGHS, and plain search.
 */
import highsLoader from "highs";
import { describe, expect, test } from "vitest";
import { bestOf, type Kind, type Sheet } from "../../../server/boards/exact.ts";

/**
 * "An Algorithm for Two-Dimensional Cutting Problems", Operations Research 25(1), 1977, problem 1: stock 15 x 10. Data from memory,
 * consistent with the 7 kinds and 16 boxes seen in print; the optima by stages were worked out with two other programs.
 */
const problem: Sheet = {
  long: 15,
  wide: 10,
  saw: 0,
  kinds: [
    [8, 4, 66, 2],
    [3, 7, 35, 1],
    [8, 2, 24, 3],
    [3, 4, 17, 5],
    [3, 3, 11, 2],
    [3, 2, 8, 2],
    [2, 1, 2, 1],
  ].map(([long, wide, value, most]) => ({ long: long!, wide: wide!, value: value!, most: most! })),
};

describe("the 1977 problem 1", () => {
  test("any number of stages: 244, by one set of pieces", () => {
    expect(bestOf(problem)).toMatchObject({ value: 244, counts: [2, 1, 1, 2, 1, 1, 0] });
  });

  test.each([
    ["three stages, crosscut first", { stages: 3, first: "crosscut" }, 244],
    ["three stages, rip first", { stages: 3, first: "rip" }, 244],
    ["two stages, crosscut first", { stages: 2, first: "crosscut" }, 244],
    ["two stages, rip first", { stages: 2, first: "rip" }, 240],
    ["turning allowed", { turning: true }, 260],
  ] as const)(
    "%s: %s",
    (_, more, value) => {
      expect(bestOf({ ...problem, ...more })?.value).toBe(value);
    },
    60_000,
  );
});

/** Numbers from 0 to 1, the same every time. */
function seeded(seed: number) {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

function randomSheet(random: () => number, pieces: number): Sheet {
  const whole = (low: number, high: number) => low + Math.floor(random() * (high - low + 1));
  const kinds: Kind[] = Array.from({ length: pieces }, () => {
    const long = whole(20, 90);
    const wide = whole(10, 40);
    return { long, wide, value: long * wide + whole(0, 200), most: 1 };
  });
  return { long: whole(110, 160), wide: whole(50, 80), saw: whole(0, 3), kinds };
}

/** Two stages, rip first, as a program in whole numbers: strips opened by their widest piece. */
function stripModel({ long, wide, saw, kinds }: Sheet): string {
  const order = kinds.map((kind, k) => ({ ...kind, k })).sort((a, b) => b.wide - a.wide || a.k - b.k);
  const pairs = order.flatMap((_, i) => order.slice(i + 1).map((__, n) => [i, i + 1 + n] as const));
  const objective = [
    ...order.map(({ value }, i) => `${value} y${i}`),
    ...pairs.map(([i, j]) => `${order[j]!.value} x${i}_${j}`),
  ].join(" + ");
  const once = order.map(
    (_, j) => `${[`y${j}`, ...pairs.filter(([, b]) => b === j).map(([i]) => `x${i}_${j}`)].join(" + ")} <= 1`,
  );
  const across = `${order.map(({ wide: w }, i) => `${w + saw} y${i}`).join(" + ")} <= ${wide + saw}`;
  const along = order.flatMap((first, i) => {
    const own = pairs.filter(([a]) => a === i);
    if (own.length === 0) return [];
    return [
      `${own.map(([, j]) => `${order[j]!.long + saw} x${i}_${j}`).join(" + ")} - ${long - first.long} y${i} <= 0`,
    ];
  });
  const names = [...order.map((_, i) => `y${i}`), ...pairs.map(([i, j]) => `x${i}_${j}`)];
  const rows = [...once, across, ...along].map((row, k) => ` c${k}: ${row}`);
  return `Maximize\n obj: ${objective}\nSubject To\n${rows.join("\n")}\nBinary\n ${names.join("\n ")}\nEnd\n`;
}

/** A share of them in every run of the tests; `npm run prove boards` runs all. */
const runs = process.env.SEATWRIGHT_RUNS ? 60 : 12;

describe("two stages against HiGHS", () => {
  test(
    `${runs} random sets of up to 14 pieces have the same optimum`,
    async () => {
      const highs = await highsLoader();
      const random = seeded(14);
      for (let run = 0; run < runs; run++) {
        const sheet = randomSheet(random, 14 - (run % 11));
        const solved = highs.solve(stripModel(sheet), { output_flag: false });
        expect(solved.Status).toBe("Optimal");
        expect([run, bestOf({ ...sheet, stages: 2, first: "rip" })?.value]).toEqual([
          run,
          Math.round(solved.ObjectiveValue),
        ]);
      }
    },
    Math.max(120_000, runs * 20_000),
  );
});

/** Whether pieces can be cut from a rectangle, by trying every first cut: a saw cut at the far side of some pieces together. */
function canCut(
  long: number,
  wide: number,
  pieces: readonly (readonly [number, number])[],
  saw: number,
): boolean {
  if (pieces.length === 0) return true;
  if (pieces.length === 1) return pieces[0]![0] <= long && pieces[0]![1] <= wide;
  for (let part = 1; part < 2 ** pieces.length - 1; part++) {
    const one = pieces.filter((_, k) => part & (1 << k));
    const other = pieces.filter((_, k) => !(part & (1 << k)));
    for (let at = 1; at < long; at++)
      if (canCut(at, wide, one, saw) && canCut(long - at - saw, wide, other, saw)) return true;
    for (let at = 1; at < wide; at++)
      if (canCut(long, at, one, saw) && canCut(long, wide - at - saw, other, saw)) return true;
  }
  return false;
}

test("tiny sheets against trying every cut", () => {
  const random = seeded(3);
  const whole = (low: number, high: number) => low + Math.floor(random() * (high - low + 1));
  for (let run = 0; run < 25; run++) {
    const kinds = Array.from(
      { length: 3 },
      (): Kind => ({ long: whole(2, 6), wide: whole(1, 4), value: whole(1, 20), most: 1 }),
    );
    const [long, wide, saw] = [whole(6, 10), whole(3, 6), whole(0, 1)];
    let best = 0;
    for (let set = 1; set < 8; set++) {
      const some = kinds.filter((_, k) => set & (1 << k));
      const value = some.reduce((sum, kind) => sum + kind.value, 0);
      if (
        value > best &&
        canCut(
          long,
          wide,
          some.map((kind) => [kind.long, kind.wide] as const),
          saw,
        )
      )
        best = value;
    }
    expect([run, bestOf({ long, wide, saw, kinds })?.value]).toEqual([run, best]);
  }
});
