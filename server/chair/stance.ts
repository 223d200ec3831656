import type { TrimDesign } from "../design/design.ts";
import { compose, movePoint, rotationAbout, STILL, shiftBy } from "../geometry/motion.ts";
import { height, levelAt, planeThrough } from "../geometry/plane.ts";
import type { Motion, Plane, Vec3 } from "../geometry/solid.ts";
import { add, along, cross, distance, dot, norm, scale, squareTo, sub, unit } from "../geometry/vec.ts";
import type { Post } from "./chair.ts";
import { isOnFloor } from "./posts/on-floor.ts";

/** How the chair comes to stand. */
export interface Stance {
  /** As drawn → as it stands. */
  motion: Motion;
  /** The floor in drawn places, looking up. */
  floor: Plane;
  /** Feet that do not reach the floor, mm, by post. */
  hanging: Map<string, number>;
}

/** Feet further than this from the plane of the others hang, mm (the language's own figure: "Exactly what is measured"). */
const OUT_OF_PLANE = 0.5;
/** Three feet in a line, seen from above, hold nothing up: twice the triangle's area, mm². */
const IN_LINE = 1;
/** Feet nearer than this to the foremost count as front feet, mm. */
const SAME_LINE = 1;

interface Foot {
  post: string;
  at: Vec3;
  trimmed: boolean;
}

/**
 * Brings the chair down onto its trimmed feet. The floor goes through the ends of the centre lines of three feet, with the middle of all feet
 * above them and no foot below; where a chair would rock it rests on the front feet. It turns without sliding: front feet keep their
 * place, and when they are trimmed too they come straight down.
 */
export function stanceOf(posts: Iterable<Post>, trims: readonly TrimDesign[]): Stance {
  const feet: Foot[] = [];
  for (const post of posts) {
    if (!isOnFloor(post.design)) continue;
    const cut = trimOf(post, trims);
    feet.push({ post: post.name, at: cut > 0 ? upFromFoot(post, cut) : post.foot, trimmed: cut > 0 });
  }
  if (feet.every((foot) => !foot.trimmed && Math.abs(foot.at[2]) < 1e-9)) {
    return { motion: STILL, floor: levelAt(0), hanging: new Map() };
  }
  const floor = floorUnder(feet.map((foot) => foot.at));
  const hanging = new Map<string, number>();
  for (const foot of feet) {
    const gap = height(floor, foot.at);
    if (gap > OUT_OF_PLANE) hanging.set(foot.post, gap);
  }
  return { motion: comeDown(floor, feet), floor, hanging };
}

/** What is cut off a post's foot along its centre line, mm. */
export function trimOf(post: Post, trims: readonly TrimDesign[]): number {
  let sum = 0;
  for (const trim of trims) {
    const named = trim.posts.some(
      ({ value: ref }) =>
        (ref.name === post.design.name && (ref.side === undefined || ref.side === post.side)) ||
        ref.name === post.name,
    );
    if (named) sum += trim.length.value;
  }
  return sum;
}

/** The point of the centre line that far up from the foot, mm along it. */
function upFromFoot(post: Post, distanceUp: number): Vec3 {
  let left = distanceUp;
  for (const piece of post.pieces) {
    const run = distance(piece.start, piece.end);
    if (left <= run) return along(piece.start, piece.direction, left);
    left -= run;
  }
  return post.top;
}

/** The plane the chair comes to rest on, looking up. */
function floorUnder(feet: readonly Vec3[]): Plane {
  const best =
    feet.length > MANY ? planeUnder(feet) : tripodsOf(feet).sort((a, b) => b.worth - a.worth)[0]?.plane;
  if (best) return best;
  const [a, b] = farthest(feet);
  if (!a) return levelAt(0);
  // Feet in one line hold only that line: the floor holds it, and is level across it.
  const run = b && norm(sub(b, a)) > 1e-9 ? unit(sub(b, a)) : undefined;
  const normal = run ? unit(squareTo([0, 0, 1], run)) : ([0, 0, 1] as Vec3);
  return { normal, offset: dot(normal, a) };
}

/** With more feet than these not every three are tried. */
const MANY = 16;

/**
 * The plane through three feet that has the middle of all above it and none under it: beginning with any three about the middle, the foot
 * furthest under their plane takes the place of one of them until none is. Nothing where the feet are in one line.
 */
