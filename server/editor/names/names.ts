/**
 * The names a file knows, its own and those brought in by `use` and `like`, and where each stands.
 */

import type { View } from "../view.ts";
import { type Mention, mentionAt, mentions } from "./mentions.ts";

/** Every mention in the file. */
export function mentionsIn(view: View): Mention[] {
  const { names } = view.study.design;
  return mentions(view.tree, (name) => names.has(name));
}

/** The mention at a place, if a name stands there. */
export function nameAt(view: View, offset: number): Mention | undefined {
  return mentionAt(mentionsIn(view), offset);
}
