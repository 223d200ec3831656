/**
 * Everywhere a thing is spoken of, over all the files that know it.
 */
import type { Location } from "vscode-languageserver-types";
import { family } from "./names/family.ts";
import { type Mention, mentions } from "./names/mentions.ts";
import { nameAt } from "./names/names.ts";
import { rangeOf, type View } from "./view.ts";

interface Found {
  view: View;
  mention: Mention;
}

/** Every mention of the thing at a place, here and in `others`; declarations too. Empty where no name stands. */
export function everyMention(view: View, offset: number, others: readonly View[]): Found[] {
  const asked = nameAt(view, offset);
  if (!asked) return [];
  return family(view, asked.name, others).flatMap((each) =>
    mentions(each.tree, (name) => name === asked.name).flatMap((mention) =>
      mention.name === asked.name ? [{ view: each, mention }] : [],
    ),
  );
}

/** The same as places, with or without the declaration. */
export function references(
  view: View,
  offset: number,
  others: readonly View[],
  withDeclaration: boolean,
): Location[] {
  return everyMention(view, offset, others)
    .filter(({ mention }) => withDeclaration || mention.is === "reference")
    .map(({ view: { uri, document }, mention }) => ({ uri, range: rangeOf(document, mention) }));
}
