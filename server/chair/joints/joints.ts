import type { Steps } from "../../../grammar/steps.ts";
import type { Design, PartRef, StickDesign } from "../../design/design.ts";
import { jointName, partName } from "../../design/identity.ts";
import { levelAt } from "../../geometry/plane.ts";
import type { Plane } from "../../geometry/solid.ts";
import type { Bow, Joint, Member, Post, Rail, Side } from "../chair.ts";
import type { Fault } from "../fault.ts";
import { madeOnce, type Reuse } from "../made.ts";
import { isRail } from "../member.ts";
import { stationOnBow } from "./bow-host.ts";
import { jointAt } from "./joint.ts";
import { chosenBowJoint, chosenJoint, chosenTopJoint, namedJoint } from "./joint-facts.ts";
import { type JointSite, siteInBow, siteInSeat, siteOfEnd, siteOfFoot, siteOfTop } from "./joint-site.ts";
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
  reuse: Reuse,
): Steps<Map<string, Joint>> {
  const joints = new Map<string, Joint>();
  const making: Making = { design, members, topOf, faults, reuse };
  const all = [...members.values()];
  const keep = (made: readonly Joint[]) => {
    for (const joint of made) joints.set(joint.name, joint);
  };
  for (const member of all) {
    if (!isRail(member)) continue;
    for (const which of [0, 1] as const) {
      keep(ofRailEnd(making, member, which));
      yield;
    }
  }
  for (const member of all) {
    if (member.is !== "post") continue;
    keep(ofPostOnSeat(making, member));
    keep(ofPostInBow(making, member));
    keep(ofPostUnderRail(making, member));
    yield;
  }
  for (const member of all) {
    if (member.is === "bow") keep(feetOf(making, member));
    if (member.is === "stick") keep(ofStickThroughBow(making, member));
    yield;
  }
  yield* halvingSteps(design, members, joints, faults);
  return joints;
}

interface Making {
  design: Design;
  members: ReadonlyMap<string, Member>;
  topOf(post: string): Plane | undefined;
  faults: Fault[];
  reuse: Reuse;
}

/** The joint at a site, or none where there is no site. */
const jointsAt = (site: JointSite | undefined, faults: Fault[]): Joint[] =>
  site ? [jointAt(site, faults)] : [];

function ofRailEnd({ design, members, faults, reuse }: Making, rail: Rail, which: 0 | 1): Joint[] {
  const end = rail.ends[which];
  const chosen = chosenJoint(design, rail.design, end);
  const host = members.get(end.entered?.name ?? "");
  const from = { same: [rail.body, host?.body], equal: [chosen, rail.design] };
  const made = madeOnce<Joint[]>(reuse, `${rail.name} ${which}`, from, {
    faults,
    make: () => jointsAt(siteOfEnd(rail, which, chosen, host), faults),
    copy: (joints) => joints.map((joint) => ({ ...joint })),
  });
  if (made[0]) end.joint = made[0];
  return made;
}

function ofPostOnSeat({ design, members, faults }: Making, post: Post): Joint[] {
  const seat = members.get("seat");
  if (!(post.design.intoSeat ?? post.design.onSeat) || seat?.is !== "seat") return [];
  const { joined } = post.design;
  const chosen = namedJoint(design, joined?.value, joined?.at ?? post.design.at);
  return jointsAt(siteInSeat(post, chosen, seat), faults);
}

function ofPostInBow({ design, members, topOf, faults }: Making, post: Post): Joint[] {
  const { topBow } = post.design;
  const bow = topBow && members.get(topBow.value.bow.name);
  if (!topBow || bow?.is !== "bow") return [];
  const place = stationOnBow(bow, topBow.value.at, post.side);
  const plane = topOf(post.name) ?? levelAt(post.top[2]);
  return jointsAt(siteInBow(post, plane, chosenBowJoint(design, post.design), bow, place), faults);
}

function ofPostUnderRail({ design, members, topOf, faults }: Making, post: Post): Joint[] {
  const into = post.design.topInto?.value.rail;
  const rail = into && railOver(members, into, post.side);
  if (!rail) return [];
  const cut = topOf(post.name) ?? levelAt(post.top[2]);
  return jointsAt(siteOfTop(post, cut, chosenTopJoint(design, post.design), rail), faults);
}

function ofStickThroughBow({ design, members }: Making, stick: Rail): Joint[] {
  const bow = stick.passes && members.get(stick.passes.bow);
  if (bow?.is !== "bow") return [];
  const { through } = stick.design as StickDesign;
  const joint = passingJoint(stick, bow, namedJoint(design, undefined, through?.at ?? stick.design.at));
  return joint ? [joint] : [];
}

/** The joints of a hoop's two feet, each told apart by its side: `hoop.left to seat`. */
function feetOf({ design, members, faults }: Making, bow: Bow): Joint[] {
  const seat = members.get("seat");
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
