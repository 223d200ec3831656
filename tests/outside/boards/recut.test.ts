/**
 * Plans of random parts on random boards, cut again by another library.
 */
import { expect, test } from "vitest";
import { wholePlan } from "../../../server/boards/plan.ts";
import { randomJob } from "./random-jobs.ts";
import { faultsOf } from "./recut.ts";

const runs = Number(process.env.SEATWRIGHT_RUNS ?? 20);

test(
  `${runs} random sets: pieces whole, a saw cut apart, off the defects, all there, matched ones beside each other`,
  () => {
    let underHidden = 0;
    for (let seed = 1; seed <= runs; seed++) {
      const { stock, matches } = randomJob(seed);
      const plan = wholePlan(stock, matches, 1);
      underHidden += plan.boards.flatMap(({ pieces }) => pieces.flatMap(({ under }) => under ?? [])).length;
      expect([seed, faultsOf(stock, plan)]).toEqual([seed, []]);
      for (const { parts, laid, board } of matches) {
        const names = parts.map(({ value }) => value.name);
        const made = names.map(
          (name) => plan.boards.flatMap(({ pieces }) => pieces).filter(({ part }) => part === name).length,
        );
        expect([seed, made[0]]).toEqual([seed, made[1]]);
        for (const sawn of plan.boards) {
          const [one, other] = names.map((name) => sawn.pieces.filter(({ part }) => part === name));
          expect([seed, one!.length]).toEqual([seed, other!.length]);
          if (one!.length > 0) expect([seed, sawn.board.source]).toEqual([seed, board.value.name]);
          for (const piece of one!) {
            const saw = stock.allowances.saw;
            const beside = other!.some((mate) =>
              laid === "end to end"
                ? Math.abs(mate.y - piece.y) < 0.01 && Math.abs(mate.x - piece.x - piece.long - saw) < 0.01
                : Math.abs(mate.x - piece.x) < 0.01 && Math.abs(mate.y - piece.y - piece.wide - saw) < 0.01,
            );
            expect([seed, beside]).toEqual([seed, true]);
          }
        }
      }
    }
    expect(underHidden).toBeGreaterThan(runs / 2);
  },
  Math.max(120_000, runs * 10_000),
);
