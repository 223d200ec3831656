/**
 * Which figures of the text a worked-out value hangs on, and how much each moves it: found by writing each a little larger and
 * working the chair out again, never by a formula of its own.
 */
import type { Span } from "../../grammar/problem.ts";
import type { Fact, Statement, Tree, Value } from "../../grammar/tree.ts";
import type { Chair } from "../chair/chair.ts";
import { workedValue as workedOut } from "../chair/values.ts";
import type { Design } from "../design/design.ts";
import { millimetresIn, units } from "../design/units.ts";

/** One figure of the text and what a step of it does. */
export interface Mover extends Span {
  /** The words that name it, such as `foot back` of `back`, or the name of a `let`. */
  what: string;
  /** The part whose block it stands in, if any. */
  of?: string;
  /** What one step is: 1 mm (1/16 in in a file of inches), 1°, or 1 for a bare number that is neither. */
  step: { number: number; dimension: "length" | "angle" | "number" };
  /** How much the value moves for it, in the value's own dimension (mm, rad, …). */
  moves: number;
}

export interface Asking {
  tree: Tree;
  design: Design;
  chair: Chair;
  /** Dotted name of the value. */
  value: string;
  /** Works a tree out; the tree differs from the file's by one figure. */
  rework: (tree: Tree) => Chair;
}

/** Movements smaller than this count as none, mm or rad or plain. */
const still = 1e-7;

/**
 * The figures that move a value, the strongest first. Yields after each figure tried, so that a long file need not hold anybody
 * up; the last result is the whole list. The tree is as it was when the generator ends or is closed.
 */
export function* hangsOn({ tree, design, chair, value, rework }: Asking): Generator<Mover[], Mover[]> {
  const now = workedOut(chair, value)?.number;
  const found: Mover[] = [];
  if (now === undefined) return found;
  for (const figure of figuresOf(tree)) {
    const step = stepOf(figure, design);
    const moved = workedOut(reworked(tree, figure.node, step.inText, rework), value)?.number;
    if (moved !== undefined && Math.abs(moved - now) > still) {
      const { what, of, node } = figure;
      found.push({
        what,
        ...(of && { of }),
        start: node.start,
        end: node.end,
        step: step.step,
        moves: moved - now,
      });
    }
    yield found;
  }
  return found.sort((a, b) => Math.abs(b.moves) - Math.abs(a.moves));
}

type Literal = Extract<Value, { is: "number" | "quantity" | "slope" }>;

interface Figure {
  node: Literal;
  slot: Fact["slot"];
  what: string;
  of?: string;
  let?: string;
}

/** Blocks and statements whose figures place or shape the chair. */
const shaping = new Set(["post", "rail", "slat", "seat", "trim", "let", "block", "joint"]);

function* figuresOf(tree: Tree): Iterable<Figure> {
  for (const statement of tree.statements) {
    if (shaping.has(statement.word?.text ?? "")) yield* within(statement, nameOf(statement));
  }
}

function* within(statement: Statement, of: string | undefined): Iterable<Figure> {
  const isLet = statement.word?.text === "let";
  for (const fact of statement.match?.facts ?? []) {
    if (!fact.value || (isLet && fact.label !== "value")) continue;
    for (const node of literals(fact.value)) {
      const words = isLet ? (of ?? "let") : [statement.word?.text, fact.label].filter(distinct).join(" ");
      yield {
        node,
        slot: fact.slot,
        what: words,
        ...(isLet ? { let: of ?? "" } : of !== undefined && { of }),
      };
    }
  }
  for (const inner of statement.block?.statements ?? []) yield* within(inner, of);
}

function distinct(word: string | undefined, i: number, all: (string | undefined)[]): boolean {
  return word !== undefined && all.indexOf(word) === i;
}

function nameOf(statement: Statement): string | undefined {
  return statement.match?.facts.find((fact) => fact.slot === "name")?.name;
}

function* literals(value: Value): Iterable<Literal> {
  switch (value.is) {
    case "number":
    case "quantity":
    case "slope":
      yield value;
      break;
    case "negate":
    case "group":
      yield* literals(value.of);
      break;
    case "binary":
      yield* literals(value.left);
      // A factor or a divisor is a proportion, not a size.
      if (value.op === "+" || value.op === "-") yield* literals(value.right);
      break;
    case "call":
      for (const arg of value.args) yield* literals(arg);
      break;
    default:
  }
}

/** One step of a figure, and by how much its number in the text grows for it. */
function stepOf({ node, slot, let: name }: Figure, design: Design): { step: Mover["step"]; inText: number } {
  const inches = design.units === "in";
  const length = inches ? 25.4 / 16 : 1;
  const lengthStep = (perUnit: number) =>
    ({ step: { number: length, dimension: "length" }, inText: length / perUnit }) as const;
  const degree = { step: { number: Math.PI / 180, dimension: "angle" }, inText: 1 } as const;
  if (node.is === "slope") return { step: degree.step, inText: Math.PI / 180 };
  if (node.is === "quantity") {
    if (node.unit === "deg") return degree;
    const unit = units[node.unit];
    return unit?.dimension === "length"
      ? lengthStep(unit.size)
      : { step: { number: 1, dimension: "number" }, inText: 1 };
  }
  const isLength =
    slot === "length" || (name !== undefined && design.lets.get(name)?.value?.value.dimension === "length");
  return isLength
    ? lengthStep(millimetresIn(design.units))
    : { step: { number: 1, dimension: "number" }, inText: 1 };
}

/** Works the tree out with one number grown, and puts the number back whatever happens. */
function reworked(tree: Tree, node: Literal, by: number, rework: Asking["rework"]): Chair {
  if (node.is === "slope") {
    const before = node.rise;
    node.rise = Math.tan(Math.atan2(before, node.run) + by) * node.run;
    try {
      return rework(tree);
    } finally {
      node.rise = before;
    }
  }
  const before = node.number;
  node.number = before + by;
  try {
    return rework(tree);
  } finally {
    node.number = before;
  }
}
