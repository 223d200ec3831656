/**
 * Whether a new name leaves what a text says as it was: the same worked-out values under the new name, and the same findings.
 */
import type { Steps } from "../../grammar/steps.ts";
import type { Study } from "../study.ts";

/** Two figures alike to this share are the same. */
const ALIKE = 1e-9;

/** Compares a file before and after; `again` studies it as it would be. */
export function* keepsMeaning(
  before: Study,
  again: Steps<Study>,
  { from, to }: { from: string; to: string },
): Steps<boolean> {
  const after = yield* again;
  const renamed = (dotted: string) =>
    dotted
      .split(".")
      .map((segment) => (segment === from ? to : segment))
      .join(".");
  if (before.chair.values.size !== after.chair.values.size) return false;
  for (const [name, { number, dimension }] of before.chair.values) {
    const now = after.chair.values.get(renamed(name));
    if (now === undefined || now.dimension !== dimension || !isAlike(number, now.number)) return false;
  }
  const codes = (study: Study) => study.problems.map(({ code }) => code).join(" ");
  return codes(before) === codes(after);
}

const isAlike = (one: number, other: number): boolean =>
  Object.is(one, other) || Math.abs(one - other) <= ALIKE * Math.max(1, Math.abs(one));
