import { describe, expect, it } from "vitest";
import { casesOf } from "../../../server/strength/cases.ts";
import { prepare, solve } from "../../../server/strength/frame/solve.ts";
import { frameOf } from "../../../server/strength/model.ts";
import { samples, studied } from "../../server/range/files.ts";
import { asZ88Takes, moved, solvedByZ88 } from "./z88.ts";

/** Z88 prints eight figures of single numbers. */
const NEAR = 2e-5;

describe("Z88, from Debian, on the frames of the samples", () => {
  for (const name of [
    "boathouse-mess-chair.chair",
    "harbour-chair.chair",
    "joined-stool.chair",
    "ladder-back.chair",
  ])
    it(`${name}: every node moves as Z88 says, in each case`, () => {
      const { chair } = studied(samples[name] ?? "");
      const whole = frameOf(chair, "middle");
      const frame = asZ88Takes(whole);
      const prepared = prepare(frame);
      for (const load of casesOf(chair, whole, "domestic").slice(0, 4)) {
        // Feet stay where they are for both: letting go is our own.
        const supports = moved(whole, frame, load.supports).map(({ node, held }) => ({ node, held }));
        const loads = moved(whole, frame, load.loads);
        const ours = solve(prepared, supports, loads);
        if (ours.is !== "solved") throw new Error(`${load.name}: ${ours.is}`);
        const theirs = solvedByZ88(frame, supports, loads);
        for (const ways of [
          [0, 1, 2],
          [3, 4, 5],
        ]) {
          const most = Math.max(
            ...ours.displacements.flatMap((u) => ways.map((way) => Math.abs(u[way] ?? 0))),
          );
          expect(most).toBeGreaterThan(0);
          for (const [node, u] of ours.displacements.entries())
            for (const way of ways)
              expect(
                Math.abs((u[way] ?? 0) - (theirs[node]?.[way] ?? Number.NaN)),
                `${load.name} ${frame.nodes[node]?.id} ${way}`,
              ).toBeLessThan(most * NEAR);
        }
      }
    });
});
