/**
 * Which thing of one file is which of another: by name, and where a name is gone, by what is said of it.
 */
import type { Called } from "./spelled.ts";
import { saysOf, type Thing } from "./things.ts";

export interface Matched {
  pairs: { old: Thing; new: Thing }[];
  gone: Thing[];
  added: Thing[];
  /** Old names of things that are called otherwise now. */
  renamed: ReadonlyMap<string, string>;
}

/** Things whose facts agree to at least this share are one thing under another name. */
const ALIKE = 0.6;

/** Pairs the things of two files. Things keep their word when they are renamed: a post never becomes a rail by that. */
export function matchThings(old: readonly Thing[], now: readonly Thing[]): Matched {
  const pairs: Matched["pairs"] = [];
  let gone: Thing[] = [];
  const left = [...now];
  for (const thing of old) {
    const at = left.findIndex(({ name }) => name === thing.name);
    if (at < 0) gone.push(thing);
    else pairs.push({ old: thing, new: left.splice(at, 1)[0]! });
  }
  let added = left;
  const renamed = new Map<string, string>();
  // Values and joints first: once they are known again, what names them is more alike.
  for (const words of [["let", "joint"], undefined]) {
    for (const { one, other } of bestPairs(gone, added, words, renamed)) {
      renamed.set(one.name, other.name);
      pairs.push({ old: one, new: other });
      gone = gone.filter((thing) => thing !== one);
      added = added.filter((thing) => thing !== other);
    }
  }
  return { pairs, gone, added, renamed };
}

function bestPairs(
  gone: readonly Thing[],
  added: readonly Thing[],
  words: readonly string[] | undefined,
  renamed: ReadonlyMap<string, string>,
): { one: Thing; other: Thing }[] {
  const lost = new Set([...gone, ...added].map(({ name }) => name));
  // A name that is itself in doubt agrees with any other that is.
  const before: Called = (name) => renamed.get(name) ?? (lost.has(name) ? "?" : name);
  const after: Called = (name) => (lost.has(name) ? "?" : name);
  const scored = gone.flatMap((one, i) =>
    added.flatMap((other, j) => {
      if (one.word !== other.word || (words && !words.includes(one.word))) return [];
      const score = agreement(one, other, before, after);
      return score >= ALIKE ? [{ one, other, score, order: i + j }] : [];
    }),
  );
  scored.sort((a, b) => b.score - a.score || a.order - b.order);
  const used = new Set<Thing>();
  return scored.filter(({ one, other }) => {
    if (used.has(one) || used.has(other)) return false;
    used.add(one);
    used.add(other);
    return true;
  });
}

/** The share of facts that both say, of all that either says. */
function agreement(one: Thing, other: Thing, before: Called, after: Called): number {
  const mine = one.facts.map((fact) => `${fact.question}: ${saysOf(fact, before)}`);
  const theirs = other.facts.map((fact) => `${fact.question}: ${saysOf(fact, after)}`);
  let both = 0;
  for (const said of mine) {
    const at = theirs.indexOf(said);
    if (at < 0) continue;
    theirs.splice(at, 1);
    both++;
  }
  return both / (mine.length + theirs.length);
}
