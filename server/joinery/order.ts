import { finish, type Steps } from "../../grammar/steps.ts";
import type { Bow, Chair, Joint, Rail } from "../chair/chair.ts";
import { railNamed } from "../chair/member.ts";
import { negate } from "../geometry/vec.ts";
import { type Assembly, assemblySteps, type Locked, lockedSteps } from "./assembly.ts";
import { allowance } from "./figures.ts";
import type { Fitting } from "./fitting.ts";

/** A change of one joint to be tried: all else stays. */
export interface Change {
  square?: true;
  /** mm */
  long?: number;
  /** More clearance, mm. */
  looser?: number;
}

/** An order in which a chair's posts, rails and slats can be joined, or what forbids it. Corner blocks and the seat come after. */
export const orderOf = (chair: Chair): Assembly => finish(orderSteps(chair));

/** The same, resting within. */
export function* orderSteps(chair: Chair): Steps<Assembly> {
  return yield* assemblySteps(partsOf(chair), fittingsOf(chair));
}

/** What forbids every order of the chair's parts; nothing when it can be put together. Quicker than the order itself. */
export const lockedIn = (chair: Chair): readonly Locked[] => finish(lockedInSteps(chair));

/** The same, resting within. */
export function* lockedInSteps(chair: Chair): Steps<readonly Locked[]> {
  return yield* lockedSteps(partsOf(chair), fittingsOf(chair));
}

/** Everything that is joined, posts first. Parts with no tenon on them or in them have nothing to say in the order. */
export function partsOf(chair: Chair): string[] {
  const joined = new Set<string>();
  for (const joint of chair.joints.values()) {
    if (joint.tenon.length === 0) continue;
    joined.add(joint.part);
    joined.add(joint.entered.name);
  }
  return [...chair.members.keys()].filter((part) => joined.has(part));
}

/** The chair's joints as assembly sees them; `change` may alter some, to try what would help. */
export function fittingsOf(chair: Chair, change?: (joint: Joint) => Change | undefined): Fitting[] {
  const fittings: Fitting[] = [];
  for (const joint of chair.joints.values()) {
    if (joint.tenon.length > 0) fittings.push(fittingOf(chair, joint, change?.(joint)));
  }
  return [...fittings, ...standing(chair)];
}

/** A post that stands on a rail is lifted off it, or moves with it. */
function standing(chair: Chair): Fitting[] {
  return [...chair.posts.values()].flatMap((post) => {
    const under = post.design.standsOn?.value.rail;
    const rail =
      under && (chair.rails.get(`${under.name}.${under.side ?? post.side}`) ?? chair.rails.get(under.name));
    if (!rail) return [];
    const [long, slack] = [1, 0.99];
    return { name: "", part: post.name, into: rail.name, direction: [0, 0, -1] as const, long, slack };
  });
}

/** What a joint gives way sideways while it is closed, mm: its clearance and the wood. */
const givesOf = (joint: Joint): number =>
  Math.max(0, (joint.facts.fit?.value ?? 0) + allowance("tenon-yields"));

/** The spring of its rail or slat besides, mm, which stays well under the tenon's length. */
function springIn(chair: Chair, joint: Joint): number {
  const bow = chair.bows.get(joint.part);
  if (bow) return Math.min(springOf(legOf(bow)), allowance("strays-at-most") * joint.long);
  const rail = railNamed(chair, joint.part);
  return rail ? Math.min(springOf(rail), allowance("strays-at-most") * joint.long) : 0;
}

/** A bow gives at its feet as each half of it does, held at its crown. */
function legOf(bow: Bow): Pick<Rail, "length" | "thick" | "wide" | "round"> {
  const { thick, wide } = bow.sizeAt(bow.path.length / 4);
  return { length: bow.path.length / 2, thick, wide, ...(bow.round !== undefined && { round: thick }) };
}

/** How far a member held at one end is sprung at the other by hand, across its thin way: F l³ / 3 E I, the formula for a cantilever. */
function springOf({ length, thick, wide, round }: Pick<Rail, "length" | "thick" | "wide" | "round">): number {
  const [thin, broad] = [Math.min(thick, wide), Math.max(thick, wide)];
  const inertia = round === undefined ? (broad * thin ** 3) / 12 : (Math.PI * thin ** 4) / 64;
  const sprung = (allowance("hand-force") * length ** 3) / (3 * allowance("stiffness") * inertia);
  return Math.min(sprung, length * allowance("springs-at-most"));
}

function fittingOf(chair: Chair, joint: Joint, change: Change | undefined): Fitting {
  const spring = springIn(chair, joint);
  const depth = joint.facts.through ? joint.depthThere : Math.min(joint.long, joint.depthThere || joint.long);
  return {
    name: joint.name,
    part: joint.part,
    into: joint.entered.name,
    // A stick is put down through its bow into the seat.
    direction:
      joint.kind === "passing"
        ? negate(joint.direction)
        : (change?.square && squareInto(chair, joint)) || joint.direction,
    long: Math.min(change?.long ?? depth, depth),
    slack: givesOf(joint) + spring + (change?.looser ?? 0),
    spring,
    ...(coneOf(joint) > 0 && { free: coneOf(joint) }),
    ...(joint.entered.kind === "seat" && { drawn: true as const }),
  };
}

/** Half the angle of a tapered tenon's cone, radians; 0 of one that does not taper. */
function coneOf({ sections, long, thick }: Joint): number {
  const tip = sections[0]?.tip ?? 1;
  return long > 0 ? Math.atan((thick * (1 - tip)) / (2 * long)) : 0;
}

/** Square into the face a joint enters. */
function squareInto(chair: Chair, joint: Joint) {
  const face = railNamed(chair, joint.part)?.ends.find((end) => end.joint === joint)?.shoulder;
  return face && negate(face.normal);
}
