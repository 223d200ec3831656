import cdt2d from "cdt2d";
import type { ShellFace } from "../geometry/loops.ts";
import type { Shell } from "../geometry/shell.ts";
import type { Vec3 } from "../geometry/solid.ts";
import { cross, distance, dot, norm, sub, unit } from "../geometry/vec.ts";

/** A closed surface of triangles, each anticlockwise seen from outside; numbers of points. */
export interface Mesh {
  points: Vec3[];
  triangles: Triangle[];
}

type Triangle = [number, number, number];

/**
 * The shell in triangles: every face by itself, between the corners it has and no others, so that faces still meet edge to edge. A face
 * thinner than any measure (two that all but lie in one plane make such a step) is made over to its neighbour.
 */
export function meshOf(shell: Shell): Mesh {
  const { points, faces } = shell;
  const triangles = faces.flatMap((face) => trianglesOf(shell, face));
  return {
    points,
    triangles: withoutSlivers(points, triangles, (longest) => Math.min(STEP, SLIVER * longest)),
  };
}

function trianglesOf({ points }: Shell, { plane, outer, holes }: ShellFace): Triangle[] {
  const n = plane.normal;
  if (holes.length === 0 && outer.length <= 4) {
    const fan = fanOf(points, outer, n);
    if (fan) return fan;
  }
  const u = unit(cross(n, Math.abs(n[0]) < 0.6 ? [1, 0, 0] : [0, 1, 0]));
  const v = cross(n, u);
  // A hole may touch the outline in a corner: that is one point.
  const corners = [...new Set([...outer, ...holes.flat()])];
  const places = new Map(corners.map((corner, k) => [corner, k]));
  const flat = corners.map((k): [number, number] => [dot(u, points[k]!), dot(v, points[k]!)]);
  const edges = [outer, ...holes].flatMap((loop) =>
    loop.map((from, k): [number, number] => [places.get(from)!, places.get(loop[(k + 1) % loop.length]!)!]),
  );
  const triangles = cdt2d(flat, edges, { exterior: false }).map(([a, b, c]): Triangle => {
    const [p, q, r] = [flat[a]!, flat[b]!, flat[c]!];
    const turn = (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]);
    return turn < 0 ? [corners[a]!, corners[c]!, corners[b]!] : [corners[a]!, corners[b]!, corners[c]!];
  });
  return withoutSlivers(points, triangles, (longest) => SLIVER * longest);
}

/** Three or four corners as triangles about the first; undefined where one of those has next to no area or looks back. */
function fanOf(points: readonly Vec3[], ring: readonly number[], normal: Vec3): Triangle[] | undefined {
  const [a, b, c, d] = ring as [number, number, number, number?];
  const fan: Triangle[] =
    d === undefined
      ? [[a, b, c]]
      : [
          [a, b, c],
          [a, c, d],
        ];
  return fan.every((triangle) => dot(normal, acrossOf(points, triangle)) > LEAST) ? fan : undefined;
}

const acrossOf = (points: readonly Vec3[], [a, b, c]: Triangle): Vec3 =>
  cross(sub(points[b]!, points[a]!), sub(points[c]!, points[a]!));

/**
 * A triangle no higher than this share of its longest side is a sliver: in single precision it would not be known which way it looks.
 */
const SLIVER = 1e-4;
/** A step lower than this is none, mm. */
const STEP = 1e-4;
/** A fan's triangles have at least twice this area, mm². */
const LEAST = 1e-5;

/**
 * A corner that lies on the straight between two others can make a sliver with them. The sliver and its neighbour beyond the long side are
 * divided the other way, as another face along the same straight would use that side too.
 */
function withoutSlivers(
  points: readonly Vec3[],
  triangles: readonly Triangle[],
  lowest: (longest: number) => number,
): Triangle[] {
  const left = [...triangles];
  for (let k = 0, turns = 0; k < left.length && turns < triangles.length; k++) {
    const apex = sliverApex(points, left[k]!, lowest);
    if (apex === undefined) continue;
    const [tip, from, to] = turnedTo(left[k]!, apex);
    const other = left.findIndex((each, j) => j !== k && runs(each, to, from));
    if (other < 0) continue;
    const far = left[other]!.find((corner) => corner !== from && corner !== to)!;
    if (left.some((each) => runs(each, tip, far) || runs(each, far, tip))) continue;
    left[k] = [tip, from, far];
    left[other] = [tip, far, to];
    // What was a neighbour may be a sliver now.
    k = Math.min(k, other) - 1;
    turns += 1;
  }
  return left;
}

/** The place, 0 to 2, of the corner that lies on the opposite side; undefined when none does. */
function sliverApex(
  points: readonly Vec3[],
  triangle: Triangle,
  lowest: (longest: number) => number,
): number | undefined {
  const sides = triangle.map((_, k) =>
    distance(points[triangle[(k + 1) % 3]!]!, points[triangle[(k + 2) % 3]!]!),
  );
  const longest = Math.max(...sides);
  return norm(acrossOf(points, triangle)) < longest * lowest(longest) ? sides.indexOf(longest) : undefined;
}

const turnedTo = (triangle: Triangle, first: number): Triangle => [
  triangle[first]!,
  triangle[(first + 1) % 3]!,
  triangle[(first + 2) % 3]!,
];

const runs = (triangle: Triangle, from: number, to: number): boolean =>
  triangle.some((corner, k) => corner === from && triangle[(k + 1) % 3] === to);

/** mm³, by tetrahedra from the first corner. */
export function meshVolume({ points, triangles }: Mesh): number {
  const o = points[0];
  if (!o) return 0;
  let six = 0;
  for (const [a, b, c] of triangles) {
    six += dot(sub(points[a]!, o), cross(sub(points[b]!, o), sub(points[c]!, o)));
  }
  return six / 6;
}

/** Whether every edge is in two triangles, once each way. */
export function isClosed({ triangles }: Mesh): boolean {
  const open = new Set<string>();
  for (const [a, b, c] of triangles)
    for (const [from, to] of [
      [a, b],
      [b, c],
      [c, a],
    ]) {
      if (open.delete(`${to} ${from}`)) continue;
      if (open.has(`${from} ${to}`)) return false;
      open.add(`${from} ${to}`);
    }
  return open.size === 0;
}
