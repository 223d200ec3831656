import type { Joint } from "../chair/chair.ts";
import type { Vec3 } from "../geometry/solid.ts";
import { along, dot } from "../geometry/vec.ts";

/** Where the pegs through a joint lie, and the wood around their holes, mm. */
interface Pegs {
  count: number;
  diameter: number;
  /** From the shoulder to the middle of the holes, along the tenon. */
  setback: number;
  /** How far the tenon's holes lie nearer the shoulder, to draw it up. */
  draw: number;
  /** Middles of the holes in the tenon's middle plane. The pegs run across its thickness. */
  middles: Vec3[];
  /** From a hole to the tenon's end, to the edge of the member entered, and across the tenon to its edge or the next hole. */
  toEnd: number;
  toShoulder: number;
  toEdge: number;
}

/**
 * The holes lie at the given setback, else halfway along the tenon but no more than two diameters in; spread evenly over its width. Each of
 * twin tenons has as many as the text says.
 */
export function pegsOf(joint: Joint): Pegs | undefined {
  const peg = joint.facts.peg?.value;
  const [first] = joint.sections;
  if (!peg || !first || joint.facts.dowels) return undefined;
  const long = meanLength(joint);
  const setback = peg.setback ?? Math.min(long / 2, 2 * peg.diameter);
  const half = peg.diameter / 2;
  const at = along(joint.root, joint.direction, setback);
  // A fork's tines lie side by side: one peg goes through both.
  const over = joint.shape === "forked" ? [first] : joint.sections;
  const middles = over.flatMap(({ wide: [low, high] }) =>
    Array.from({ length: peg.count }, (_, k) =>
      along(at, joint.acrossWide, low + ((k + 0.5) * (high - low)) / peg.count),
    ),
  );
  return {
    count: middles.length,
    diameter: peg.diameter,
    setback,
    draw: peg.draw,
    middles,
    toEnd: long - setback - half,
    toShoulder: setback - half,
    toEdge: (first.wide[1] - first.wide[0]) / peg.count / 2 - half,
  };
}

/** On the tenon's middle: less than its length where the end is mitred. */
function meanLength({ tenon, direction, root, long }: Joint): number {
  let reach = long;
  for (const { planes } of tenon) {
    for (const { normal, offset } of planes) {
      const rate = dot(normal, direction);
      // Sides of the tenon run along it; its end does not.
      if (rate > 0.1) reach = Math.min(reach, (offset - dot(normal, root)) / rate);
    }
  }
  return reach;
}
