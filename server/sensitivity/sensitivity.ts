/**
 * Which figures of the text some worked-out values depend on, and how much each moves them: found by writing each a little larger and
 * working the chair out again, never by a formula of its own.
 */
import type { Span } from "../../grammar/problem.ts";
import type { Statement, Tree, Value } from "../../grammar/tree.ts";
import { valueRow } from "../../grammar/vocabulary/values.ts";
import type { Chair } from "../chair/chair.ts";
import { workedValue as workedOut } from "../chair/values/values.ts";
import { dependenciesOf, reachedFrom, rootsOf } from "../design/dependencies.ts";
import type { Design } from "../design/design.ts";
import { millimetresIn, units } from "../design/units.ts";
import { type Figure, figuresOf, nameOf } from "./figures.ts";

/** One figure of the text and what a step of it does. */
export interface Mover extends Span {
  /** The words that name it, such as `foot back` of `back`, or the name of a `let`. */
  what: string;
  /** The part whose block it stands in, or `seat`. */
  of?: string;
  /** What one step is: 1 mm (1/16 in in a file of inches), 1°, or 1 for a bare number that is neither. */
  step: { number: number; dimension: "length" | "angle" | "number" };
  /** How much the value moves for it, in the value's own dimension (mm, rad, …). */
  moves: number;
}

interface Asking {
  tree: Tree;
  design: Design;
  chair: Chair;
  /** Dotted names of the values. */
  values: readonly string[];
  /** Works a tree out; the tree differs from the file's by one figure. */
  rework: (tree: Tree) => Chair;
}

/** What moves each value, by its dotted name, the strongest first. */
export type Movers = ReadonlyMap<string, readonly Mover[]>;

/** Movements smaller than this count as none, mm or rad or plain. */
const still = 1e-7;

/**
 * The figures that move some values. Yields what is known after each figure tried, so that a long file need not hold anybody up; what
 * it returns is the whole. Figures near to the values come first: a value's own part, then what that part depends on, joints last.
 * The tree is as it was whenever the generator rests.
 */
export function* hangsOn({ tree, design, chair, values, rework }: Asking): Generator<Movers, Movers> {
  const now = new Map<string, number>();
  for (const value of values) {
    const number = workedOut(chair, value)?.number;
    if (number !== undefined) now.set(value, number);
  }
  const found = new Map<string, Mover[]>([...now.keys()].map((value) => [value, []]));
  if (now.size === 0) return found;
  const steps = stepsFrom(values, design);
  const slight = thinned(tree, steps, values);
  const enough = [...now].every(([value, number]) => {
    const again = workedOut(rework(slight), value)?.number;
    return again !== undefined && Math.abs(again - number) <= still;
  });
  const worked = enough ? slight : tree;
  for (const figure of nearestFirst(worked, steps)) {
    const step = stepOf(figure, design);
    const moved = reworked(worked, figure, step.inText, rework);
    const { what, of, value: written } = figure;
    for (const [value, before] of now) {
      const after = workedOut(moved, value)?.number;
      if (after === undefined || Math.abs(after - before) <= still) continue;
      const movers = found.get(value) ?? [];
      movers.push({
        what,
        ...(of !== undefined && { of }),
        start: written.start,
        end: written.end,
        step: step.step,
        moves: after - before,
      });
      movers.sort((a, b) => Math.abs(b.moves) - Math.abs(a.moves));
    }
    yield found;
  }
  return found;
}

/** Kinds of blocks whose figures seldom move what is asked after, tried last. */
const late: Record<string, number> = { rail: 1, bow: 1, slat: 2, stick: 2, block: 2, joint: 3 };

const parts = new Set(["rail", "slat", "stick", "bow", "block"]);
const claims = new Set(["require", "accept", "limit", "note"]);

/** The tree without what the values cannot depend on: much sooner worked out. Its statements are those of the tree. */
function thinned(tree: Tree, steps: ReadonlyMap<string, number>, values: readonly string[]): Tree {
  const jointed = values.some((value) => valueRow(value)?.jointed);
  const counts = (statement: Statement): boolean => {
    const kind = statement.word?.text ?? "";
    if (kind === "joint") return jointed;
    return parts.has(kind) ? steps.has(nameOf(statement) ?? "") : !claims.has(kind);
  };
  return { ...tree, statements: tree.statements.filter(counts) };
}

/** The figures that the values can depend on, by how many steps away they are. */
function nearestFirst(tree: Tree, steps: ReadonlyMap<string, number>): Figure[] {
  const rank = ({ thing, kind }: Figure) => (steps.get(thing) ?? 0) * 4 + (late[kind] ?? 0);
  return [...figuresOf(tree)].filter(({ thing }) => steps.has(thing)).sort((a, b) => rank(a) - rank(b));
}

/** How many steps away each thing is that the values depend on; a value's own part is nearer than the trimming of the feet. */
export function stepsFrom(values: readonly string[], design: Design): Map<string, number> {
  const dependencies = dependenciesOf(design);
  const roots = values.flatMap((value) => {
    const things = rootsOf(value);
    // What is cut off a post's foot is missing from its length.
    const trimmed = things.some((thing) => dependencies.get("trim")?.has(thing)) ? ["trim"] : [];
    return [...things, ...trimmed].map((thing, k) => [thing, Math.min(k, 1)] as const);
  });
  return reachedFrom(
    roots.sort(([, a], [, b]) => b - a),
    dependencies,
  );
}

/** One step of a figure, and what is added to it in the text for it. */
function stepOf(
  { fact, literal, let: name }: Figure,
  design: Design,
): { step: Mover["step"]; inText: Value } {
  const { start, end } = literal;
  const quantity = (number: number, unit: string): Value => ({
    is: "quantity",
    number,
    unit,
    unitSpan: { start: end, end },
    start,
    end,
  });
  const length = design.units === "in" ? 25.4 / 16 : 1;
  const one = { number: 1, dimension: "number" } as const;
  const degree = { step: { number: Math.PI / 180, dimension: "angle" }, inText: quantity(1, "deg") } as const;
  if (literal.is === "slope") return degree;
  if (literal.is === "quantity") {
    if (literal.unit === "deg") return degree;
    const unit = units[literal.unit];
    return unit?.dimension === "length"
      ? {
          step: { number: length, dimension: "length" },
          inText: quantity(length / unit.size, literal.unit),
        }
      : { step: one, inText: quantity(1, literal.unit) };
  }
  const isLength =
    fact.slot === "length" ||
    (name !== undefined && design.lets.get(name)?.value?.value.dimension === "length");
  const number = isLength ? length / millimetresIn(design.units) : 1;
  return {
    step: isLength ? { number: length, dimension: "length" } : one,
    inText: { is: "number", number, start, end },
  };
}

/** Works the tree out with one figure grown, and puts the figure back whatever happens. */
function reworked(tree: Tree, { fact, value }: Figure, by: Value, rework: Asking["rework"]): Chair {
  const { start, end } = value;
  fact.value = { is: "binary", op: "+", left: value, right: by, start, end };
  try {
    return rework(tree);
  } finally {
    fact.value = value;
  }
}
