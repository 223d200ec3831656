/**
 * Chairs on solid seats and with sticks: what their joints carry, against the statics of the back by itself.
 */
import { describe, expect, it } from "vitest";
import { finish } from "../../../grammar/steps.ts";
import { type Strength, strengthSteps } from "../../../server/strength/strength.ts";
import { samples, studied } from "../../server/range/files.ts";

const strengths = new Map<string, Strength>(
  ["slip-chair", "slab-chair", "slip-stool", "bow-armchair"].map((name) => [
    name,
    finish(strengthSteps(studied(samples[`${name}.chair`] ?? "").chair)),
  ]),
);

describe("every load case of a chair on a solid seat", () => {
  for (const [name, { cases, margin }] of strengths)
    it(`${name} stands, bears what is asked, and is not a hundred times too stout`, () => {
      for (const { solution } of cases) expect(solution.is).toBe("solved");
      expect(margin).toBeGreaterThan(1);
      expect(margin).toBeLessThan(10);
    });
});

describe("a back that stands on its seat alone", () => {
  // In the chair with a bow for its arms other sticks carry the back as well.
  for (const [name, feet] of [
    ["slip-chair", /^back-stick\.\d+ to seat$/],
    ["slab-chair", /^back-post\.(left|right) to seat$/],
  ] as const)
    it(`${name}: what its feet pass on is the push on the back, level, and its moment about the seat`, () => {
      for (const { frame, load, solution, share } of strengths.get(name)?.cases ?? []) {
        if (load.name !== "seat-and-back" || solution.is !== "solved") continue;
        const above = load.loads.filter(({ v }) => (v[1] ?? 0) !== 0);
        expect(above.length).toBeGreaterThan(0);
        const push = share * above.reduce((sum, { v }) => sum + (v[1] ?? 0), 0);
        const pushMoment =
          share * above.reduce((sum, { node, v }) => sum - (v[1] ?? 0) * (frame.nodes[node]?.at[2] ?? 0), 0);
        let [level, moment] = [0, 0];
        for (const [k, { name: joint }] of frame.jointOf.entries()) {
          if (!feet.test(joint)) continue;
          const { axes, to } = frame.springs[k]!;
          const passed = solution.springs[k]!;
          const [, y, z] = frame.nodes[to]!.at;
          const along = (way: number, first: number) =>
            axes.reduce((sum, axis, n) => sum + (axis[way] ?? 0) * (passed[first + n] ?? 0), 0);
          level += along(1, 0);
          moment += along(0, 3) + y * along(2, 0) - z * along(1, 0);
        }
        // Its own weight of a kilogram or two is all that is beside the push.
        expect(Math.abs(level - push) / push).toBeLessThan(1e-6);
        expect(Math.abs((moment - pushMoment) / pushMoment)).toBeLessThan(0.06);
      }
    });
});
