/**
 * Finding the things of a chair by the names they have in the text.
 */

import type { Chair, Joint, Post, Rail } from "../../chair/chair.ts";
import { railsAndSlats } from "../../chair/member.ts";
import { isRight, leftName } from "../../design/identity.ts";

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
export function postsOf(chair: Chair, name: string): readonly Post[] {
  return indexOf(chair).posts.get(name) ?? [];
}

/** The rails or slats of a name: one, both of a pair, or all that repeat. */
export function railsOf(chair: Chair, name: string): readonly Rail[] {
  return indexOf(chair).rails.get(name) ?? [];
}

/** The joints cut by this name, right-hand twins left out where the left one is there. */
export function jointsCalled(chair: Chair, name: string): Joint[] {
  return withoutTwins(indexOf(chair).joints.get(name) ?? []);
}

/** The joints cut in or on the part of this full name. */
export function jointsAt(chair: Chair, part: string): readonly Joint[] {
  return indexOf(chair).jointsAt.get(part) ?? [];
}

interface Index {
  posts: Map<string, Post[]>;
  rails: Map<string, Rail[]>;
  joints: Map<string, Joint[]>;
  jointsAt: Map<string, Joint[]>;
}

const indexes = new WeakMap<Chair, Index>();

/** The chair's things by the names they are asked for, made once for each chair. */
function indexOf(chair: Chair): Index {
  const known = indexes.get(chair);
  if (known) return known;
  const joints = [...chair.joints.values()];
  const index: Index = {
    posts: grouped(chair.posts.values(), ({ design }) => [design.name]),
    rails: grouped(railsAndSlats(chair), ({ design }) => [design.name]),
    joints: grouped(joints, ({ design }) => (design === undefined ? [] : [design])),
    jointsAt: grouped(joints, ({ part, entered }) => [part, entered.name]),
  };
  indexes.set(chair, index);
  return index;
}

function grouped<T>(things: Iterable<T>, keysOf: (thing: T) => string[]): Map<string, T[]> {
  const groups = new Map<string, T[]>();
  for (const thing of things) {
    for (const key of keysOf(thing)) {
      const group = groups.get(key);
      if (group) group.push(thing);
      else groups.set(key, [thing]);
    }
  }
  return groups;
}

/** Left out of a list: the right one of each pair. */
export function withoutTwins<T extends { name: string }>(things: readonly T[]): T[] {
  const names = new Set(things.map(({ name }) => name));
  return things.filter(({ name }) => !isRight(name) || !names.has(leftName(name)));
}
