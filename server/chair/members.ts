import type { Design, PostDesign } from "../design/design.ts";
import type { Plane, Vec3 } from "../geometry/solid.ts";
import { add, scale } from "../geometry/vec.ts";
import type { Block, Fault, Post, Rail, Side } from "./chair.ts";
import type { Built } from "./course.ts";
import { buildPost, type PostEnds } from "./post.ts";
import { buildRail, railMembers } from "./rail.ts";

/** The sticks of a chair as drawn, before joints, seat and trim. Keys are full names, in the order of the text. */
export interface Members {
  posts: Map<string, Post>;
  rails: Map<string, Rail>;
  slats: Map<string, Rail>;
  blocks: Map<string, Block>;
  faults: Fault[];
  /** How each post's ends were cut, for building it again on its trimmed feet. */
  ends: Map<string, PostEnds>;
}

/** Builds every post, rail, slat and corner block of a design that its text gives enough for. Never throws. */
export function buildMembers(design: Design): Members {
  const members: Members = {
    posts: new Map(),
    rails: new Map(),
    slats: new Map(),
    blocks: new Map(),
    faults: [],
    ends: new Map(),
  };
  for (const post of design.posts.values()) {
    for (const side of sidesOf(post)) {
      const built = buildPost(post, side, {}, members.faults);
      if (built) members.posts.set(built.name, built);
    }
  }
  const built: Built = (name) => members.posts.get(name) ?? members.rails.get(name);
  const middle = middleOf(members.posts);
  for (const rail of design.rails.values()) {
    for (const member of railMembers(rail)) {
      const made = buildRail(design, member, built, middle, members.faults);
      if (made) members.rails.set(made.name, made);
    }
  }
  return members;
}

/** The middle of the chair in plan: the mean of the feet. */
export function middleOf(posts: Map<string, Post>): Vec3 {
  const feet = [...posts.values()].filter((post) => !post.design.standsOn).map((post) => post.foot);
  if (feet.length === 0) return [0, 0, 0];
  return scale(feet.reduce(add), 1 / feet.length);
}

/** The posts built again with their feet cut to the floor (looking up, in drawn places); those that stand on a rail stay. */
export function cutFeet(members: Members, floor: Plane): Map<string, Post> {
  const cut = new Map<string, Post>();
  for (const [name, post] of members.posts) {
    const ends = members.ends.get(name) ?? {};
    cut.set(name, (post.design.standsOn ? undefined : buildPost(post.design, post.side, { ...ends, foot: floor })) ?? post);
  }
  return cut;
}

/** The sides a part stands on. */
export const sidesOf = (part: Pick<PostDesign, "pair">): Side[] => (part.pair ? ["left", "right"] : ["middle"]);
