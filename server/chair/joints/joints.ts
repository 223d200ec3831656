import type { Steps } from "../../../grammar/steps.ts";
import type { Design, PartRef } from "../../design/design.ts";
import { levelAt } from "../../geometry/plane.ts";
import type { Plane } from "../../geometry/solid.ts";
import type { Fault, Joint, Post, Rail, Side } from "../chair.ts";
import { jointAt } from "./joint.ts";
import { chosenJoint, chosenTopJoint } from "./joint-facts.ts";
import { siteOfEnd, siteOfTop } from "./joint-site.ts";

export interface Sticks {
  posts: ReadonlyMap<string, Post>;
  rails: ReadonlyMap<string, Rail>;
  slats: ReadonlyMap<string, Rail>;
}

/**
 * Every joint of a chair by its full name, in the order of the parts, each also put on the end it belongs to; rests after each. `topOf` gives the plane a
 * post's top is cut to, looking up, when a rail lies over it.
 */
export function* jointSteps(
  design: Design,
  sticks: Sticks,
  topOf: (post: string) => Plane | undefined,
  faults: Fault[],
): Steps<Map<string, Joint>> {
  const joints = new Map<string, Joint>();
  const keep = (joint: Joint): Joint => {
    joints.set(joint.name, joint);
    return joint;
  };
  for (const rail of [...sticks.rails.values(), ...sticks.slats.values()]) {
    for (const which of [0, 1] as const) {
      const end = rail.ends[which];
      const chosen = chosenJoint(design, rail.design, end);
      const site = siteOfEnd(rail, which, chosen, memberOf(sticks, end.entered?.name));
      if (site) end.joint = keep(jointAt(site, faults));
      yield;
    }
  }
  for (const post of sticks.posts.values()) {
    const into = post.design.topInto?.value.rail;
    const rail = into && railOver(sticks, into, post.side);
    if (!rail) continue;
    const cut = topOf(post.name) ?? levelAt(post.top[2]);
    const site = siteOfTop(post, cut, chosenTopJoint(design, post.design), rail);
    if (site) keep(jointAt(site, faults));
  }
  return joints;
}

function memberOf(sticks: Sticks, name: string | undefined): Post | Rail | undefined {
  if (name === undefined) return undefined;
  return sticks.posts.get(name) ?? sticks.rails.get(name) ?? sticks.slats.get(name);
}

/** The rail a post's top goes into: the one named, on the post's own side when it is a pair. */
function railOver(sticks: Sticks, ref: PartRef, side: Side): Rail | undefined {
  const { rails } = sticks;
  return (
    (ref.side && rails.get(`${ref.name}.${ref.side}`)) ??
    rails.get(ref.name) ??
    rails.get(`${ref.name}.${side}`) ??
    rails.get(`${ref.name}.left`)
  );
}
