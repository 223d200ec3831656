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
  const names = namesBehind(namesIn(problem, deciders, tree.text), lets(tree), tree.text);
  const ranked = [...figuresOf(tree)].flatMap((figure) => {
    const decides = deciders.findIndex((each) => within(figure.value, each));
    if (decides >= 0) return [{ figure, rank: decides }];
    const behind = names.get(figure.thing);
    if (behind !== undefined) return [{ figure, rank: 10 + behind }];
    const away = steps.get(figure.thing);
    return away === undefined ? [] : [{ figure, rank: (joints.has(figure.thing) ? 20 : 30) + 10 * away }];
  });
  return ranked.sort((a, b) => a.rank - b.rank).map(({ figure }) => figure);
}

const within = (inner: Span, outer: Span): boolean => inner.start >= outer.start && inner.end <= outer.end;

/** Names that stand alone where a figure is asked for: the figure is where they get their value. */
function namesIn(problem: Problem, deciders: readonly Span[], text: string): string[] {
  return [problem, ...deciders].flatMap(({ start, end }) => text.slice(start, end).match(NAMES) ?? []);
}

/** Each name with how many values stand between it and the figure: `rail-top = stool-height - 20` leads on to `stool-height`. */
function namesBehind(
  first: readonly string[],
  values: ReadonlyMap<string, Span>,
  text: string,
): Map<string, number> {
  const found = new Map<string, number>();
  let here = first;
  for (let away = 0; away < FURTHEST && here.length > 0; away++) {
    const fresh = here.filter((name) => !found.has(name));
    for (const name of fresh) found.set(name, away);
    const spans = fresh.flatMap((name) => values.get(name) ?? []);
    here = spans.flatMap(({ start, end }) => text.slice(start, end).match(NAMES) ?? []);
  }
  return found;
}

/** Values that are followed one from the other. */
const FURTHEST = 4;
const NAMES = /[a-z][a-z0-9-]*/g;

/** Where each value with a name is given. */
function lets({ statements }: Study["tree"]): Map<string, Span> {
  const given = statements.filter(({ word }) => word?.text === "let");
  return new Map(
    given.flatMap(({ match }) => {
      const [name, value] = ["name", "value"].map((label) =>
        match?.facts.find((fact) => fact.label === label),
      );
      return name?.name !== undefined && value ? [[name.name, value] as const] : [];
    }),
  );
}
