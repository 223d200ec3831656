import { expect, test } from "vitest";
import type { Post } from "../../../server/chair/chair.ts";
import { stanceOf } from "../../../server/chair/stance.ts";
import type { Vec3 } from "../../../server/geometry/solid.ts";
import { dot } from "../../../server/geometry/vec.ts";
import { seeded } from "../../grammar/fixtures/random.ts";

const standing = (feet: readonly Vec3[]) =>
  stanceOf(
    feet.map(
      (foot, at) =>
        ({ name: `p${at}`, foot, top: foot, pieces: [], design: { name: `p${at}` } }) as unknown as Post,
    ),
    [],
  );

test("a chair with many uneven feet stands on three of them, none under the floor, the middle of all between the three", () => {
  const random = seeded(5);
  for (let round = 0; round < 40; round++) {
    const feet = Array.from(
      { length: 17 + round * 4 },
      (): Vec3 => [random() * 900, random() * 400, random() * 3],
    );
    const { normal, offset } = standing(feet).floor;
    const gaps = feet.map((foot) => dot(normal, foot) - offset);
    expect(Math.min(...gaps)).toBeGreaterThan(-1e-6);
    const on = feet.filter((_, at) => Math.abs(gaps[at]!) < 1e-6);
    expect(on.length).toBeGreaterThanOrEqual(3);
    const [a, b, c] = on as [Vec3, Vec3, Vec3];
    const mean = (axis: 0 | 1) => feet.reduce((sum, foot) => sum + foot[axis], 0) / feet.length;
    const middle = [mean(0), mean(1)];
    const turn = (p: readonly number[], q: readonly number[]) =>
      Math.sign((q[0]! - p[0]!) * (middle[1]! - p[1]!) - (q[1]! - p[1]!) * (middle[0]! - p[0]!));
    expect(new Set([turn(a, b), turn(b, c), turn(c, a)]).size).toBe(1);
  }
});
