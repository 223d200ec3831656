import { lineThrough } from "../../geometry/convex.ts";
import { height } from "../../geometry/plane.ts";
import type { Convex, Edge, Plane, Vec3 } from "../../geometry/solid.ts";
import { along, between, distance } from "../../geometry/vec.ts";

/** An end's outline follows a turned surface in steps of about this, mm. */
const STEP = 4;
/** And in no more steps than this. */
const MOST = 32;

/**
 * Redraws the outline of an end that runs on into a turned member where it comes out of that member's wood: the line a maker sees,
 * where the end's own flat cut is hidden inside.
 */
export function outlinedOn(
  edges: readonly Edge[],
  cut: Plane,
  alongRail: Vec3,
  which: 0 | 1,
  wood: readonly Convex[],
): Edge[] {
  const inward: Vec3 = which === 0 ? alongRail : [-alongRail[0], -alongRail[1], -alongRail[2]];
  const onCut = (p: Vec3) => Math.abs(height(cut, p)) < 1e-6;
  return edges.flatMap((edge) =>
    edge.is === "arris" && onCut(edge.a) && onCut(edge.b) ? outline(edge, inward, wood) : edge,
  );
}

function outline(edge: Edge, inward: Vec3, wood: readonly Convex[]): Edge[] {
  const count = Math.min(MOST, Math.max(1, Math.ceil(distance(edge.a, edge.b) / STEP) || 1));
  const points = Array.from({ length: count + 1 }, (_, k) =>
    surfacing(between(edge.a, edge.b, k / count), inward, wood),
  );
  return points.slice(1).map((b, k): Edge => ({ ...edge, a: points[k]!, b }));
}

/** Where a line that starts inside comes out of the wood; the start when it is outside. */
function surfacing(point: Vec3, inward: Vec3, wood: readonly Convex[]): Vec3 {
  let out = 0;
  for (const piece of wood) {
    const span = lineThrough(piece, point, inward);
    if (span && span[0] <= out + 1e-6 && span[1] > out) out = span[1];
  }
  return along(point, inward, out);
}
