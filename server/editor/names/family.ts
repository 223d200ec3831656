/**
 * The files that mean the same thing by a name: joined by `use` and `like`, each knowing it.
 */
import { fileLinks } from "../links.ts";
import type { View } from "../view.ts";

/** The views of this and `others` that share the thing of that name, this one first. */
export function family(view: View, name: string, others: readonly View[]): View[] {
  const knowing = [view, ...others.filter(({ uri }) => uri !== view.uri)].filter(
    (each) => each === view || knows(each, name),
  );
  const joined = new Set([view]);
  for (let grew = true; grew; ) {
    grew = false;
    for (const each of knowing) {
      if (joined.has(each) || ![...joined].some((one) => shares(one, each, name) || shares(each, one, name)))
        continue;
      joined.add(each);
      grew = true;
    }
  }
  return [...joined];
}

/** A file that neither says the name nor names other files cannot know it: it need not be worked out. */
function knows(view: View, name: string): boolean {
  const may = view.document.getText().includes(name) || fileLinks(view).length > 0;
  return may && view.study.design.names.has(name);
}

/** Whether one file has the name's thing from the other: all by `like`, joints and lets by `use`. */
function shares(user: View, home: View, name: string): boolean {
  const kind = home.study.design.names.get(name)?.is;
  return fileLinks(user).some(
    ({ address, word }) => address === home.uri && (word === "like" || kind === "joint" || kind === "let"),
  );
}
