/**
 * Which figures of the text may put a finding right, the likeliest first.
 */

import type { Problem, Span } from "../../grammar/problem.ts";
import { partsNamed } from "../design/identity.ts";
import { type Figure, figuresOf } from "../sensitivity/figures.ts";
import { stepsFrom } from "../sensitivity/sensitivity.ts";
import type { Study } from "../study.ts";

/** The figures that stand in what decides the finding, then those of its parts and joints, then what these depend on. */
export function figuresNear({ tree, design, chair }: Study, problem: Problem): Figure[] {
  const deciders: Span[] = [problem, ...(problem.deciders ?? [])];
  const subjects = [problem.subject ?? "", ...(problem.alsoOf ?? [])].filter(Boolean);
  const joints = new Set(subjects.flatMap((each) => chair.joints.get(each)?.design ?? []));
  const things = subjects.flatMap(partsNamed);
  const steps = stepsFrom([...things, ...joints], design);
  const names = new Set(namesIn(problem, deciders, tree.text));
  const ranked = [...figuresOf(tree)].flatMap((figure) => {
    const decides = deciders.findIndex((each) => within(figure.value, each));
    if (decides >= 0) return [{ figure, rank: decides }];
    if (names.has(figure.thing)) return [{ figure, rank: 10 }];
    const away = steps.get(figure.thing);
    return away === undefined ? [] : [{ figure, rank: (joints.has(figure.thing) ? 20 : 30) + 10 * away }];
  });
  return ranked.sort((a, b) => a.rank - b.rank).map(({ figure }) => figure);
}

const within = (inner: Span, outer: Span): boolean => inner.start >= outer.start && inner.end <= outer.end;

/** Names that stand alone where a figure is asked for: the figure is where they get their value. */
function namesIn(problem: Problem, deciders: readonly Span[], text: string): string[] {
  return [problem, ...deciders].flatMap(
    ({ start, end }) => text.slice(start, end).match(/[a-z][a-z0-9-]*/g) ?? [],
  );
}
