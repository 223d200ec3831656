/**
 * What an expression comes to.
 */

import { nearest } from "../../grammar/nearest.ts";
import type { Fix, Span } from "../../grammar/problem.ts";
import { sentence } from "../../grammar/sentences/sentence.ts";
import type { Value } from "../../grammar/tree.ts";
import { capital } from "../../grammar/wording.ts";
import { type Amount, add, alike, called, divide, isMismatch, multiply, type Outcome } from "./quantity.ts";
import { units } from "./units.ts";

/** What an expression can see, and where its problems go. */
export interface Scope {
  /** Millimetres that a bare length stands for in the file where the expression stands. */
  bare: number;
  /** What a name comes to; says itself what is wrong with it. */
  named(value: Value & { is: "name" }, depth: number): Amount | undefined;
  report(
    code: "wrong-unit" | "unreadable-number" | "unknown-name",
    at: Span,
    message: string,
    fixes?: Fix[],
  ): void;
}

/** How many values and brackets may depend on each other in a row: nobody needs more, and the stack has an end. */
const deepest = 200;

/** The amount, or nothing when it cannot be worked out; what is wrong has then been said, here or where the text was read. */
export function workOut(value: Value, scope: Scope, depth = 0): Amount | undefined {
  if (depth > deepest) {
    scope.report("unreadable-number", value, sentence("unreadable-number.deep", { deepest }));
    return undefined;
  }
  switch (value.is) {
    case "number":
      return finite({ number: value.number, dimension: "number", bare: scope.bare }, value, scope);
    case "quantity": {
      const unit = units[value.unit];
      if (unit === undefined) return undefined;
      return finite({ number: value.number * unit.size, dimension: unit.dimension }, value, scope);
    }
    case "slope":
      return finite({ number: Math.atan2(value.rise, value.run), dimension: "angle" }, value, scope);
    case "name":
      return scope.named(value, depth + 1);
    case "group":
      return workOut(value.of, scope, depth + 1);
    case "negate": {
      const of = workOut(value.of, scope, depth + 1);
      return of && { ...of, number: -of.number };
    }
    case "binary":
      return chain(value, scope, depth);
    case "call":
      return call(value, scope, depth);
    case "share":
      scope.report("wrong-unit", value, sentence("wrong-unit.share"));
      return undefined;
    case "unreadable":
      return undefined;
  }
}

/** A row of signs such as `a - b + c`, which may be as long as a line. */
function chain(value: Value & { is: "binary" }, scope: Scope, depth: number): Amount | undefined {
  const links: (Value & { is: "binary" })[] = [];
  let first: Value = value;
  while (first.is === "binary") {
    links.push(first);
    first = first.left;
  }
  let left = workOut(first, scope, depth + 1);
  for (let at = links.length - 1; at >= 0; at--) {
    const link = links[at];
    if (link === undefined) continue;
    const right = workOut(link.right, scope, depth + 1);
    left = left && right && settled(binary(link.op, left, right), link, scope);
  }
  return left;
}

function binary(op: "+" | "-" | "*" | "/", left: Amount, right: Amount): Outcome {
  if (op === "*") return multiply(left, right);
  if (op === "/") return divide(left, right);
  return add(left, right, op === "+" ? 1 : -1);
}

function settled(outcome: Outcome, at: Span, scope: Scope): Amount | undefined {
  if (!isMismatch(outcome)) return outcome;
  scope.report(
    outcome.unreadable ? "unreadable-number" : "wrong-unit",
    at,
    sentence("mismatch", { Mismatch: outcome.mismatch }),
  );
  return undefined;
}

function finite(amount: Amount, at: Span, scope: Scope): Amount | undefined {
  if (Number.isFinite(amount.number)) return amount;
  scope.report("unreadable-number", at, sentence("unreadable-number.large"));
  return undefined;
}

type Call = Value & { is: "call" };

/** The functions, each with how many values it takes. */
const functions: Record<
  string,
  { least: number; most: number; of(args: Amount[], call: Call, scope: Scope): Outcome | undefined }
