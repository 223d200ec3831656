/**
 * A file as things and their facts: every post, rail, joint and value with what is said of it, and the file's own lines.
 */
import { finish } from "../../grammar/steps.ts";
import type { Tree } from "../../grammar/tree.ts";
import { gatheredSteps } from "../design/evaluate.ts";
import type { Item, Line } from "../design/merge.ts";
import { asItIs, type Called, dotted, factCalled, rawOf, spacedOnce, spelled } from "./spelled.ts";

/** One fact of a thing: what one line says of it. */
export interface Fact {
  /** As a maker names it: `rake`, `end back tenon`, `note 2026-04-02`. */
  property: string;
  /** Facts of a thing with one question answer the same: the later takes the place of the earlier. */
  question: string;
  /** As written, spaced once. */
  shown: string;
  line: Line;
  /** Labels that belong to the property, not to what is said. */
  identity: readonly string[];
}

/** A thing with a name, or the file itself, whose name is empty. */
export interface Thing {
  name: string;
  /** The word that declares it: `post`, `let`, `file`. */
  word: string;
  facts: Fact[];
  item?: Item;
}

/** What a fact says, names as `called` gives them. */
export const saysOf = ({ line, identity }: Fact, called: Called = asItIs): string =>
  `${line.statement.word?.text} ${spelled(line, called, identity)}`;

/** What a fact asks, names as `called` gives them. */
export function questionOf(fact: Fact, called: Called): string {
  const parts = fact.question.split(" ");
  return parts.map((part) => dotted(part, called)).join(" ");
}

/** The labels that tell one line of a word from another. */
const identities: Readonly<Record<string, readonly string[]>> = {
  note: ["date"],
  accept: ["rule", "on", "to"],
  require: ["subject"],
  limit: ["rule"],
  trim: ["post"],
};

/** All things of a file, the file first. */
export function thingsOf(items: readonly Item[]): Thing[] {
  const file: Thing = { name: "", word: "file", facts: [] };
  const things: Thing[] = [file];
  for (const item of items) {
    const word = item.statement.word?.text ?? "";
    const name = item.statement.match?.facts.find(({ slot }) => slot === "name");
    const { row } = item.statement;
    if (name?.name !== undefined) {
      const value = row?.opens === undefined;
      const head = value ? plainFact(item, "", ["name"]) : headFact(item, word, name.end);
      things.push({ name: name.name, word, item, facts: [head, ...factsIn(item.items, "")] });
    } else if (word === "seat") {
      things.push({ name: "seat", word, item, facts: [headFact(item, word, 0), ...factsIn(item.items, "")] });
    } else {
      file.facts.push(fileFact(item, word), ...factsIn(item.items, `${word} `));
    }
  }
  return things;
}

/** The things of a text by itself, without what it starts from or uses. */
export function ownThings(tree: Tree): Thing[] {
  const files = { resolve: () => undefined, read: () => undefined };
  return thingsOf(finish(gatheredSteps({ tree, address: "", files })).items);
}

/** What a thing is: `post pair`, `seat drop-in`. */
function headFact(item: Item, word: string, from: number): Fact {
  return {
    property: "kind",
    question: "kind",
    shown: [word, rawOf(item, from)].filter(Boolean).join(" "),
    line: item,
    identity: ["name"],
  };
}

function fileFact(item: Item, word: string): Fact {
  const identity = identities[word] ?? [];
  if (identity.length === 0) return plainFact(item, "", []);
  const { facts = [] } = item.statement.match ?? {};
  const telling = facts.filter(({ label }) => identity.includes(label));
  const names = telling.map(({ label, name, text, start, end }) => {
    const said = name ?? text ?? spacedOnce(item.source.text.slice(start, end));
    return label === "on" || label === "to" ? `${label} ${said}` : said;
  });
  if (word === "trim") names.sort();
  const property = [word, names.join(word === "trim" ? ", " : " ")].filter(Boolean).join(" ");
  const last = Math.max(0, ...telling.map(({ end }) => end));
  const text = factCalled(item.statement, "because") ?? factCalled(item.statement, "text");
  const shown = text?.text ?? rawOf(item, last);
  return { property, question: property, shown, line: item, identity };
}

function plainFact(item: Item, before: string, identity: readonly string[]): Fact {
  const { statement } = item;
  const word = statement.word?.text ?? "";
  const facet = statement.row?.facet ?? word;
  const name = identity.includes("name")
    ? statement.match?.facts.find(({ slot }) => slot === "name")
    : undefined;
  const raw = rawOf(item, name?.end ?? 0).replace(/^= /, "");
  const only = statement.match?.facts.length === 1 ? statement.match.facts[0]?.text : undefined;
  return { property: before + word, question: before + facet, shown: only ?? raw, line: item, identity };
}

function factsIn(items: readonly Item[], before: string): Fact[] {
  return items.flatMap((item) => {
    if (item.statement.row?.opens === undefined) return [plainFact(item, before, [])];
    const which = factCalled(item.statement, "which")?.name;
    const word = item.statement.word?.text ?? "";
    return factsIn(item.items, `${before}${[word, which].filter(Boolean).join(" ")} `);
  });
}
