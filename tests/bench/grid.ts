/**
 * A frame of about 2000 unknowns: a lattice of 7 by 7 by 7 places with beams between neighbours, its lowest level held.
 */
import type { Vec3 } from "../../server/geometry/solid.ts";
import type { Beam, Frame } from "../../server/strength/frame/frame.ts";
import { prepare, solve } from "../../server/strength/frame/solve.ts";

const SIDE = 7;
const held = [true, true, true, true, true, true];

const at = (k: number): Vec3 => [
  100 * (k % SIDE),
  100 * (Math.floor(k / SIDE) % SIDE),
  100 * Math.floor(k / SIDE ** 2),
];

/** Assembles and solves it for one load. Throws when it comes to nothing. */
export function solvedGrid(): void {
  const count = SIDE ** 3;
  const nodes = Array.from({ length: count }, (_, k) => ({ id: String(k), at: at(k) }));
  const beams = nodes.flatMap((_, k): Beam[] =>
    [1, SIDE, SIDE ** 2].flatMap((step, axis) => {
      const to = k + step;
      const [from, next] = [at(k), at(to)];
      if (to >= count || Math.hypot(...next.map((v, i) => v - (from[i] ?? 0))) > 101) return [];
      return [
        {
          id: `${k}-${to}`,
          part: "",
          from: k,
          to,
          yAxis: axis === 2 ? [1, 0, 0] : [0, 0, 1],
          ...{ E: 12_000, G: 750, A: 800, Ay: 660, Az: 660, Iy: 60_000, Iz: 60_000, J: 90_000 },
        },
      ];
    }),
  );
  const frame: Frame = { nodes, beams, springs: [] };
  const supports = Array.from({ length: SIDE ** 2 }, (_, node) => ({ node, held }));
  const answer = solve(prepare(frame), supports, [{ node: count - 1, v: [100, 50, -300, 0, 0, 0] }]);
  if (answer.is !== "solved") throw new Error(answer.is);
}
