import type { Shape } from "./row.ts";
import type { Kind } from "./tree.ts";

/** How the messages name things: shapes, kinds of block, lists. */

/** `a`, `a or b`, `a, b or c`. */
export function orList(items: readonly string[], last = "or"): string {
  if (items.length < 2) return items[0] ?? "";
  return `${items.slice(0, -1).join(", ")} ${last} ${items.at(-1)}`;
}

const refs: Record<string, string> = {
  post: "the name of a post",
  rail: "the name of a rail",
  slat: "the name of a row of slats",
  joint: "the name of a joint",
  part: "the name of a part",
  let: "a name given by `let`",
  angle: "the name of an angle",
  board: "the name of a board",
  rule: "the name of a rule",
  species: "a species of wood",
  target: "the name of a part",
  any: "a name",
};

const slots: Record<string, string> = {
  length: "a length",
  angle: "an angle",
  count: "a whole number",
  value: "a value",
  name: "a name",
  word: "a word",
  text: 'text in quotes `"…"`',
  date: "a date such as `2026-03-14`",
};

/** What could stand at a place, in words, each said once. */
export function describe(shapes: readonly Shape[]): string[] {
  const said = new Set<string>();
  for (const shape of shapes) {
    if (shape.is === "word") said.add(`\`${shape.word}\``);
    else if (shape.is === "slot") {
      if (shape.slot === "word" && shape.words) for (const word of shape.words) said.add(`\`${word}\``);
      else if (shape.slot === "ref") {
        said.add(refs[shape.ref ?? "any"] ?? "a name");
        for (const word of shape.words ?? []) said.add(`\`${word}\``);
      } else said.add(slots[shape.slot] ?? shape.label);
    }
  }
  return [...said];
}

const kinds: Record<Kind, string> = {
  file: "the outermost level",
  post: "a post",
  rail: "a rail",
  slat: "a row of slats",
  block: "a corner block",
  joint: "a joint",
  end: "an end",
  seat: "the seat",
  "solid-seat": "a solid seat",
  angle: "an angle",
  sitter: "the sitter",
  board: "a board",
  yard: "a yard",
  waste: "the waste",
  unknown: "this block",
};

/** A kind of block with its article: `a post`. */
export function nameOfKind(kind: Kind): string {
  return kinds[kind];
}

/** Where a statement stands: `in a post`, `at the outermost level`. */
export function placeOf(kind: Kind): string {
  return kind === "file" ? `at ${kinds.file}` : `in ${kinds[kind]}`;
}

/** A sentence with a large first letter. */
export const capital = (sentence: string): string => sentence.charAt(0).toUpperCase() + sentence.slice(1);
