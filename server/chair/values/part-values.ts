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
import { angleBetween, dot } from "../../geometry/vec.ts";
import type { Chair, Joint, Post, Rail, RailEnd } from "../chair.ts";
import { grainOf } from "../grain.ts";
import { depthCut } from "../joints/depth-cut.ts";
import { railsAndSlats } from "../member.ts";
import { isOnFloor } from "../posts/on-floor.ts";
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

const ofPosts: Workings<OfPart | Under<"POST">, Post> = {
  length: (post) => post.length,
  "foot-bevel": (post, { floor }) => {
    const foot = post.pieces[0];
    return foot && isOnFloor(post.design)
      ? Math.PI / 2 - angleBetween(foot.direction, floor.normal)
      : undefined;
  },
  lean: (post, { seat }) => seatLeanOf(seat, post)?.lean,
  "sight-line": (post, { seat }) => seatLeanOf(seat, post)?.sightLine,
  "bore-depth": (post, chair) => {
    const joint = socketOf(post, chair);
    return joint && chair.seat && joint.long / Math.abs(dot(joint.direction, chair.seat.plane.normal));
  },
  "edge-wood": (post, chair) => socketOf(post, chair)?.mortiseWall,
  "grain-slope": (post) => grainOf(post)?.slope,
};

/** The joint of a leg in a solid seat, where one is cut. */
function socketOf({ design, name }: Post, { joints }: Standing): Joint | undefined {
  if (!(design.intoSeat ?? design.onSeat)) return undefined;
  const joint = joints.get(jointName(name, partName(SEAT)));
  return joint?.shape === "none" ? undefined : joint;
}

const ofRails: Workings<OfPart | Exclude<Under<"RAIL">, `END.${string}`>, Rail> = {
  length: (rail) => rail.length,
  "round-length": (rail) => rail.roundLength,
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
    for (const end of rail.ends) {
      each(ofRailEnds, rail.name, end.name, end);
      if (end.joint && end.joint.shape !== "none") each(ofJoints, rail.name, end.name, end.joint);
    }
  }
}
