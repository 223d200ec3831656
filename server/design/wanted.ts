/**
 * What is said of worked-out values that the text asks for and that never came to be known.
 */

import { nearest } from "../../grammar/nearest.ts";
import type { Problem } from "../../grammar/problem.ts";
import { sentence } from "../../grammar/sentences/sentence.ts";
import { type Dependencies, dependenciesOf, rootsOf } from "./dependencies.ts";
import type { Design } from "./design.ts";
import { readersOf } from "./evaluate.ts";
import { stemOf } from "./identity.ts";
import { listedAs } from "./values.ts";

/**
 * Problems for what is still wanted once calculation again changes nothing: a value that depends on the very line that asks for it
 * is a circle, told with its members; a part's end that does not exist is an unknown name; anything else depends on what is
 * missing elsewhere. `values` are the names that are known by then.
 */
export function wantedProblems(design: Design, values: Iterable<string>): Problem[] {
  const known = [...values];
  const needs = dependenciesOf(design);
  const problems: Problem[] = [];
  for (const [name, at] of design.wanted) {
    const circle = circleOf(name, design, needs);
    if (circle !== undefined) {
      problems.push({
        code: "circular-value",
        severity: "error",
        message: sentence("circular-value.asked", { name, circle: circle.join(" → ") }),
        start: at.start,
        end: at.end,
      });
      continue;
    }
    const near = nearest(name, known) ?? sameOfAnotherEnd(name, known);
    const exists = near !== undefined && namesNoEnd(name, known);
    problems.push({
      code: "unknown-name",
      severity: "error",
      message: exists
        ? sentence("unknown-name.value-near", { name, near })
        : sentence("unknown-name.not-worked-out", { name }),
      start: at.start,
      end: at.end,
      ...(exists
        ? {
            fixes: [
              {
                title: sentence("fix.change-to", { text: near }),
                edits: [{ start: at.start, end: at.end, text: near }],
              },
            ],
          }
        : {}),
    });
  }
  return problems;
}

/** Values of the part are known, but none of the end that this name speaks of. */
function namesNoEnd(name: string, known: readonly string[]): boolean {
  const listed = listedAs(name);
  const part = `${stemOf(name)}.`;
  const ends = listed.map((each) => each.slice(0, each.lastIndexOf(".") + 1));
  return (
    known.some((each) => each.startsWith(part)) &&
    !known.some((each) => ends.some((end) => each.startsWith(end)))
  );
}

/** The same value at an end that the part does have. */
function sameOfAnotherEnd(name: string, known: readonly string[]): string | undefined {
  const part = `${stemOf(name)}.`;
  const last = name.slice(name.lastIndexOf("."));
  return known.find((each) => each.startsWith(part) && each.endsWith(last));
}

/** The way from a wanted value back to itself: value, the things it depends on, the value wanted by one of them … */
function circleOf(name: string, design: Design, needs: Dependencies): string[] | undefined {
  const wanting = new Map<string, string[]>();
  for (const [value, readers] of readersOf(design).wantedBy) {
    for (const reader of readers) wanting.set(reader, [...(wanting.get(reader) ?? []), value]);
  }
  const seen = new Set<string>();
  const walk = (value: string, path: string[]): string[] | undefined => {
    const things = rootsOf(value);
    const visited = new Set<string>();
    for (let thing = things.pop(); thing !== undefined; thing = things.pop()) {
      if (visited.has(thing)) continue;
      visited.add(thing);
      for (const next of wanting.get(thing) ?? []) {
        if (next === name) return [...path, thing, name];
        if (seen.has(next)) continue;
        seen.add(next);
        const found = walk(next, [...path, thing, next]);
        if (found !== undefined) return found;
      }
      things.push(...(needs.get(thing) ?? []));
    }
    return undefined;
  };
  return walk(name, [name]);
}
