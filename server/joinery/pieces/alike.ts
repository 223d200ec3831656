/**
 * Which parts are made to one sheet: those that are the same piece however it is turned, and its mirror images.
 */
import type { Vec3 } from "../../geometry/solid.ts";
import { dot } from "../../geometry/vec.ts";

/** What tells one piece from another: tagged points in the chair, and the directions of the stick. */
export interface Cast {
  points: { tag: string; at: Vec3 }[];
  frame: readonly [Vec3, Vec3, Vec3];
}

/** Points nearer than this are the same, mm. */
const SAME = 0.05;

/** Half turns and reflections of a stick in its own planes; an odd number of minus signs is a mirror image. */
const TURNS = [1, -1].flatMap((a) => [1, -1].flatMap((b) => [1, -1].map((c) => [a, b, c] as const)));

/** Whether two pieces are the same, mirror images of each other, both (a piece without hand), or neither. */
export function likeness(one: Cast, other: Cast): { same: boolean; mirrored: boolean } {
  const found = { same: false, mirrored: false };
  if (one.points.length !== other.points.length) return found;
  const a = ownPlaces(one);
  const b = ownPlaces(other);
  for (const signs of TURNS) {
    const odd = signs[0] * signs[1] * signs[2] < 0;
    if (odd ? found.mirrored : found.same) continue;
    const turned = a.map(({ tag, at }) => ({ tag, at: at.map((v, k) => v * signs[k]!) as unknown as Vec3 }));
    if (!matches(turned, b)) continue;
    if (odd) found.mirrored = true;
    else found.same = true;
  }
  return found;
}

type Places = Cast["points"];

/** In the stick's own directions, from the middle of the box around it. */
function ownPlaces({ points, frame }: Cast): Places {
  const own = points.map(({ tag, at }) => ({ tag, at: frame.map((d) => dot(d, at)) }));
  const middle = [0, 1, 2].map((k) => {
    const values = own.map(({ at }) => at[k]!);
    return (Math.min(...values) + Math.max(...values)) / 2;
  });
  return own.map(({ tag, at }) => ({ tag, at: at.map((v, k) => v - middle[k]!) as unknown as Vec3 }));
}

function matches(a: Places, b: Places): boolean {
  const left = [...b];
  return a.every(({ tag, at }) => {
    const k = left.findIndex(
      (each) => each.tag === tag && each.at.every((v, axis) => Math.abs(v - at[axis]!) < SAME),
    );
    if (k >= 0) left.splice(k, 1);
    return k >= 0;
  });
}
