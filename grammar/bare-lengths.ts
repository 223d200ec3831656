/**
 * Bare lengths: numbers without a unit that stand where a length does, and so take the file's unit.
 */
import type { Span } from "./problem.ts";
import type { Fact, Statement, Value } from "./tree.ts";

/** A bare length as it stands in the text. */
export type BareLength = Span & { number: number };

/** The bare lengths of one statement, its block left out. Shares of a rail (`at 1/2`) and counts are none. */
export function bareLengthsOf({ row, match }: Pick<Statement, "row" | "match">): BareLength[] {
  return (match?.facts ?? []).flatMap((fact) =>
    fact.value && takesLength(fact, row?.word) && !isShare(fact) ? [...leavesOf(fact.value)] : [],
  );
}

/** A value that is named by `let` is taken for a length wherever it is used as one. */
const takesLength = ({ slot }: Fact, word: string | undefined): boolean =>
  slot === "length" || (slot === "value" && word === "let");

/** A place along a rail as a part of its length. */
const isShare = ({ label, value }: Fact): boolean =>
  label.startsWith("station") &&
  (value?.is === "number" ? value.number < 1 : value?.is === "binary" && value.op === "/");

function* leavesOf(value: Value): Iterable<BareLength> {
  switch (value.is) {
    case "number":
      yield value;
      return;
    case "negate":
    case "group":
      yield* leavesOf(value.of);
      return;
    case "binary":
      yield* leavesOf(value.left);
      if (value.op === "+" || value.op === "-") yield* leavesOf(value.right);
      return;
    case "call":
      for (const each of value.args) yield* leavesOf(each);
  }
}
