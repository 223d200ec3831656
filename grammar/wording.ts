import type { Kind } from "./kind.ts";
import type { Shape } from "./row.ts";
import { english, type SentenceKey, sentence } from "./sentences/sentence.ts";

/** How the messages name things: shapes, kinds of block, lists. */

/** `a`, `a or b`, `a, b or c`. */
export const orList = (items: readonly string[]): string => list(items, "list.or");

/** `a`, `a and b`, `a, b and c`. */
export const andList = (items: readonly string[]): string => list(items, "list.and");

function list(items: readonly string[], key: "list.or" | "list.and"): string {
  if (items.length < 2) return items[0] ?? "";
  return sentence(key, { items: items.slice(0, -1).join(", "), last: items.at(-1) ?? "" });
}

/** The sentence of that key, or nothing when the catalogue has none. */
const known = (key: string): string | undefined =>
  key in english ? sentence(key as SentenceKey) : undefined;

/** What could stand at a place, in words, each said once. */
export function describe(shapes: readonly Shape[]): string[] {
  const said = new Set<string>();
  for (const shape of shapes) {
    if (shape.is === "word") said.add(`\`${shape.word}\``);
    else if (shape.is === "slot") {
      if (shape.slot === "word" && shape.words) for (const word of shape.words) said.add(`\`${word}\``);
      else if (shape.slot === "ref") {
        said.add(known(`ref.${shape.ref ?? "any"}`) ?? sentence("ref.any"));
        for (const word of shape.words ?? []) said.add(`\`${word}\``);
      } else said.add(known(`slot.${shape.slot}`) ?? shape.label);
    }
  }
  return [...said];
}

/** A kind of block with its article: `a post`. */
export function nameOfKind(kind: Kind): string {
  return sentence(`kind.${kind}`);
}

/** Where a statement stands: `in a post`, `at the outermost level`. */
export function placeOf(kind: Kind): string {
  return kind === "file" ? sentence("place.at-outermost") : sentence("place.in", { kind: nameOfKind(kind) });
}

/** A sentence with a large first letter. */
export const capital = (sentence: string): string => sentence.charAt(0).toUpperCase() + sentence.slice(1);
