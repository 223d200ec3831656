/**
 * A chair rolled over the edge of its feet: each body's own corners are turned about the edge that stays on the floor, and it goes over
 * where its potential energy is greatest.
 */
import type { Chair } from "../../../server/chair/chair.ts";
import { movePoint } from "../../../server/geometry/motion.ts";
import type { Vec3 } from "../../../server/geometry/solid.ts";
import { weigh } from "../../../server/timber/weight.ts";

interface Weighted {
  mass: number;
  at: Vec3;
}

/** The chair as point masses, one for each part, and all corners of its posts, as it stands. */
export function pieces(chair: Chair): { masses: Weighted[]; corners: Vec3[] } {
  const corners = [...chair.posts.values()].flatMap(({ body }) =>
    body.pieces.flatMap(({ points }) => points.map((point) => movePoint(chair.stance, point))),
  );
  const masses = [...weigh(chair).parts.values()].map(({ mass, centre }) => ({ mass, at: centre }));
  return { masses, corners };
}

/** Turned over towards `way` by an angle, and let down until its lowest corner touches the floor. */
function turned(
  way: readonly [number, number],
  angle: number,
  { masses, corners }: ReturnType<typeof pieces>,
) {
  const along = ([x, y]: Vec3) => x * way[0] + y * way[1];
  const height = (at: Vec3) => at[2] * Math.cos(angle) - along(at) * Math.sin(angle);
  const floor = Math.min(...corners.map(height));
  return masses.reduce((sum, { mass, at }) => sum + mass * (height(at) - floor), 0);
}

/** The angle of greatest energy up to where it would lie on its side, found by golden section. */
export function goesOverAt(way: readonly [number, number], of: ReturnType<typeof pieces>): number {
  const golden = (Math.sqrt(5) - 1) / 2;
  let [low, high] = [0.01, 1.2];
  for (let k = 0; k < 60; k++) {
    const a = high - golden * (high - low);
    const b = low + golden * (high - low);
    if (turned(way, a, of) < turned(way, b, of)) low = a;
    else high = b;
  }
  return (low + high) / 2;
}

/** Directions mostly along an axis, square to the lines between the feet's corners that have all the others on one side. */
export function weighted(chair: Chair, axis: 0 | 1): [number, number][] {
  const feet = [...chair.posts.values()].flatMap(({ body }) =>
    body.pieces.flatMap(({ points }) =>
      points.map((point) => movePoint(chair.stance, point)).filter(([, , z]) => Math.abs(z) < 0.01),
    ),
  );
  const found: [number, number][] = [];
  for (const a of feet) {
    for (const b of feet) {
      const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
      if (length < 1) continue;
      const out: [number, number] = [(b[1] - a[1]) / length, (a[0] - b[0]) / length];
      if (Math.abs(out[axis]) < Math.abs(out[1 - axis]!)) continue;
      if (feet.every((c) => (c[0] - a[0]) * out[0] + (c[1] - a[1]) * out[1] < 1e-6)) found.push(out);
    }
  }
  return found;
}
