/**
 * Every place where a name stands: where it is given, and where it is spoken of.
 */
import type { Span } from "../../../grammar/problem.ts";
import type { Fact, Statement, Tree } from "../../../grammar/tree.ts";
import { everyStatement } from "../../../grammar/walk.ts";
import { everyValue, refSlot, valuesOf } from "./place.ts";

export interface Mention extends Span {
  name: string;
  is: "declaration" | "reference";
  statement: Statement;
}

/** Reference slots that name no thing of the chair. */
const elsewhere = new Set(["rule", "species"]);

/**
 * Every mention in one file, in the order of the text. `known` says which names are declared, here or in files brought in:
 * only such names are spoken of in expressions, where the same word may be a worked-out value (`seat.slope`).
 */
export function mentions(tree: Tree, known: (name: string) => boolean): Mention[] {
  const found: Mention[] = [];
  for (const statement of everyStatement(tree.statements)) {
    for (const fact of statement.match?.facts ?? []) found.push(...ofFact(statement, fact, known));
    for (const value of valuesOf(statement)) {
      for (const inside of everyValue(value)) {
        if (inside.is === "name") found.push(...ofName(statement, inside.segments, known));
      }
    }
  }
  return withoutOverlaps(found);
}

/** The mention at a place; at the seam of two, the one that begins there. */
export function mentionAt(all: readonly Mention[], offset: number): Mention | undefined {
  return all.find((m) => m.start <= offset && offset < m.end) ?? all.find((m) => m.end === offset);
}

/** The names a file itself declares, with their headers; the first of a name given twice. */
export function declarations(tree: Tree): Map<string, Mention> {
  const names = new Map<string, Mention>();
  for (const statement of everyStatement(tree.statements)) {
    const fact = statement.match?.facts.find(({ slot, name }) => slot === "name" && name);
    if (fact?.name && !names.has(fact.name)) {
      names.set(fact.name, {
        name: fact.name,
        is: "declaration",
        statement,
        start: fact.start,
        end: fact.end,
      });
    }
  }
  return names;
}

function ofFact(statement: Statement, fact: Fact, known: (name: string) => boolean): Mention[] {
  if (!fact.name) return [];
  if (fact.slot === "name")
    return [{ name: fact.name, is: "declaration", statement, start: fact.start, end: fact.end }];
  if (fact.slot !== "ref" || !statement.row) return [];
  const slot = refSlot(statement.row, fact.label);
  if (!slot || elsewhere.has(slot.ref) || slot.words.includes(fact.name)) return [];
  return ofName(statement, segmentsOf(fact), known, true);
}

/** A dotted name: its first segment is the thing; a later one may be the post or rail that an end enters. */
function ofName(
  statement: Statement,
  segments: readonly { text: string; start: number; end: number }[],
  known: (name: string) => boolean,
  certain = false,
): Mention[] {
  return segments.flatMap(({ text, start, end }, at) => {
    if (at === 0 ? !certain && !known(text) : !known(text) || sides.has(text)) return [];
    return [{ name: text, is: "reference" as const, statement, start, end }];
  });
}

const sides = new Set(["left", "right"]);

function segmentsOf(fact: Fact): { text: string; start: number; end: number }[] {
  let start = fact.start;
  return (fact.name ?? "").split(".").map((text) => {
    const segment = { text, start, end: start + text.length };
    start = segment.end + 1;
    return segment;
  });
}

/** In the order of the text, each place once. */
function withoutOverlaps(found: Mention[]): Mention[] {
  found.sort((a, b) => a.start - b.start || a.end - b.end);
  return found.filter((mention, at) => mention.start !== found[at - 1]?.start);
}
