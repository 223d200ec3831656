/**
 * The figures a text gives: every number that places or shapes the chair, with the words that name it.
 */
import type { Fact, Statement, Tree, Value } from "../../grammar/tree.ts";
import { innerValues } from "../../grammar/walk.ts";

/** A figure as it is written. */
type Literal = Extract<Value, { is: "number" | "quantity" | "slope" }>;

/** One figure of the text. */
export interface Figure {
  fact: Fact;
  /** The whole of what is written for it, which may be a sum. */
  value: Value;
  /** The first figure in it, which tells what one step of it is. */
  literal: Literal;
  /** The words that name it, such as `foot back` of `back`, or the name of a `let`. */
  what: string;
  /** The part whose block it stands in, or `seat`. */
  of?: string;
  /** The `let` it is the value of. */
  let?: string;
  /** The name it is known by to what depends on it: a part's, a let's, `seat` or `trim`. */
  thing: string;
  kind: string;
}

/** Blocks and statements whose figures place or shape the chair. */
const shaping = new Set(["post", "rail", "slat", "stick", "bow", "seat", "trim", "let", "block", "joint"]);

/** Every figure that places or shapes the chair, in the order of the text. */
export function* figuresOf(tree: Tree): Iterable<Figure> {
  for (const statement of tree.statements) {
    const kind = statement.word?.text ?? "";
    if (shaping.has(kind)) yield* within(statement, kind, nameOf(statement) ?? kind);
  }
}

/** Labels that say no more than the word of their line does. */
const plainLabels = new Set(["angle", "length", "rise", "diameter", "station", "distance", "clearance"]);

function* within(statement: Statement, kind: string, thing: string): Iterable<Figure> {
  for (const fact of statement.match?.facts ?? []) {
    const { value } = fact;
    if (!value || (kind === "let" && fact.label !== "value") || isShareOfLength(fact)) continue;
    const literal = firstLiteral(value);
    // What is only a name is told where the name is given its value.
    if (!literal) continue;
    const named =
      kind === "let"
        ? { what: thing, let: thing }
        : kind === "trim"
          ? { what: `trim ${namesIn(statement)}` }
          : { what: wordsOf(statement, fact), of: thing };
    yield { fact, value, literal, thing, kind, ...named };
  }
  for (const inner of statement.block?.statements ?? []) yield* within(inner, kind, thing);
}

/** `at 1/2`: halfway, not a length that could grow by a millimetre. */
function isShareOfLength({ label, value }: Fact): boolean {
  if (!label.startsWith("station")) return false;
  return value?.is === "number" ? value.number < 1 : value?.is === "binary" && value.op === "/";
}

function wordsOf({ word }: Statement, { label }: Fact): string {
  const first = word?.text ?? label;
  return label === first || plainLabels.has(label) ? first : `${first} ${label}`;
}

function namesIn(statement: Statement): string {
  return (statement.match?.facts ?? [])
    .flatMap(({ slot, name }) => (slot === "ref" ? (name ?? []) : []))
    .join(", ");
}

/** The name a statement gives. */
export function nameOf(statement: Statement): string | undefined {
  return statement.match?.facts.find((fact) => fact.slot === "name")?.name;
}

/** The first figure of an expression. A stack of our own: an expression may be deeper than the machine's. */
function firstLiteral(value: Value): Literal | undefined {
  const waiting = [value];
  for (let next = waiting.pop(); next; next = waiting.pop()) {
    if (next.is === "number" || next.is === "quantity" || next.is === "slope") return next;
    if (next.is !== "share") waiting.push(...[...innerValues(next)].reverse());
  }
  return undefined;
}
