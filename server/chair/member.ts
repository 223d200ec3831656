/**
 * The parts of a chair, whatever their kind: kept once, in the order to list them, and given by kind as views.
 */
import type { Design } from "../design/design.ts";
import type { Chair, Member, MemberViews, Rail } from "./chair.ts";

/** Every part by its full name: posts, rails, slats, sticks, bows, corner blocks, the seat; those without a timber of their own take the file's. */
export function orderedMembers(
  { posts, rails, slats, sticks, bows, blocks, seat }: MemberViews,
  { timber }: Pick<Design, "timber">,
): Map<string, Member> {
  const all = [
    ...posts.values(),
    ...rails.values(),
    ...slats.values(),
    ...sticks.values(),
    ...bows.values(),
    ...blocks.values(),
    ...(seat ? [seat] : []),
  ];
  if (timber) for (const member of all) member.timber ??= timber.value;
  return new Map(all.map((member) => [member.name, member]));
}

/** The parts of each kind, in the same order. */
export function viewsOf(members: ReadonlyMap<string, Member>): MemberViews {
  const views: MemberViews = {
    posts: new Map(),
    rails: new Map(),
    slats: new Map(),
    sticks: new Map(),
    bows: new Map(),
    blocks: new Map(),
  };
  for (const [name, member] of members) {
    switch (member.is) {
      case "post":
        views.posts.set(name, member);
        break;
      case "rail":
        views.rails.set(name, member);
        break;
      case "slat":
        views.slats.set(name, member);
        break;
      case "stick":
        views.sticks.set(name, member);
        break;
      case "bow":
        views.bows.set(name, member);
        break;
      case "block":
        views.blocks.set(name, member);
        break;
      case "seat":
        views.seat = member;
        break;
      default:
        member satisfies never;
    }
  }
  return views;
}

/** Whether a part is sawn or turned, straight or bowed, between two ends of its own: a rail, a slat or a stick. */
export const isRail = (member: Member | undefined): member is Rail =>
  member?.is === "rail" || member?.is === "slat" || member?.is === "stick";

/** A rail, slat or stick by its full name. */
export function railNamed(chair: Pick<Chair, "members">, name: string): Rail | undefined {
  const member = chair.members.get(name);
  return isRail(member) ? member : undefined;
}

/** Every rail, then every slat and stick. */
export const railsAndSlats = (chair: Pick<Chair, "members">): Rail[] =>
  [...chair.members.values()].filter(isRail);

/** The same rail with facts of its own, whose ends can be given other joints. */
export const copyOf = (rail: Rail, design: Rail["design"]): Rail => ({
  ...rail,
  design,
  ends: [{ ...rail.ends[0] }, { ...rail.ends[1] }],
});
