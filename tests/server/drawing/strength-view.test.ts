import { expect, test } from "vitest";
import { strengthShown } from "../../../server/drawing/strength-view.ts";
import { studiedLate } from "../../check.ts";
import { sound } from "../strength/sound.ts";

const strength = studiedLate(sound("load own {\n  push 300N left on seat-front\n}\n")).late!.strength;
const shown = strengthShown(strength, "mm")!;

test("each load case is shown once, the file's own last, with every part and joint", () => {
  const middle = strength.cases.filter(({ stiffness }) => stiffness === "middle");
  expect(shown.cases.map(({ name }) => name)).toEqual(middle.map(({ load }) => load.name));
  expect(shown.cases.at(-1)?.name).toBe("own");
  for (const { parts, joints } of shown.cases) {
    expect(parts.map(({ part }) => part)).toEqual([...(middle[0]?.frame.along.keys() ?? [])]);
    expect(joints).toHaveLength(middle[0]?.frame.jointOf.length ?? 0);
  }
});

test("what works harder has a heavier line, and the hardest carries its figure", () => {
  for (const [k, { parts }] of shown.cases.entries()) {
    const demands = strength.cases.filter(({ stiffness }) => stiffness === "middle")[k]?.members;
    const byDemand = [...parts].sort((a, b) => (demands?.get(a.part) ?? 0) - (demands?.get(b.part) ?? 0));
    for (const [n, part] of byDemand.entries())
      expect(part.weight).toBeGreaterThanOrEqual(byDemand[n - 1]?.weight ?? 0);
    for (const { part, label } of parts)
      if (label !== undefined) expect(Number.parseFloat(label)).toBeCloseTo(demands?.get(part) ?? -1, 2);
  }
  expect(shown.cases.some(({ joints }) => joints.some(({ label }) => label !== undefined))).toBe(true);
});

test("the bent shape is near the straight one, within the picture, and says how far it is enlarged", () => {
  const { width, height } = shown;
  for (const { parts, says } of shown.cases) {
    expect(says).toMatch(/Dashed: how it bends, \d+ times enlarged\.$/);
    let most = 0;
    for (const { points, bent } of parts) {
      expect(bent).toHaveLength(points.length);
      for (const [k, [x, y]] of bent.entries()) {
        most = Math.max(most, Math.hypot(x - (points[k]?.[0] ?? 0), y - (points[k]?.[1] ?? 0)));
        expect(x).toBeGreaterThan(-0.05 * width);
        expect(y).toBeLessThan(1.05 * height);
      }
    }
    expect(most).toBeGreaterThan(0.01 * height);
    expect(most).toBeLessThan(0.075 * height);
  }
});
