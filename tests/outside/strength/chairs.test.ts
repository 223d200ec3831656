/**
 * Whole chairs against what was published of them, as orders of magnitude: other woods, other sizes, other chairs.
 */
import { describe, expect, it } from "vitest";
import { finish } from "../../../grammar/steps.ts";
import type { CaseResult } from "../../../server/strength/case-result.ts";
import { type Strength, strengthSteps } from "../../../server/strength/strength.ts";
import { samples, studied } from "../../server/range/files.ts";

const text = samples["boathouse-mess-chair.chair"] ?? "";

/** The chair without a rail. */
function without(rail: string): string {
  const start = text.search(new RegExp(`^rail ${rail} `, "m"));
  return text.slice(0, start) + text.slice(text.indexOf("\n}\n", start) + 3);
}

const strengthOf = (chair: string): Strength => finish(strengthSteps(studied(chair).chair));
const [tied, bare] = [strengthOf(text), strengthOf(without("side-stretcher"))];

const middle = ({ cases }: Strength, name: string): CaseResult => {
  const found = cases.find(({ load, stiffness }) => load.name === name && stiffness === "middle");
  if (found?.solution.is !== "solved") throw new Error(`${name} is not solved`);
  return found;
};

/** Moments that bend rails up and down at their joints, by rail, N·mm. */
function momentsOf({ frame, solution }: CaseResult): Map<string, number> {
  const moments = new Map<string, number>();
  for (const [k, { name }] of frame.jointOf.entries()) {
    const rail = name.split(/[. ]/)[0] ?? name;
    const passed = solution.is === "solved" ? Math.abs(solution.springs[k]?.[4] ?? 0) : 0;
    moments.set(rail, (moments.get(rail) ?? 0) + passed);
  }
  return moments;
}

const sum = (moments: Map<string, number>): number =>
  [...moments.values()].reduce((all, each) => all + each, 0);

describe("front to back", () => {
  it("the side seat rails' joints take most of the moment: 73 % in Scots pine chairs (Effect of Tenon Size on Static Front to Back Loading Performance; seen), here 0.6 to 0.9", () => {
    for (const name of ["leg-forward", "seat-and-back"]) {
      const moments = momentsOf(middle(tied, name));
      const share = (moments.get("seat-side") ?? 0) / sum(moments);
      expect(share).toBeGreaterThan(0.6);
      expect(share).toBeLessThan(0.9);
    }
  });

  it("the joints of a chair without stretchers together take the push times the height of its rails (statics of a portal with hinged feet), less what their depth in the posts takes", () => {
    const one = middle(bare, "leg-forward");
    const rail = one.frame.along.get("seat-side.left")?.[0] ?? 0;
    const height = one.frame.nodes[rail]?.at[2] ?? 0;
    const ratio = sum(momentsOf(one)) / (400 * height);
    expect(ratio).toBeGreaterThan(0.75);
    expect(ratio).toBeLessThan(1.05);
  });

  it("a chair without stretchers bears less and sways more: only with them did chairs bear 150 kg for 110 at legs and side rails 20 to 25 % larger (BioResources, load-carrying capacity and size of chair joints; seen)", () => {
    const ratio = (bare.margin ?? 0) / (tied.margin ?? 1);
    expect(ratio).toBeGreaterThan(0.4);
    expect(ratio).toBeLessThan(0.95);
    const sway = ({ sways }: Strength) => sways.find(({ towards }) => towards === "forward")?.mm ?? 0;
    expect(sway(bare)).toBeGreaterThan(sway(tied) * 1.05);
  });
});
