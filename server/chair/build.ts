import type { Design } from "../design/design.ts";
import { STILL } from "../geometry/motion.ts";
import { levelAt, offsetBy } from "../geometry/plane.ts";
import type { Chair, Fault } from "./chair.ts";
import { buildJoints } from "./joints.ts";
import { buildMembers, cutFeet, type Members } from "./members.ts";
import { mitreTenons } from "./mitre.ts";
import { buildSeat } from "./seat.ts";
import { type Stance, stanceOf } from "./stance.ts";
import { valuesOf } from "./values.ts";

/**
 * The chair a design describes, as drawn and as it stands. Parts whose text lacks something are left out; never throws, whatever the
 * design: a stage that fails leaves out what it would have made and says so among the faults.
 */
export function buildChair(design: Design): Chair {
  const faults: Fault[] = [];
  const stage = <T>(what: string, make: () => T, nothing: T): T => {
    try {
      return make();
    } catch (error) {
      const message = `${what} could not be worked out (${error instanceof Error ? error.message : String(error)})`;
      faults.push({ is: "not-buildable", part: "", at: design.titleAt, message });
      return nothing;
    }
  };
  const members = stage("the parts", () => buildMembers(design), noMembers());
  faults.push(...members.faults);
  const stance = stage("the stance", () => stanceOf(members.posts.values(), design.trims), level());
  const trimmed = stance.motion !== STILL;
  const posts = trimmed
    ? stage("the feet", () => onTheirFeet(members, stance), members.posts)
    : members.posts;
  const { rails, slats, blocks } = members;
  const topOf = (post: string) => members.ends.get(post)?.top;
  const joints = stage(
    "the joints",
    () => buildJoints(design, { posts, rails, slats }, topOf, faults),
    new Map(),
  );
  stage("the mitres", () => mitreTenons(joints.values()), undefined);
  const seat = stage("the seat", () => buildSeat(design, rails, posts.values()), undefined);
  const built = {
    design,
    posts,
    rails,
    slats,
    blocks,
    joints,
    ...(seat ? { seat } : {}),
    stance: stance.motion,
    floor: stance.floor,
    hanging: stance.hanging,
    faults,
    answers: new Map(),
  };
  return { ...built, values: stage("the values", () => valuesOf(built), new Map()) };
}

/** All feet cut to the floor; one that hangs as far above it as it was cut short. */
function onTheirFeet(members: Members, { floor, hanging }: Stance): Members["posts"] {
  const posts = cutFeet(members, floor);
  for (const [name, gap] of hanging) {
    const post = members.posts.get(name);
    const alone =
      post && cutFeet({ ...members, posts: new Map([[name, post]]) }, offsetBy(floor, gap)).get(name);
    if (alone) posts.set(name, alone);
  }
  return posts;
}

const noMembers = (): Members => ({
  posts: new Map(),
  rails: new Map(),
  slats: new Map(),
  blocks: new Map(),
  faults: [],
  ends: new Map(),
});

const level = (): Stance => ({ motion: STILL, floor: levelAt(0), hanging: new Map() });
