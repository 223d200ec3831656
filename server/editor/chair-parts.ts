/**
 * Finding the things of a chair by the names they have in the text.
 */
import type { Chair, Joint, Post, Rail } from "../chair/chair.ts";

export interface NameOfPart {
  name: string;
  side?: string | undefined;
}

/** `front.left` in its pieces. */
export function nameOfPart(dotted: string): NameOfPart {
  const [name = "", side] = dotted.split(".");
  return { name, side };
}

/** The posts of a name: one, or both of a pair, the left first. */
export function postsOf(chair: Chair, name: string): Post[] {
  return [...chair.posts.values()].filter((post) => post.design.name === name);
}

/** The rails or slats of a name: one, both of a pair, or all that repeat. */
export function railsOf(chair: Chair, name: string): Rail[] {
  return [...chair.rails.values(), ...chair.slats.values()].filter((rail) => rail.design.name === name);
}

/** The joints of these parts' ends, right-hand twins left out where the left one is there. */
export function jointsCalled(chair: Chair, name: string): Joint[] {
  return withoutTwins([...chair.joints.values()].filter((joint) => joint.design === name));
}

/** The joints cut in or on a part of this name. */
export function jointsAt(chair: Chair, part: string): Joint[] {
  return [...chair.joints.values()].filter((joint) => joint.part === part || joint.entered.name === part);
}

/** Left out of a list: the right one of each pair. */
export function withoutTwins<T extends { name: string }>(things: T[]): T[] {
  const names = new Set(things.map(({ name }) => name));
  return things.filter(
    ({ name }) => !/\.right\b/.test(name) || !names.has(name.replace(/\.right\b/g, ".left")),
  );
}
