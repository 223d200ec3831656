/**
 * The files that mean the same thing by a name: joined by `use` and `like`, each knowing it. Read off the files' outlines, so that no
 * chair is worked out for it.
 */
import type { View } from "../view.ts";

/** The views of this and `others` that share the thing of that name, this one first. */
export function family(view: View, name: string, others: readonly View[]): View[] {
  const known = knowledgeOf(name, [view, ...others]);
  const joined = new Set([view]);
  const waiting = [view];
  for (let one = waiting.pop(); one !== undefined; one = waiting.pop()) {
    for (const next of known.beside(one)) {
      if (joined.has(next)) continue;
      joined.add(next);
      waiting.push(next);
    }
  }
  return [...joined];
}

/** What files have from each other under one name. */
export interface Knowledge {
  /** The word that the thing is declared with, where the file knows it. */
  word(view: View): string | undefined;
  /** The files that a file shares the thing with, on either side. */
  beside(view: View): readonly View[];
}

/** What these files know under one name. */
export function knowledgeOf(name: string, views: readonly View[]): Knowledge {
  const byAddress = new Map(views.map((view) => [view.uri, view]));
  const given = new Map<View, string | undefined>();
  const sides = new Map<View, View[]>();

  /** What a file gives on, under this name. */
  function word(view: View): string | undefined {
    if (given.has(view)) return given.get(view);
    // Files that start from each other give each other nothing.
    given.set(view, undefined);
    const { declared, without } = view.outline;
    const own = declared.get(name)?.word;
    const found = own ?? (without.has(name) ? undefined : brought(view));
    given.set(view, found);
    return found;
  }

  function brought(view: View): string | undefined {
    const [first] = sharing(view);
    return first?.word;
  }

  /** The files that a file has the thing from. */
  function* sharing(view: View): Generator<{ to: View; word: string }> {
    for (const { word: link, path } of view.outline.links) {
      const address = view.resolve(path);
      const to = address === undefined ? undefined : byAddress.get(address);
      const kind = to && word(to);
      if (to && kind && (link === "like" || kind === "joint" || kind === "let")) yield { to, word: kind };
    }
  }

  const join = (one: View, other: View) => sides.set(one, [...(sides.get(one) ?? []), other]);
  for (const view of byAddress.values())
    for (const { to } of sharing(view)) {
      join(view, to);
      join(to, view);
    }
  return { word, beside: (view) => sides.get(view) ?? [] };
}
