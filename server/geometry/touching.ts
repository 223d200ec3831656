import { boundingBox, boxesMeet, volume } from "./convex.ts";
import type { Convex, Vec3 } from "./solid.ts";
import { cross, dot, sub } from "./vec.ts";

/** Faces nearer than this lie on each other, and an overlap narrower than this is none, mm. */
const TOUCH = 1e-6;

/** The pieces in groups that hang together by faces, the largest by volume first. */
export function hangingTogether(pieces: readonly Convex[]): Convex[][] {
  const boxes = pieces.map(boundingBox);
  const open = new Set(pieces.keys());
  const groups: Convex[][] = [];
  for (const start of pieces.keys()) {
    if (!open.delete(start)) continue;
    const group = [start];
    for (const k of group) {
      for (const other of open) {
        if (!boxesMeet(boxes[k]!, boxes[other]!, TOUCH) || !shareFace(pieces[k]!, pieces[other]!)) continue;
        open.delete(other);
        group.push(other);
      }
    }
    groups.push(group.map((k) => pieces[k]!));
  }
  const size = new Map(groups.map((group) => [group, group.reduce((sum, piece) => sum + volume(piece), 0)]));
  return groups.sort((a, b) => size.get(b)! - size.get(a)!);
}

/** Whether two solids that do not overlap touch along a face, in part at least. */
function shareFace(a: Convex, b: Convex): boolean {
  return a.planes.some((plane, which) =>
    b.planes.some(
      (other, face) =>
        Math.abs(plane.offset + other.offset) < TOUCH &&
        dot(plane.normal, other.normal) < -1 + 1e-9 &&
        overlap(ringOf(a, which), ringOf(b, face), plane.normal),
    ),
  );
}

const ringOf = (solid: Convex, face: number): Vec3[] =>
  solid.faces[face]!.map((corner) => solid.points[corner]!);

/** Whether two convex rings in one plane overlap: no line along an edge of either has the other all on its far side. */
function overlap(a: readonly Vec3[], b: readonly Vec3[], normal: Vec3): boolean {
  const apart = (ring: readonly Vec3[], other: readonly Vec3[], sign: 1 | -1): boolean =>
    ring.some((p, k) => {
      const run = sub(ring[(k + 1) % ring.length]!, p);
      const out = cross(run, normal);
      const size = Math.sqrt(dot(out, out));
      return size > TOUCH && other.every((q) => (sign * dot(out, sub(q, p))) / size > -TOUCH);
    });
  // Both rings run anticlockwise seen from outside their own solid, so the second runs clockwise about the first one's normal.
  return !apart(a, b, 1) && !apart(b, a, -1);
}
