import type { Chair, Joint } from "../chair/chair.ts";
import { mayHave } from "../chair/joints/kinds/index.ts";
import { rejoined, supposed } from "../chair/joints/rejoined.ts";
import { railNamed } from "../chair/member.ts";
import { boundingBox, boxesMeet, clip, intersect, volume } from "../geometry/convex.ts";
import { distanceBetween } from "../geometry/distance.ts";
import type { Convex, Plane, Vec3 } from "../geometry/solid.ts";
import { add, dot, scale } from "../geometry/vec.ts";
import { mortiseSolids } from "./inside.ts";

/** What would keep two tenons apart, each worked out by trying; absent where it would not do. */
export interface WaysApart {
  /** Mitring both ends. */
  mitre: boolean;
  /** Both this long or less, mm. */
  long?: number;
  /** Both set this much further towards the outside, mm. */
  further?: number;
  /** Cutting the tenons of these the other way: square to the face, or in line. */
  turned?: { joints: Joint[]; line: "square" | "in-line" };
  /** One rail this much higher or lower, mm. */
  apart?: number;
}

/** mm³ */
const TOUCH = 1e-3;
/** Shortest tenon and narrowest outside shoulder worth proposing, mm. */
const SHORTEST = 10;
const SHOULDER = 2;
const STEP = 0.1;

export function waysApart(chair: Chair, a: Joint, b: Joint): WaysApart {
  const ways: WaysApart = { mitre: mayMitre(a, b) && Math.abs(dot(a.direction, b.direction)) < 0.9 };
  const [one, other] = [mortiseSolids(a), mortiseSolids(b)];
  const long = longestApart(chair, a, b, (some, others) => !share(some, others));
  if (long !== undefined) ways.long = long;
  const room = Math.min(a.shoulders.outside, b.shoulders.outside) - SHOULDER;
  const stay = most(0, room, (left) => {
    const by = room - left;
    return !share(shifted(one, scale(a.acrossThick, by)), shifted(other, scale(b.acrossThick, by)));
  });
  if (room > 0 && stay !== undefined) ways.further = room - stay;
  const turned = turnedApart(chair, a, b);
  if (turned) ways.turned = turned;
  const post = chair.posts.get(a.entered.name);
  if (post) {
    const along = post.pieces.find((p) => p.from <= a.root[2] && a.root[2] <= p.to)?.direction ?? [0, 0, 1];
    const [lowA, highA] = spanOf(one, along);
    const [lowB, highB] = spanOf(other, along);
    ways.apart = Math.min(highA - lowB, highB - lowA);
  }
  return ways;
}

/** Whether mitring is still to be done and both kinds of joint can have it. */
const mayMitre = (a: Joint, b: Joint): boolean =>
  !(a.facts.mitre && b.facts.mitre) && mayHave(a.kind, "mitre") && mayHave(b.kind, "mitre");

/** How long both tenons may be at the most for this much wood between their mortises, mm. */
export const longWithWood = (chair: Chair, a: Joint, b: Joint, wood: number): number | undefined =>
  longestApart(chair, a, b, (some, others) =>
    some.every((one) => others.every((other) => distanceBetween(one, other).distance >= wood)),
  );

/** The greatest length of both that does, not under the shortest worth proposing. */
function longestApart(
  chair: Chair,
  a: Joint,
  b: Joint,
  does: (some: readonly Convex[], others: readonly Convex[]) => boolean,
): number | undefined {
  const [faceA, faceB] = [faceOf(chair, a), faceOf(chair, b)];
  if (!faceA || !faceB) return undefined;
  const [one, other] = [mortiseSolids(a), mortiseSolids(b)];
  return most(SHORTEST, Math.max(a.long, b.long), (depth) =>
    does(upTo(one, faceA, depth), upTo(other, faceB, depth)),
  );
}

/** Whether one tenon or both, cut square instead of in line or the other way about, would pass the other. */
function turnedApart(chair: Chair, a: Joint, b: Joint): WaysApart["turned"] {
  const line = (joint: Joint) => (joint.facts.line?.value === "square" ? "in-line" : "square");
  const turn = (joint: Joint) => rejoined(chair, joint, { line: supposed(joint, line(joint)) });
  for (const joints of [[a], [b], ...(line(a) === line(b) ? [[a, b]] : [])]) {
    const [one, other] = [a, b].map((joint) => (joints.includes(joint) ? turn(joint) : joint));
    if (one?.tenon.length && other?.tenon.length && !share(mortiseSolids(one), mortiseSolids(other)))
      return { joints, line: line(joints[0]!) };
  }
  return undefined;
}

/** The face a rail's joint enters, looking out of the member. */
function faceOf(chair: Chair, joint: Joint): Plane | undefined {
  const rail = railNamed(chair, joint.part);
  return rail?.ends.find((end) => end.joint === joint)?.shoulder;
}

/** The greatest figure that will do, if the least does; what does for one does for every lesser one. */
function most(low: number, high: number, does: (figure: number) => boolean): number | undefined {
  if (!(low <= high) || !does(low)) return undefined;
  let [good, bad] = [low, high];
  while (bad - good > STEP / 4) {
    const middle = (good + bad) / 2;
    if (does(middle)) good = middle;
    else bad = middle;
  }
  return good;
}

/** What is left of tenons cut off at a depth behind the face. */
function upTo(solids: readonly Convex[], face: Plane, depth: number): Convex[] {
  const end: Plane = { normal: scale(face.normal, -1), offset: depth - face.offset };
  return solids.map((solid) => clip(solid, end)).filter((solid) => solid !== null);
}

const shifted = (solids: readonly Convex[], by: Vec3): Convex[] =>
  solids.map(({ planes, points, faces }) => ({
    planes: planes.map(({ normal, offset }) => ({ normal, offset: offset + dot(normal, by) })),
    points: points.map((point) => add(point, by)),
    faces,
  }));

const share = (some: readonly Convex[], others: readonly Convex[]): boolean =>
  some.some((a) =>
    others.some((b) => {
      if (!boxesMeet(boundingBox(a), boundingBox(b))) return false;
      const both = intersect(a, b);
      return both !== null && volume(both) > TOUCH;
    }),
  );

function spanOf(solids: readonly Convex[], along: Vec3): [number, number] {
  const heights = solids.flatMap(({ points }) => points.map((point) => dot(point, along)));
  return [Math.min(...heights), Math.max(...heights)];
}
