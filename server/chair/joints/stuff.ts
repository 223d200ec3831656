import { clip, prism } from "../../geometry/convex.ts";
import { height } from "../../geometry/plane.ts";
import type { Convex, Plane, Vec3 } from "../../geometry/solid.ts";
import { along, dot, sub } from "../../geometry/vec.ts";

/** A corner line of straight or tapered stuff: two points of it. */
export type CornerLine = readonly [Vec3, Vec3];

interface CutStuff {
  solid: Convex;
  /** Where the corner lines meet the two cuts, in order. */
  start: Vec3[];
  end: Vec3[];
  /** The two cuts do not cross inside the stuff: those are the solid's two rings. */
  whole: boolean;
}

/**
 * Stuff with those corner lines, cut off by two planes that both look from start to end. Corner lines run anticlockwise seen from the end.
 * `begun` gives the corners at the first cut where they are known already. Null when nothing is left. Where the two cuts cross inside the stuff, what lies between them on the right side is kept.
 */
export function cutBetween(
  lines: readonly CornerLine[],
  from: Plane,
  to: Plane,
  begun?: readonly Vec3[],
): CutStuff | null {
  const start: Vec3[] = [];
  const end: Vec3[] = [];
  let whole = true;
  let none = true;
  for (const [k, [a, b]] of lines.entries()) {
    const run = sub(b, a);
    const p = begun?.[k] ?? meet(from, a, run);
    const q = meet(to, a, run);
    if (!p || !q) return null;
    start.push(p);
    end.push(q);
    const forward = dot(sub(q, p), run);
    if (forward <= 0) whole = false;
    else none = false;
  }
  if (none) return null;
  if (whole) return { solid: prism(start, end), start, end, whole };
  return crossed(lines, start, end, from, to);
}

function meet(plane: Plane, a: Vec3, run: Vec3): Vec3 | undefined {
  const rate = dot(plane.normal, run);
  if (Math.abs(rate) < 1e-12) return undefined;
  return along(a, run, -height(plane, a) / rate);
}

function crossed(
  lines: readonly CornerLine[],
  start: Vec3[],
  end: Vec3[],
  from: Plane,
  to: Plane,
): CutStuff | null {
  let low = Infinity;
  let high = -Infinity;
  for (const [k, [a, b]] of lines.entries()) {
    const run = sub(b, a);
    for (const p of [start[k]!, end[k]!]) {
      const t = dot(sub(p, a), run) / dot(run, run);
      low = Math.min(low, t);
      high = Math.max(high, t);
    }
  }
  const ring = (t: number): Vec3[] => lines.map(([a, b]) => along(a, sub(b, a), t));
  const stock = prism(ring(low - 0.01), ring(high + 0.01));
  const cut = clip(stock, to);
  const solid =
    cut && clip(cut, { normal: [-from.normal[0], -from.normal[1], -from.normal[2]], offset: -from.offset });
  return solid && { solid, start, end, whole: false };
}
