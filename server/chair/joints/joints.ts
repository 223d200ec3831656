import type { Steps } from "../../../grammar/steps.ts";
import type { Design, PartRef } from "../../design/design.ts";
import { partName } from "../../design/identity.ts";
import { levelAt } from "../../geometry/plane.ts";
import type { Plane } from "../../geometry/solid.ts";
import type { Fault, Joint, Member, Rail, Side } from "../chair.ts";
import { isRail } from "../member.ts";
import { jointAt } from "./joint.ts";
import { chosenJoint, chosenTopJoint, namedJoint } from "./joint-facts.ts";
import { siteInSeat, siteOfEnd, siteOfTop } from "./joint-site.ts";
import { halvingSteps } from "./kinds/halving.ts";

/**
 * Every joint of a chair by its full name, in the order of the parts, each also put on the end it belongs to; rests after each. `topOf` gives the plane a
 * post's top is cut to, looking up, when a rail lies over it.
 */
export function* jointSteps(
  design: Design,
  members: ReadonlyMap<string, Member>,
  topOf: (post: string) => Plane | undefined,
  faults: Fault[],
): Steps<Map<string, Joint>> {
  const joints = new Map<string, Joint>();
  const keep = (joint: Joint): Joint => {
    joints.set(joint.name, joint);
    return joint;
  };
  const all = [...members.values()];
  for (const rail of all.filter(isRail)) {
    for (const which of [0, 1] as const) {
      const end = rail.ends[which];
      const chosen = chosenJoint(design, rail.design, end);
      const site = siteOfEnd(rail, which, chosen, members.get(end.entered?.name ?? ""));
      if (site) end.joint = keep(jointAt(site, faults));
      yield;
    }
  }
  for (const post of all) {
    if (post.is !== "post") continue;
    if (post.design.intoSeat ?? post.design.onSeat) {
      const seat = members.get("seat");
      const chosen = namedJoint(design, post.design.joined?.value, post.design.joined?.at ?? post.design.at);
      const site = seat?.is === "seat" ? siteInSeat(post, chosen, seat) : undefined;
      if (site) keep(jointAt(site, faults));
      yield;
    }
    const into = post.design.topInto?.value.rail;
    const rail = into && railOver(members, into, post.side);
    if (!rail) continue;
    const cut = topOf(post.name) ?? levelAt(post.top[2]);
    const site = siteOfTop(post, cut, chosenTopJoint(design, post.design), rail);
    if (site) keep(jointAt(site, faults));
  }
  yield* halvingSteps(design, members, joints, faults);
  return joints;
}

/** The rail a post's top goes into: the one named, on the post's own side when it is a pair. */
function railOver(members: ReadonlyMap<string, Member>, ref: PartRef, side: Side): Rail | undefined {
  const sides: Side[] = [...(ref.side ? [ref.side] : []), "middle", side, "left"];
  for (const each of sides) {
    const member = members.get(partName({ stem: ref.name, side: each }));
    if (member?.is === "rail") return member;
  }
  return undefined;
}
