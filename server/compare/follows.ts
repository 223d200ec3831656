/**
 * What follows from a change: worked-out values that are not what they were, as far as print shows it.
 */
import type { Chair } from "../chair/chair.ts";
import { printWorked } from "../chair/values/print.ts";
import { workedValue } from "../chair/values/values.ts";
import type { Dimension } from "../design/design.ts";
import { type Called, dotted } from "./spelled.ts";

/** A value that moved, or that only one side has: mm, rad, kg and the like. */
export interface Moved {
  /** As the new chair calls it. */
  name: string;
  dimension: Dimension;
  /** Full name of the part it belongs to, if any. */
  part?: string;
  old?: number;
  new?: number;
}

/**
 * Values whose print is another, the largest move of each kind of quantity first, then the next; values that one side lacks last.
 * `called` gives the new names of renamed parts.
 */
export function followsFrom(old: Chair, now: Chair, called: Called): Moved[] {
  const before = new Map([...old.values].map(([name, worked]) => [dotted(name, called), worked]));
  const renamed: Pick<Chair, "values"> = { values: before };
  const units = [old.design.units, now.design.units];
  const moved: Moved[] = [];
  for (const [name, worked] of now.values) {
    const part = worked.part === undefined ? {} : { part: worked.part };
    const was = before.get(name) ?? workedValue(renamed, name);
    if (was === undefined) moved.push({ name, ...part, dimension: worked.dimension, new: worked.number });
    else if (was.dimension !== worked.dimension)
      moved.push({ name, ...part, dimension: worked.dimension, new: worked.number });
    else if (units.some((unit) => printWorked({ ...was, name }, unit) !== printWorked(worked, unit)))
      moved.push({ name, ...part, dimension: worked.dimension, old: was.number, new: worked.number });
  }
  for (const [name, was] of before) {
    if (now.values.has(name)) continue;
    const worked = workedValue(now, name);
    if (worked === undefined) moved.push({ name, dimension: was.dimension, old: was.number });
    else if (
      units.some((unit) => printWorked({ ...was, name }, unit) !== printWorked({ ...worked, name }, unit))
    )
      moved.push({ name, dimension: was.dimension, old: was.number, new: worked.number });
  }
  return largestFirst(moved);
}

function largestFirst(moved: readonly Moved[]): Moved[] {
  const most = new Map<Dimension, number>();
  for (const each of moved) most.set(each.dimension, Math.max(most.get(each.dimension) ?? 0, by(each)));
  const share = (each: Moved) => (by(each) === 0 ? 0 : by(each) / most.get(each.dimension)!);
  return moved
    .map((each, order) => ({ each, order, share: share(each) }))
    .sort((a, b) => b.share - a.share || a.order - b.order)
    .map(({ each }) => each);
}

const by = ({ old, new: now }: Moved): number =>
  old === undefined || now === undefined ? 0 : Math.abs(now - old);
