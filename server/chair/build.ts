import { sentence } from "../../grammar/sentences/sentence.ts";
import { finish, type Steps } from "../../grammar/steps.ts";
import type { Design } from "../design/design.ts";
import { STILL } from "../geometry/motion.ts";
import { levelAt, offsetBy } from "../geometry/plane.ts";
import type { Chair, Joint } from "./chair.ts";
import type { Fault } from "./fault.ts";
import { jointSteps } from "./joints/joints.ts";
import { mitreTenons } from "./joints/mitre.ts";
import type { Made, Reuse } from "./made.ts";
import { orderedMembers, viewsOf } from "./member.ts";
import { cutFeet, type Members, memberSteps } from "./members.ts";
import { buildSeat } from "./seat/seat.ts";
import { type Stance, stanceOf } from "./stance.ts";
import { valuesOf } from "./values/values.ts";

/**
 * The chair a design describes, as drawn and as it stands. Parts whose text lacks something are left out; never throws, whatever the
 * design: a stage that fails leaves out what it would have made and says so among the faults.
 */
export const buildChair = (design: Design): Chair => finish(buildSteps(design));

/** The same, resting after each part. Parts and joints that are as in an earlier version are taken over from it. */
export function* buildSteps(design: Design, before?: Made): Steps<Chair> {
  const reuse: Reuse = { before, now: new Map() };
  const faults: Fault[] = [];
  function* stage<T>(what: string, make: () => T | Steps<T>, nothing: T): Steps<T> {
    yield;
    try {
      const made = make();
      return isSteps(made) ? yield* made : made;
    } catch (error) {
      const message = sentence("fault.internal", {
        what,
        why: error instanceof Error ? error.message : String(error),
      });
      faults.push({ is: "not-buildable", part: "", at: design.titleAt, message, thrown: error });
      return nothing;
    }
  }
  const members = yield* stage(sentence("stage.parts"), () => memberSteps(design, reuse), noMembers(reuse));
  faults.push(...members.faults);
  const stance = yield* stage(
    sentence("stage.stance"),
    () => stanceOf(members.posts.values(), design.trims),
    level(),
  );
  const trimmed = stance.motion !== STILL;
  const posts = trimmed
    ? yield* stage(sentence("stage.feet"), () => onTheirFeet(members, stance), members.posts)
    : members.posts;
  const { rails, slats, sticks, bows, blocks } = members;
  const seat = yield* stage(
    sentence("stage.seat"),
    () => members.seat ?? buildSeat(design, rails, posts.values()),
    undefined,
  );
  const parts = orderedMembers({ posts, rails, slats, sticks, bows, blocks, ...(seat && { seat }) }, design);
  const topOf = (post: string) => members.ends.get(post)?.top;
  const joints = yield* stage<Map<string, Joint>>(
    sentence("stage.joints"),
    () => jointSteps(design, parts, topOf, faults, reuse),
    new Map(),
  );
  yield* stage(sentence("stage.mitres"), () => mitreTenons(joints.values()), undefined);
  const built = {
    design,
    members: parts,
    ...viewsOf(parts),
    joints,
    stance: stance.motion,
    floor: stance.floor,
    hanging: stance.hanging,
    faults,
    answers: new Map(),
    made: reuse.now,
  };
  return {
    ...built,
    ...(yield* stage(sentence("stage.values"), () => valuesOf(built), { values: new Map(), endless: [] })),
  };
}

const isSteps = <T>(made: T | Steps<T>): made is Steps<T> =>
  typeof made === "object" && made !== null && Symbol.iterator in made && "next" in made;

/** All feet cut to the floor; one that hangs as far above it as it was cut short. */
function* onTheirFeet(members: Members, { floor, hanging }: Stance): Steps<Members["posts"]> {
  const posts = yield* cutFeet(members, floor);
  for (const [name, gap] of hanging) {
    const post = members.posts.get(name);
    const alone =
      post &&
      (yield* cutFeet({ ...members, posts: new Map([[name, post]]) }, offsetBy(floor, gap))).get(name);
    if (alone) posts.set(name, alone);
  }
  return posts;
}

const noMembers = (reuse: Reuse): Members => ({
  posts: new Map(),
  rails: new Map(),
  slats: new Map(),
  sticks: new Map(),
  bows: new Map(),
  blocks: new Map(),
  faults: [],
  ends: new Map(),
  reuse,
});

const level = (): Stance => ({ motion: STILL, floor: levelAt(0), hanging: new Map() });
