/**
 * What is bored in a bow, each where its line comes out of the wood: there it is marked.
 */
import { nearestOnBow } from "../../chair/bows/bow.ts";
import type { Bow, Chair, Joint } from "../../chair/chair.ts";
import type { Vec3 } from "../../geometry/solid.ts";
import { along, cross, dot, negate, squareTo, sub, unit } from "../../geometry/vec.ts";
import { jointsAlong } from "./mouths.ts";
import type { BowBore } from "./piece.ts";
import { deepestOf } from "./seat-bores.ts";
import { letterOf } from "./setting-out.ts";

/** Every bore of a bow, from its left end to its right. */
export function boresOf(chair: Chair, bow: Bow): BowBore[] {
  const found = jointsAlong(chair, bow.name).map((joint) => boreOf(bow, joint));
  return found.sort((a, b) => a.along - b.along).map((bore, k) => ({ letter: letterOf(k), ...bore }));
}

function boreOf(bow: Bow, joint: Joint): Omit<BowBore, "letter"> {
  const middle = nearestOnBow(bow, joint.root, joint.direction);
  const { face, towards, ...ways } = faceBored(bow, middle.s, joint.direction);
  const mouth = mouthOf(bow, middle.at, joint.direction);
  const { s, out, off } = sectionAt(bow, mouth);
  const run = bow.way(s);
  const isFlat = face !== "outside" && face !== "inside";
  const flat = isFlat ? ways.normal : face === "outside" ? out : negate(out);
  const over = isFlat ? out : ways.over;
  // A round bow has no flat: what counts is the way out of its surface.
  const normal = bow.round === undefined ? flat : unit(squareTo(sub(mouth, bow.spot(s)), run));
  const across = bow.round === undefined ? over : unit(squareTo(over, normal));
  const inward = -dot(joint.direction, normal);
  const { thick, wide } = bow.sizeAt(s);
  return {
    for: joint.part,
    along: s,
    off,
    face,
    ...(bow.round === undefined
      ? { gauge: isFlat ? thick / 2 - off : wide / 2 - dot(sub(mouth, bow.spot(s)), over) }
      : { round: Math.atan2(dot(normal, over), dot(normal, flat)) }),
    diameter: joint.thick,
    lean: {
      along: Math.atan2(dot(joint.direction, run), inward),
      across: Math.atan2(dot(joint.direction, across), inward),
    },
    towards,
    ...(joint.kind === "passing" || joint.facts.through
      ? {}
      : { deep: deepestOf(joint) + dot(sub(joint.root, mouth), joint.direction) }),
  };
}

/** The face that a line goes in by, the way out of it, and the face beside it that leans are told towards. */
function faceBored(
  bow: Bow,
  s: number,
  direction: Vec3,
): { face: string; normal: Vec3; towards: string; over: Vec3 } {
  const out = cross(bow.way(s), bow.normal);
  const isLying = Math.abs(bow.normal[2]) > Math.SQRT1_2;
  const top = bow.normal[isLying ? 2 : 1] > 0 ? bow.normal : negate(bow.normal);
  const [above, under] = isLying ? ["top", "bottom"] : ["back", "front"];
  return [
    { face: "outside", normal: out, towards: above, over: top },
    { face: "inside", normal: negate(out), towards: above, over: top },
    { face: above, normal: top, towards: "outside", over: out },
    { face: under, normal: negate(top), towards: "outside", over: out },
  ].reduce((best, each) => (dot(each.normal, direction) < dot(best.normal, direction) ? each : best));
}

/** Where a line through the wood comes out of it, back along the line. */
function mouthOf(bow: Bow, inside: Vec3, direction: Vec3): Vec3 {
  const { thick, wide } = bow.sizeAt(bow.path.length / 2);
  let [near, far] = [0, 4 * Math.max(thick, wide)];
  while (far - near > 1e-4) {
    const half = (near + far) / 2;
    if (isInside(bow, along(inside, direction, -half))) near = half;
    else far = half;
  }
  return along(inside, direction, -near);
}

function isInside(bow: Bow, p: Vec3): boolean {
  const { s, off } = sectionAt(bow, p);
  const high = dot(sub(p, bow.spot(s)), bow.normal);
  const { thick, wide } = bow.sizeAt(s);
  return bow.round === undefined
    ? Math.abs(off) < thick / 2 && Math.abs(high) < wide / 2
    : Math.hypot(off, high) < thick / 2;
}

/** The section of a bow that a point lies in, the way out of its curve there, and how far out of the centre line the point is. */
function sectionAt(bow: Bow, p: Vec3): { s: number; out: Vec3; off: number } {
  const { s } = nearestOnBow(bow, p, bow.normal);
  const out = cross(bow.way(s), bow.normal);
  return { s, out, off: dot(sub(p, bow.spot(s)), out) };
}
