/**
 * Text that asks for worked-out values, and a chair that is worked out from the text: gone round until nothing is left to learn.
 */
import type { Problem } from "../grammar/problem.ts";
import { finish, type Steps } from "../grammar/steps.ts";
import type { Tree } from "../grammar/tree.ts";
import { buildSteps } from "./chair/build.ts";
import type { Chair } from "./chair/chair.ts";
import { workedValue } from "./chair/values/values.ts";
import { type Dependencies, dependenciesOf, reachedFrom, rootsOf } from "./design/dependencies.ts";
import type { Design, Quantity } from "./design/design.ts";
import { evaluateSteps, gatheredSteps, readersOf } from "./design/evaluate.ts";
import type { OtherTexts } from "./design/merge.ts";
import { wantedProblems } from "./design/wanted.ts";
import { balanceOf, endlessOf, withBalance } from "./floor/tips.ts";

interface Unsettled {
  tree: Tree;
  address: string;
  files: OtherTexts;
  /** The chair of an earlier version of the file, for the parts that are as they were. */
  earlier?: Pick<Chair, "made">;
}

export interface Settled {
  design: Design;
  chair: Chair;
  /** What is said of values that never came to be known. */
  problems: Problem[];
}

/** Chains of values that depend on each other are followed this far; each link costs one calculation of the chair. */
const LONGEST_CHAIN = 24;
/** A value that comes out this near to what was taken for it has settled, mm or rad. */
const SETTLED = 1e-9;

/**
 * Evaluates and builds; where the text asks for values that this chair gives, does so again with those that depend on nothing that
 * is itself still waiting. What is left in the end are circles and values that cannot be had.
 */
export const settle = (from: Unsettled): Settled => finish(settleSteps(from));

/** The same, resting after each part. */
export function* settleSteps(from: Unsettled): Steps<Settled> {
  const known = new Map<string, Quantity>();
  const gathered = yield* gatheredSteps(from);
  let made = from.earlier?.made;
  for (let round = 0; ; round++) {
    const design = yield* evaluateSteps({ ...from, known, gathered });
    const built = yield* buildSteps(design, made);
    made = built.made;
    yield;
    const chair = weighed(built);
    const moved = round < LONGEST_CHAIN && (learn(design, chair, known) || correct(chair, known));
    if (!moved) return { design, chair, problems: wantedProblems(design, chair.values.keys()) };
  }
}

/** The chair with its weight and how it tips among its values; when that fails, without them and with the failure among its faults. */
function weighed(built: Chair): Chair {
  try {
    const balance = balanceOf(built);
    const endless = [...built.endless, ...endlessOf(balance)];
    return { ...built, values: withBalance(built.values, balance), endless };
  } catch (thrown) {
    const what = "the weight and how the chair tips";
    return {
      ...built,
      faults: [...built.faults, { is: "failed", part: "", at: built.design.titleAt, what, thrown }],
    };
  }
}

/** Takes over the values that are asked for and certain by now; whether there were any. */
function learn(design: Design, chair: Chair, known: Map<string, Quantity>): boolean {
  if (design.wanted.size === 0) return false;
  const waits = waiting(design);
  const dependencies = dependenciesOf(design);
  const before = known.size;
  for (const name of design.wanted.keys()) {
    const worked = workedValue(chair, name);
    if (worked && !dependsOnAny(name, waits, dependencies))
      known.set(name, { number: worked.number, dimension: worked.dimension });
  }
  return known.size > before;
}

/** Brings what was taken for known into line with the chair that came of it; whether anything moved. */
function correct(chair: Chair, known: Map<string, Quantity>): boolean {
  let moved = false;
  for (const [name, quantity] of known) {
    const worked = workedValue(chair, name);
    if (
      !worked ||
      Math.abs(worked.number - quantity.number) <= SETTLED * Math.max(1, Math.abs(worked.number))
    )
      continue;
    known.set(name, { number: worked.number, dimension: worked.dimension });
    moved = true;
  }
  return moved;
}

/** Everything with a fact that waits for a value, directly or through a `let`. */
function waiting(design: Design): Set<string> {
  const { wantedBy, lets } = readersOf(design);
  const waits = new Set<string>();
  for (const readers of wantedBy.values()) for (const reader of readers) waits.add(reader);
  for (let grew = true; grew; ) {
    grew = false;
    for (const [reader, used] of lets) {
      if (waits.has(reader) || ![...used].some((name) => waits.has(name))) continue;
      waits.add(reader);
      grew = true;
    }
  }
  return waits;
}

/** Whether a value depends on something that waits. */
function dependsOnAny(value: string, waits: ReadonlySet<string>, dependencies: Dependencies): boolean {
  const roots = rootsOf(value).map((thing) => [thing, 0] as const);
  return [...reachedFrom(roots, dependencies).keys()].some((thing) => waits.has(thing));
}