> = {
  min: { least: 1, most: 99, of: (args) => extreme(args, Math.min) },
  max: { least: 1, most: 99, of: (args) => extreme(args, Math.max) },
  abs: { least: 1, most: 1, of: ([a]) => a && { ...a, number: Math.abs(a.number) } },
  round: { least: 1, most: 2, of: rounded },
  sin: { least: 1, most: 1, of: ([a]) => ofAngle(a, Math.sin) },
  cos: { least: 1, most: 1, of: ([a]) => ofAngle(a, Math.cos) },
  tan: { least: 1, most: 1, of: ([a]) => ofAngle(a, Math.tan) },
  atan: {
    least: 1,
    most: 1,
    of: ([a]) =>
      a &&
      (a.dimension === "number"
        ? { number: Math.atan(a.number), dimension: "angle" }
        : { mismatch: sentence("mismatch.atan", { kind: called(a.dimension) }) }),
  },
};

export const functionNames: readonly string[] = Object.keys(functions);

function call(value: Call, scope: Scope, depth: number): Amount | undefined {
  const known = Object.hasOwn(functions, value.fn.text) ? functions[value.fn.text] : undefined;
  if (known === undefined) {
    const near = nearest(value.fn.text, functionNames);
    const fixes =
      near === undefined
        ? []
        : [
            {
              title: sentence("fix.change-to", { text: near }),
              edits: [{ start: value.fn.start, end: value.fn.end, text: near }],
            },
          ];
    scope.report(
      "unknown-name",
      value.fn,
      sentence("unknown-name.function", { name: value.fn.text, names: functionNames.join(", ") }),
      fixes,
    );
    return undefined;
  }
  const args: Amount[] = [];
  for (const arg of value.args) {
    const amount = workOut(arg, scope, depth + 1);
    if (amount === undefined) return undefined;
    args.push(amount);
  }
  if (args.length < known.least || args.length > known.most) {
    const values = { Function: capital(value.fn.text), given: args.length };
    scope.report(
      "unreadable-number",
      value,
      known.least === known.most
        ? sentence(args.length === 1 ? "function-takes.given-one" : "function-takes", {
            ...values,
            count: known.least,
          })
        : sentence(args.length === 1 ? "function-takes.range-given-one" : "function-takes.range", {
            ...values,
            least: known.least,
            most: known.most,
          }),
    );
    return undefined;
  }
  const outcome = known.of(args, value, scope);
  return outcome && settled(outcome, value, scope);
}

function extreme(args: Amount[], pick: (a: number, b: number) => number): Outcome | undefined {
  let [found] = args;
  for (const next of args.slice(1)) {
    if (found === undefined) return undefined;
    const pair = alike(found, next);
    if ("mismatch" in pair) return pair;
    found = { ...pair[0], number: pick(pair[0].number, pair[1].number) };
  }
  return found;
}

/** To the nearest whole number of the file's unit (a degree, a kilogram …), or to the nearest multiple of the second value. */
function rounded([value, step]: Amount[], _call: Call, scope: Scope): Outcome | undefined {
  if (value === undefined) return undefined;
  if (step === undefined) {
    const one =
      value.dimension === "length"
        ? scope.bare
        : value.dimension === "angle"
          ? Math.PI / 180
          : value.dimension === "share"
            ? 0.01
            : 1;
    return { ...value, number: Math.round(value.number / one) * one };
  }
  const pair = alike(value, step);
  if ("mismatch" in pair) return pair;
  if (pair[1].number === 0) return { mismatch: sentence("mismatch.round"), unreadable: true };
  return { ...pair[0], number: Math.round(pair[0].number / pair[1].number) * pair[1].number };
}

function ofAngle(angle: Amount | undefined, of: (radians: number) => number): Outcome | undefined {
  if (angle === undefined) return undefined;
  if (angle.dimension !== "angle")
    return { mismatch: sentence("mismatch.takes-angle", { kind: called(angle.dimension) }) };
  const number = of(angle.number);
  return Math.abs(number) > 1e9
    ? { mismatch: sentence("mismatch.tangent"), unreadable: true }
    : { number, dimension: "number" };
}

/** The number of a plain fraction written out, such as `1/2` or `1 / 2`; nothing for anything else. */
export function plainFraction(value: Value, text: string): number | undefined {
  if (value.is === "group") return plainFraction(value.of, text);
  if (value.is === "number")
    return text.slice(value.start, value.end).includes("/") ? value.number : undefined;
  if (value.is !== "binary" || value.op !== "/") return undefined;
  if (value.left.is !== "number" || value.right.is !== "number" || value.right.number === 0) return undefined;
  return value.left.number / value.right.number;
}
