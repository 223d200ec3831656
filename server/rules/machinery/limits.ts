/**
 * What `limit` lines make of the rules' figures.
 */
import type { Bound, Design, Dimension, LimitDesign } from "../../design/design.ts";
import { goesBy, type Rule } from "./rule.ts";

type Figure = Bound & { dimension: Dimension };

/** A rule's two figures after the file's `limit` lines. */
export function boundsOf(rule: Rule, design: Design): { limit: Bound; also: Bound } {
  const bounds = { limit: bare(rule.limit), also: bare(rule.also) };
  for (const line of design.limits) {
    if (!goesBy(rule, line.rule)) continue;
    const changed = appliedTo(rule, line);
    if (changed) Object.assign(bounds[changed.which], changed.bound);
  }
  return bounds;
}

const bare = (figure: Figure | undefined): Bound => ({
  ...(figure?.low === undefined ? {} : { low: figure.low }),
  ...(figure?.high === undefined ? {} : { high: figure.high }),
});

/** Which of a rule's figures a line changes, and to what; undefined when it fits neither. */
export function appliedTo(
  rule: Rule,
  line: LimitDesign,
): { which: "limit" | "also"; bound: Bound } | undefined {
  for (const which of ["limit", "also"] as const) {
    const figure = rule[which];
    const bound = figure && line.bound && changed(figure, line.bound.value);
    if (bound) return { which, bound };
  }
  return undefined;
}

/** A bare number in the file's unit keeps how many millimetres one of it is. */
type Given = Figure & { bare?: number };

function changed(figure: Figure, given: Given): Bound | undefined {
  const bound: Bound = {};
  for (const side of ["low", "high"] as const) {
    const number = given[side];
    if (figure[side] === undefined || number === undefined) continue;
    const fitting = inDimension(number, given, figure.dimension);
    if (fitting === undefined) return undefined;
    bound[side] = fitting;
  }
  return bound.low === undefined && bound.high === undefined ? undefined : bound;
}

function inDimension(number: number, given: Given, wanted: Dimension): number | undefined {
  if (given.dimension === wanted) return number;
  if (given.dimension === "number" && wanted === "length" && given.bare !== undefined)
    return number * given.bare;
  const plain = new Set<Dimension>(["number", "share"]);
  // A share above one is not a share but more likely a length whose figure comes second.
  return plain.has(given.dimension) && plain.has(wanted) && number <= 1 ? number : undefined;
}