function planeUnder(feet: readonly Vec3[]): Plane | undefined {
  const middle = scale(feet.reduce<Vec3>(add, [0, 0, 0]), 1 / feet.length);
  let three = triplesOf(outermost(feet)).find((some) => stands(some) && holds(some, middle));
  // Each turn brings the plane lower under the middle, so none comes twice.
  for (let turn = 0; three !== undefined && turn < feet.length * feet.length; turn++) {
    const plane = lookingUp(planeThrough(...three));
    if (!plane) return undefined;
    const under = (foot: Vec3) => height(plane, foot);
    const lowest = feet.reduce((low, foot) => (under(foot) < under(low) ? foot : low), feet[0]!);
    if (under(lowest) >= -1e-7) return plane;
    const [a, b, c] = three;
    const next: Three[] = [
      [lowest, b, c],
      [a, lowest, c],
      [a, b, lowest],
    ];
    three = next.find((some) => stands(some) && holds(some, middle));
  }
  return undefined;
}

type Three = readonly [Vec3, Vec3, Vec3];

/** Whether three feet are not in one line, seen from above. */
const stands = (three: Three): boolean => Math.abs(areaFromAbove(...three)) >= IN_LINE;

/** The feet furthest out in sixteen directions, each once. */
function outermost(feet: readonly Vec3[]): Vec3[] {
  const found = new Set<Vec3>();
  for (let turn = 0; turn < 16; turn++) {
    const [x, y] = [Math.cos((turn * Math.PI) / 8), Math.sin((turn * Math.PI) / 8)];
    const out = (foot: Vec3) => x * foot[0] + y * foot[1];
    found.add(feet.reduce((far, foot) => (out(foot) > out(far) ? foot : far), feet[0]!));
  }
  return [...found];
}

function triplesOf(feet: readonly Vec3[]): Three[] {
  return feet.flatMap((a, i) =>
    feet.slice(i + 1).flatMap((b, j) => feet.slice(i + j + 2).map((c): Three => [a, b, c])),
  );
}

/** Every plane through three feet that has no foot under it; worth more the better it carries the middle, then the front feet. */
function tripodsOf(feet: readonly Vec3[]): { plane: Plane; worth: number }[] {
  const middle = scale(feet.reduce<Vec3>(add, [0, 0, 0]), 1 / Math.max(1, feet.length));
  const front = Math.min(...feet.map((foot) => foot[1]));
  const found: { plane: Plane; worth: number }[] = [];
  for (let i = 0; i < feet.length; i++) {
    for (let j = i + 1; j < feet.length; j++) {
      for (let k = j + 1; k < feet.length; k++) {
        const three = [feet[i]!, feet[j]!, feet[k]!] as const;
        const plane = lookingUp(planeThrough(...three));
        if (!plane || Math.abs(areaFromAbove(...three)) < IN_LINE) continue;
        if (feet.some((foot) => height(plane, foot) < -1e-7)) continue;
        const inFront = three.filter((foot) => foot[1] < front + SAME_LINE).length;
        found.push({ plane, worth: (holds(three, middle) ? 10 : 0) + inFront });
      }
    }
  }
  return found;
}

function lookingUp(plane: Plane | undefined): Plane | undefined {
  if (!plane || plane.normal[2] === 0) return undefined;
  if (plane.normal[2] > 0) return plane;
  const [x, y, z] = plane.normal;
  return { normal: [-x, -y, -z], offset: -plane.offset };
}

const areaFromAbove = (a: Vec3, b: Vec3, c: Vec3): number =>
  (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);

/** Whether a triangle seen from above holds a point, its edge included. */
function holds([a, b, c]: readonly [Vec3, Vec3, Vec3], p: Vec3): boolean {
  const whole = areaFromAbove(a, b, c);
  const slack = -1e-6;
  return [areaFromAbove(a, b, p), areaFromAbove(b, c, p), areaFromAbove(c, a, p)].every(
    (part) => part / whole > slack,
  );
}

function farthest(feet: readonly Vec3[]): [Vec3 | undefined, Vec3 | undefined] {
  const a = feet[0];
  if (!a) return [undefined, undefined];
  const b = feet.reduce((best, foot) => (distance(a, foot) > distance(a, best) ? foot : best), a);
  return [a, b];
}

/** The motion that lays the floor level at height 0 and leaves the front feet where they were, seen from above. */
function comeDown(floor: Plane, feet: readonly Foot[]): Motion {
  const front = Math.min(...feet.map((foot) => foot.at[1]));
  const ahead = feet.filter((foot) => foot.at[1] < front + SAME_LINE).map((foot) => foot.at);
  const pivot = scale(ahead.reduce<Vec3>(add, [0, 0, 0]), 1 / Math.max(1, ahead.length));
  const axis = cross(floor.normal, [0, 0, 1]);
  const sine = norm(axis);
  const turned = sine < 1e-15 ? STILL : rotationAbout(pivot, unit(axis), Math.atan2(sine, floor.normal[2]));
  return compose(shiftBy([0, 0, -movePoint(turned, pivot)[2]]), turned);
}
