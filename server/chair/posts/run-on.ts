import type { Vec3 } from "../../geometry/solid.ts";
import { add, between, cross, distance, dot, negate, sub } from "../../geometry/vec.ts";
import type { CornerLine } from "../joints/stuff.ts";

/** Corners nearer than this to their line need no other line, mm. */
const SAME = 1e-9;

/**
 * The corner lines of a stretch that goes on from the end of the one before: they begin in its corners, so that the two share that
 * section exactly, and every face stays flat: it holds an edge of the shared section and aims at the middle of the same edge of its own
 * end. Where the stretch only turns or only tapers these are its own corner lines; where it does both they lie off them by some
 * thousandths of a mm.
 */
export function runOn(lines: readonly CornerLine[], from: readonly Vec3[]): CornerLine[] {
  if (from.every((p, c) => offLine(p, lines[c]!) < SAME)) return from.map((p, c) => [p, lines[c]![1]]);
  const count = lines.length;
  const normals = from.map((p, c): Vec3 => {
    const next = (c + 1) % count;
    const aim = between(lines[c]![1], lines[next]![1], 0.5);
    return cross(sub(from[next]!, p), sub(aim, p));
  });
  return from.map((p, c): CornerLine => {
    const run = cross(normals[(c + count - 1) % count]!, normals[c]!);
    return [p, add(p, dot(run, sub(lines[c]![1], p)) < 0 ? negate(run) : run)];
  });
}

/** How far a point lies off a line, mm. */
function offLine(p: Vec3, [a, b]: CornerLine): number {
  const run = sub(b, a);
  const share = dot(sub(p, a), run) / dot(run, run);
  return distance(p, between(a, b, share));
}
