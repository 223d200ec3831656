import type { Steps } from "../../../grammar/steps.ts";
import type { Design, PartRef, StickDesign } from "../../design/design.ts";
import { jointName, partName } from "../../design/identity.ts";
import { levelAt } from "../../geometry/plane.ts";
import type { Plane } from "../../geometry/solid.ts";
import type { Bow, Fault, Joint, Member, Rail, Side } from "../chair.ts";
import { isRail } from "../member.ts";
import { stationOnBow } from "./bow-host.ts";
import { jointAt } from "./joint.ts";
import { chosenBowJoint, chosenJoint, chosenTopJoint, namedJoint } from "./joint-facts.ts";
import { siteInBow, siteInSeat, siteOfEnd, siteOfFoot, siteOfTop } from "./joint-site.ts";
import { halvingSteps } from "./kinds/halving.ts";
import { passingJoint } from "./passing.ts";

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
    const { topBow } = post.design;
    const bow = topBow && members.get(topBow.value.bow.name);
    if (topBow && bow?.is === "bow") {
      const place = stationOnBow(bow, topBow.value.at, post.side);
      const plane = topOf(post.name) ?? levelAt(post.top[2]);
      const site = siteInBow(post, plane, chosenBowJoint(design, post.design), bow, place);
      if (site) keep(jointAt(site, faults));
    }
    const into = post.design.topInto?.value.rail;
    const rail = into && railOver(members, into, post.side);
    if (!rail) continue;
    const cut = topOf(post.name) ?? levelAt(post.top[2]);
    const site = siteOfTop(post, cut, chosenTopJoint(design, post.design), rail);
    if (site) keep(jointAt(site, faults));
  }
  for (const member of all) {
    if (member.is === "bow") feetOf(design, member, members.get("seat"), faults).forEach(keep);
    if (member.is !== "stick" || !member.passes) continue;
    const bow = members.get(member.passes.bow);
    const { through } = member.design as StickDesign;
    const joint =
      bow?.is === "bow" &&
      passingJoint(member, bow, namedJoint(design, undefined, through?.at ?? member.design.at));
    if (joint) keep(joint);
    yield;
  }
  yield* halvingSteps(design, members, joints, faults);
  return joints;
}

/** The joints of a hoop's two feet, each told apart by its side: `hoop.left to seat`. */
function feetOf(design: Design, bow: Bow, seat: Member | undefined, faults: Fault[]): Joint[] {
  if (seat?.is !== "seat" || !bow.design.feet) return [];
  const { joined } = bow.design;
  const chosen = namedJoint(design, joined?.value, joined?.at ?? bow.design.at);
  return ([0, 1] as const).flatMap((which): Joint[] => {
    const site = siteOfFoot(bow, which, chosen, seat);
    if (!site) return [];
    const foot = { ...bow.id, side: which === 0 ? ("left" as const) : ("right" as const) };
    return [{ ...jointAt(site, faults), name: jointName(partName(foot), seat.name) }];
  });
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
