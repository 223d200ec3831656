/**
 * Statements of several files put together: what a file says replaces or adds to what the files it starts from say.
 */
import type { Span } from "../../grammar/problem.ts";
import type { Fact, Statement } from "../../grammar/tree.ts";
import type { LengthUnit } from "./design.ts";

/** Gives the text of other files. */
export interface OtherTexts {
  /** The address of a path written in the file at `from`; nothing when a file must not name such a place. */
  resolve(from: string, path: string): string | undefined;
  read(address: string): string | undefined;
}

/** The file a line stands in. */
export interface Source {
  /** Its address, when it is not the file at hand. */
  file?: string;
  text: string;
  unit: LengthUnit;
  /** Millimetres a bare length stands for. */
  bare: number;
  /** Where the file at hand names the file that led here. */
  via?: Span;
}

export interface Line {
  statement: Statement;
  source: Source;
}

/** A statement with what stands in its block, after merging. */
export interface Item extends Line {
  /** What it answers among its neighbours: two with one key answer the same question. */
  key: string;
  /** The header of the same name in the file that this one starts from. */
  earlier?: Line;
  items: Item[];
  /** Posts that a `trim` of the other file no longer speaks for. */
  dropped?: ReadonlySet<string>;
}

/** Notes and accepts belong to the file they stand in; so do the boards to hand and how many chairs are made of them. */
const ownOnly = new Set(["note", "accept", "make", "board", "match"]);

/** What a chair takes over from the file it starts from; which board a part is sawn from does not belong to the design. */
export const inherit = (items: readonly Item[]): Item[] =>
  items
    .filter((item) => !ownOnly.has(item.statement.word?.text ?? ""))
    .map((item) => ({ ...item, items: item.items.filter((line) => line.statement.word?.text !== "sawn") }));

/** What a library file lends. */
export const lent = (item: Item): boolean =>
  ["joint", "let", "limit", "board", "yard", "waste", "load", "climate"].includes(
    item.statement.word?.text ?? "",
  );

/** A file's statements that have a meaning, with the file they stand in. */
export function itemsOf(statements: Statement[], source: Source, depth: number): Item[] {
  if (depth > 8) return [];
  return statements
    .filter((statement) => statement.row !== undefined)
    .map((statement) => ({
      statement,
      source,
      key: keyOf(statement),
      items: itemsOf(statement.block?.statements ?? [], source, depth + 1),
    }));
}

const named = new Set([
  "joint",
  "post",
  "rail",
  "slat",
  "stick",
  "bow",
  "block",
  "angle",
  "board",
  "yard",
  "let",
  "load",
]);

function keyOf(statement: Statement): string {
  const word = statement.word?.text ?? "";
  const facet = statement.row?.facet ?? word;
  if (statement.within !== "file")
    return word === "end" ? `end ${labelled(statement, "which")?.name ?? statement.start}` : facet;
  if (named.has(word)) return `name ${labelled(statement, "name")?.name ?? statement.start}`;
  if (word === "require") return `require ${subjectText(statement) ?? statement.start}`;
  if (word === "limit") return `limit ${labelled(statement, "rule")?.name ?? statement.start}`;
  if (statement.row?.many) return `${word} ${statement.start}`;
  return facet;
}

/** The dotted name on the left of a `require`, when it is a name alone. */
export function subjectText(statement: Statement): string | undefined {
  const value = labelled(statement, "subject")?.value;
  return value?.is === "name" ? value.name : undefined;
}

export function labelled(statement: Statement, label: string): Fact | undefined {
  return statement.match?.facts.find((fact) => fact.label === label);
}

/** What `own` says replaces what `base` says of the same; blocks are merged property by property. */
export function merge(base: Item[], own: Item[]): Item[] {
  if (base.length === 0) return own;
  const replaced = new Map<string, Item>();
  const trimmed = new Set(own.filter((item) => item.statement.word?.text === "trim").flatMap(postsOf));
  for (const item of own) if (!replaced.has(item.key)) replaced.set(item.key, item);
  const merged: Item[] = [];
  const used = new Set<Item>();
  for (const item of base) {
    const mine = replaced.get(item.key);
    if (mine === undefined) {
      merged.push(
        item.statement.word?.text === "trim" && trimmed.size > 0 ? { ...item, dropped: trimmed } : item,
      );
    } else if (
      mine.statement.row?.opens !== undefined &&
      mine.statement.word?.text === item.statement.word?.text
    ) {
      if (!used.has(mine)) merged.push({ ...mine, earlier: item, items: merge(item.items, mine.items) });
      used.add(mine);
    }
  }
  return [...merged, ...own.filter((item) => !used.has(item))];
}

function postsOf(item: Item): string[] {
  return (item.statement.match?.facts ?? []).flatMap((fact) =>
    fact.label === "post" && fact.name ? [fact.name] : [],
  );
}

/** What is left of `base` after the `without` lines of `own`; `missed` hears of each name that `base` does not have. */
export function withouts(own: Item[], base: Item[], missed: (fact: Fact, name: string) => void): Item[] {
  const facts = own
    .filter((item) => item.statement.word?.text === "without")
    .flatMap((item) => item.statement.match?.facts ?? [])
    .filter((fact) => fact.label === "name" && fact.name !== undefined);
  if (facts.length === 0) return base;
  const away = new Set(facts.map((fact) => fact.name as string));
  const there = new Set<string>();
  const kept = base.filter((item) => {
    const called = calledIn(item).filter((name) => away.has(name));
    for (const name of called) there.add(name);
    return called.length === 0;
  });
  for (const fact of facts) if (!there.has(fact.name as string)) missed(fact, fact.name as string);
  return kept;
}

/** The names by which a `without` line can speak of an item. */
function calledIn({ key, statement }: Item): string[] {
  const word = statement.word?.text;
  const named = /^(?:name|require|limit) (.*)$/s.exec(key)?.[1];
  return [...(named === undefined ? [] : [named]), ...(word === "seat" || word === "trim" ? [word] : [])];
}
