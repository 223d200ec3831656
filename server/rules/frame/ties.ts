/**
 * Which members hold which, for the rules about an open frame.
 */
import type { Chair, Post, Rail } from "../../chair/chair.ts";
import type { Vec3 } from "../../geometry/solid.ts";

/** A member that holds a post, and which way it runs seen from above. */
export interface Tie {
  rail: Rail;
  run: Vec3;
}

/** Every rail that enters a post, lies over it, or has its tenon, by the post's full name. */
export function tiesOf(chair: Chair): Map<string, Tie[]> {
  const ties = new Map<string, Tie[]>();
  const add = (post: string | undefined, rail: Rail) => {
    if (post === undefined || !chair.posts.has(post)) return;
    const list = ties.get(post) ?? [];
    if (!list.some((tie) => tie.rail === rail)) list.push({ rail, run: rail.along });
    ties.set(post, list);
  };
  for (const rail of chair.rails.values()) {
    for (const post of postsOf(chair, rail)) add(post, rail);
  }
  for (const joint of chair.joints.values()) {
    const rail = chair.rails.get(joint.entered.name);
    if (rail) add(joint.part, rail);
  }
  return ties;
}

/** The posts that a rail enters or lies over, by its two ends. */
export function postsOf(chair: Chair, rail: Rail): [string | undefined, string | undefined] {
  return rail.ends.map((end, which) => {
    if (end.entered) return end.entered.kind === "post" ? end.entered.name : undefined;
    return end.over ? postUnder(chair, rail, which as 0 | 1)?.name : undefined;
  }) as [string | undefined, string | undefined];
}

/** The post whose top is nearest to where a rail lies over one. */
function postUnder(chair: Chair, rail: Rail, which: 0 | 1): Post | undefined {
  const end = which === 0 ? rail.start : rail.end;
  const name = rail.ends[which].name;
  const course = rail.design.is === "rail" ? rail.design.course?.value : undefined;
  const stem = course?.is === "over" || course?.is === "across" ? course.of.name : name;
  let best: Post | undefined;
  for (const post of chair.posts.values()) {
    if (post.design.name !== stem) continue;
    if (!best || apart(post, end) < apart(best, end)) best = post;
  }
  return best;
}

const apart = (post: Post, at: Vec3): number => Math.hypot(post.top[0] - at[0], post.top[1] - at[1]);
