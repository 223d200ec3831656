/**
 * What a maker chose otherwise: facts by part and property, old and new.
 */
import type { Line } from "../design/merge.ts";
import { type Matched, matchThings } from "./renames.ts";
import { asItIs, type Called } from "./spelled.ts";
import { type Fact, questionOf, saysOf, type Thing } from "./things.ts";

/** One fact that is not the same on both sides. */
export interface Choice {
  /** The thing's name now, or its old one when it is gone; empty for the file itself. */
  part: string;
  property: string;
  /** As written; null where there is none. */
  old: string | null;
  new: string | null;
  /** What the part was called before. */
  was?: string;
  /** Where it stands, for links. */
  oldLine?: Line;
  newLine?: Line;
}

interface Chosen {
  choices: Choice[];
  renamed: ReadonlyMap<string, string>;
}

/** Every fact that differs between two files, in the order of the new one; what is gone stands last. */
export function chosenBetween(old: readonly Thing[], now: readonly Thing[]): Chosen {
  const matched = matchThings(old, now);
  const { renamed } = matched;
  const called: Called = renamed.size === 0 ? asItIs : (name) => renamed.get(name) ?? name;
  const before = new Map(matched.pairs.map((pair) => [pair.new, pair.old]));
  const choices = now.flatMap((thing): Choice[] => {
    const was = before.get(thing);
    return was === undefined
      ? thing.facts.map((fact) => only(thing, fact, "new"))
      : within(was, thing, called);
  });
  return {
    choices: [...choices, ...goneOf(matched)],
    renamed,
  };
}

const goneOf = ({ gone }: Matched): Choice[] =>
  gone.flatMap((thing) => thing.facts.map((fact) => only(thing, fact, "old")));

function only({ name }: Thing, fact: Fact, side: "old" | "new"): Choice {
  const base = { part: name, property: fact.property };
  return side === "old"
    ? { ...base, old: fact.shown, new: null, oldLine: fact.line }
    : { ...base, old: null, new: fact.shown, newLine: fact.line };
}

function within(old: Thing, now: Thing, called: Called): Choice[] {
  const was = old.name === now.name ? {} : { was: old.name };
  const choices: Choice[] = [];
  if (old.name !== now.name) {
    choices.push({
      part: now.name,
      property: "name",
      old: old.name,
      new: now.name,
      ...was,
      ...(old.item && { oldLine: old.item }),
      ...(now.item && { newLine: now.item }),
    });
  }
  const { pairs, added, gone } = pairFacts(old.facts, now.facts, called);
  for (const fact of now.facts) {
    const before = pairs.get(fact);
    if (before !== undefined) choices.push({ ...changed(now.name, before, fact), ...was });
    else if (added.has(fact)) choices.push({ ...only(now, fact, "new"), ...was });
  }
  for (const fact of gone) choices.push({ ...only(now, fact, "old"), ...was });
  return choices;
}

/** Both sides of one fact; where another word answers the question now, the words are shown too. */
function changed(part: string, old: Fact, now: Fact): Choice {
  const words = old.property !== now.property;
  const wordOf = (fact: Fact) => fact.line.statement.word?.text ?? "";
  const shown = (fact: Fact) => (words ? `${wordOf(fact)} ${fact.shown}`.trim() : fact.shown);
  // The same words in another unit are another size.
  const units = shown(old) === shown(now) && old.line.source.unit !== now.line.source.unit;
  const inUnit = (fact: Fact) => (units ? `${shown(fact)} (in ${fact.line.source.unit})` : shown(fact));
  return {
    part,
    property: now.property,
    old: inUnit(old),
    new: inUnit(now),
    oldLine: old.line,
    newLine: now.line,
  };
}

interface PairedFacts {
  /** Facts that differ, by the new one. */
  pairs: Map<Fact, Fact>;
  added: Set<Fact>;
  gone: Fact[];
}

/** Pairs the facts of a thing: those that say the same are done with; of the rest, those that answer one question belong together. */
function pairFacts(old: readonly Fact[], now: readonly Fact[], called: Called): PairedFacts {
  const [before, after] = called === asItIs ? withoutTheSame(old, now) : [old, now];
  const left = before.map((fact) => ({
    fact,
    question: questionOf(fact, called),
    says: saysOf(fact, called),
  }));
  const open = after.filter((fact) => {
    const says = saysOf(fact);
    const at = left.findIndex((each) => each.question === fact.question && each.says === says);
    if (at >= 0) left.splice(at, 1);
    return at < 0;
  });
  const pairs = new Map<Fact, Fact>();
  const added = new Set<Fact>();
  for (const fact of open) {
    const at = left.findIndex((each) => each.question === fact.question);
    if (at < 0) added.add(fact);
    else pairs.set(fact, left.splice(at, 1)[0]!.fact);
  }
  return { pairs, added, gone: left.map(({ fact }) => fact) };
}

/** What is left of both when facts written alike, in one unit, are taken out: most are, and reading them is what costs. */
function withoutTheSame(old: readonly Fact[], now: readonly Fact[]): [Fact[], Fact[]] {
  const written = ({ question, property, shown, line }: Fact) =>
    [question, property, shown, line.source.unit].join("\n");
  const left = new Map<string, Fact[]>();
  for (const fact of old) {
    const key = written(fact);
    const there = left.get(key);
    if (there) there.push(fact);
    else left.set(key, [fact]);
  }
  const open = now.filter((fact) => left.get(written(fact))?.shift() === undefined);
  const kept = new Set([...left.values()].flat());
  return [old.filter((fact) => kept.has(fact)), open];
}
