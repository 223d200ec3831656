/**
 * How the values of parts and their ends are worked out: one function for each row of the table of values.
 */

import {
  type LateName,
  partValues as rows,
  type ValueName,
  type ValueRow,
} from "../../../grammar/vocabulary/values.ts";
import { jointName, partName, SEAT } from "../../design/identity.ts";
import type { Vec3 } from "../../geometry/solid.ts";
import { angleBetween, dot } from "../../geometry/vec.ts";
import { tightestOf } from "../bows/bow.ts";
import { stripLength } from "../bows/strip.ts";
import type { Bow, Chair, Joint, Post, Rail, RailEnd, SeatSurface } from "../chair.ts";
import { grainOf } from "../grain.ts";
import { depthCut } from "../joints/depth-cut.ts";
import { railsAndSlats } from "../member.ts";
import { isOnFloor } from "../posts/on-floor.ts";
import { woodUnderHollow } from "../seat/solid/hollow.ts";
import { seatLeanOf } from "../seat/solid/leg.ts";

/** Names in the table under some prefix, without it. */
type Under<
  Prefix extends string,
  Name extends string = Exclude<ValueName, LateName>,
> = Name extends `${Prefix}.${infer Rest}` ? Rest : never;
type OfJoint = Under<"PART.END">;
type OfPart = Exclude<Under<"PART">, `END.${string}`>;
type OfRailEnd = Under<"RAIL.END">;

type Standing = Pick<Chair, "floor" | "seat" | "joints">;
type Workings<Name extends string, Of> = Record<Name, (of: Of, chair: Standing) => number | undefined>;

/** What is let into a solid seat: a leg, a post or a stick that stands on it, a hoop by its left foot. */
const inSeat = {
  lean: (part: Post | Rail | Bow, { seat }: Standing) => seatLeanOf(seat, part)?.lean,
  "sight-line": (part: Post | Rail | Bow, { seat }: Standing) => seatLeanOf(seat, part)?.sightLine,
  "bore-depth": (part: Post | Rail | Bow, chair: Standing) => {
    const joint = socketOf(part, chair);
    return joint && chair.seat && joint.long / Math.abs(dot(joint.direction, chair.seat.plane.normal));
  },
  "edge-wood": (part: Post | Rail | Bow, chair: Standing) => socketOf(part, chair)?.mortiseWall,
  "hollow-wood": (part: Post | Rail | Bow, chair: Standing) => {
    const joint = socketOf(part, chair);
    return joint && chair.seat && woodUnder(joint, chair.seat);
  },
};

const ofPosts: Workings<OfPart | Under<"POST">, Post> = {
  length: (post) => post.length,
  "foot-bevel": (post, { floor }) => {
    const foot = post.pieces[0];
    return foot && isOnFloor(post.design)
      ? Math.PI / 2 - angleBetween(foot.direction, floor.normal)
      : undefined;
  },
  ...inSeat,
  "grain-slope": (post) => grainOf(post)?.slope,
};

/** The joint of a part in a solid seat, where one is cut. */
function socketOf(part: Post | Rail | Bow, { joints }: Standing): Joint | undefined {
  const joint = joints.get(jointName(part.is === "bow" ? `${part.name}.left` : part.name, partName(SEAT)));
  return joint?.shape === "none" ? undefined : joint;
}

/** The wood between a blind bore from below and the hollow over it. */
function woodUnder(joint: Joint, seat: SeatSurface): number | undefined {
  if (joint.facts.through || dot(joint.direction, seat.plane.normal) < 0) return undefined;
  return woodUnderHollow(
    seat,
    joint.tenon.flatMap(({ points }) => points),
  );
}

const ofRails: Workings<OfPart | Exclude<Under<"RAIL">, `END.${string}`>, Rail> = {
  length: (rail) => rail.length,
  "round-length": (rail) => rail.roundLength,
  ...inSeat,
};

const ofSticks: Workings<Under<"STICK">, Rail> = {
  "over-all": ({ ends, length }) =>
    ends.reduce(
      (sum, { joint, shoulder }) => sum + (joint && shoulder ? alongOf(joint, shoulder.normal) : 0),
      length,
    ),
  "off-middle": (stick) => stick.passes?.off,
};

/** How long a tenon is along its own line, on its middle. */
const alongOf = ({ long, direction, shape }: Joint, face: Vec3): number =>
  shape === "none" ? 0 : long / Math.abs(dot(direction, face));

const ofBows: Workings<OfPart | Under<"BOW">, Bow> = {
  length: (bow) => bow.path.length,
  "strip-length": stripLength,
  radius: tightestOf,
  ...inSeat,
};

const ofRailEnds: Workings<OfRailEnd, RailEnd> = {
  "face-bevel": (end) => (end.shoulder && !end.over ? end.faceBevel : undefined),
  "edge-bevel": (end) => (end.shoulder && !end.over ? end.edgeBevel : undefined),
};

const ofJoints: Workings<OfJoint, Joint> = {
  "tenon-thick": (joint) => joint.thick,
  "tenon-wide": (joint) => joint.wide,
  "tenon-long": depthCut,
  "mortise-wall": (joint) => joint.mortiseWall,
  "glue-area": (joint) => joint.glueArea,
};

/** Puts down one value: the part's name, what follows it, how it is worked out, and the last word of its name. */
type Put = (part: string, rest: string, workOut: () => number | undefined, row: ValueRow) => void;

/** Every value of the single parts, in the order to list them. */
export function partValues(
  chair: Pick<Chair, "posts" | "members" | "joints" | "floor" | "seat">,
  put: Put,
): void {
  const each = <Of>(workings: Workings<string, Of>, part: string, end: string | undefined, of: Of) => {
    for (const [name, working] of Object.entries(workings)) {
      const row = rows.get(name);
      if (row) put(part, end === undefined ? name : `${end}.${name}`, () => working(of, chair), row);
    }
  };
  for (const post of chair.posts.values()) {
    each(ofPosts, post.name, undefined, post);
    for (const joint of chair.joints.values()) {
      if (joint.part === post.name && joint.shape !== "none") each(ofJoints, post.name, joint.end, joint);
    }
  }
  for (const rail of railsAndSlats(chair)) {
    each(ofRails, rail.name, undefined, rail);
    if (rail.is === "stick") each(ofSticks, rail.name, undefined, rail);
    for (const end of rail.ends) {
      // Turned stuff has no face that a bevel would lie on.
      if (rail.round === undefined) each(ofRailEnds, rail.name, end.name, end);
      if (end.joint && end.joint.shape !== "none") each(ofJoints, rail.name, end.name, end.joint);
    }
  }
  for (const member of chair.members.values()) {
    if (member.is !== "bow") continue;
    each(ofBows, member.name, undefined, member);
    for (const joint of chair.joints.values())
      if (joint.part === member.name && joint.shape !== "none") each(ofJoints, member.name, joint.end, joint);
  }
}
