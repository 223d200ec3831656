/**
 * Several requirements at once: the fewest and smallest changes of the values with `within` that meet every `require` together, or
 * which of them stand against each other.
 */

import { parse } from "../../grammar/parser.ts";
import type { Edit } from "../../grammar/problem.ts";
import type { Steps } from "../../grammar/steps.ts";
import { vocabulary } from "../../grammar/vocabulary/index.ts";
import { valueRow } from "../../grammar/vocabulary/values.ts";
import type { RequireDesign } from "../design/design.ts";
import { settleSteps } from "../settle.ts";
import { lateChairSteps, type Study } from "../study.ts";
import { attemptSteps, type Subject } from "./attempt.ts";
import { type Choice, choicesOf, edited, exactly, rewrite, stepped } from "./choice.ts";
import { type Known, knownBy } from "./findings.ts";
import { figureOf, type Goal, goalOf, shortOf } from "./goal.ts";
import { leastSquaresStep } from "./least-squares.ts";

/** One requirement and how the chair keeps it. */
interface Kept {
  line: RequireDesign;
  goal: Goal;
  was?: number;
  got?: number;
  met: boolean;
}

interface Change {
  choice: Choice;
  to: number;
  written: string;
}

export interface Together {
  /** Every requirement about one value by name. */
  requirements: Kept[];
  /** Whether all are met, by these changes or without any. */
  met: boolean;
  /** How many values may move. */
  movable: number;
  changes: Change[];
  edits: Edit[];
  comes: Known[];
  goes: Known[];
  /** Where they cannot be met: the fewest of them that no figures within the ranges meet together. */
  against: RequireDesign[];
}

interface Asking {
  subject: Subject;
  study: Study;
}

interface Problem {
  asking: Asking;
  choices: readonly Choice[];
  goals: readonly Goal[];
}

/** Meets all requirements of the file together. Rests between reckonings; their number is bounded. */
export function* togetherSteps(asking: Asking): Steps<Together> {
  const { study } = asking;
  const { design, chair, tree } = study;
  const unit = design.units;
  const asked = design.requires.flatMap((line) => {
    const goal = goalOf(line);
    return goal ? [{ line, goal, was: figureOf(chair, goal) }] : [];
  });
  const kept = (figures: readonly (number | undefined)[]): Kept[] =>
    asked.map(({ line, goal, was }, k) => {
      const got = figures[k];
      return {
        line,
        goal,
        ...(was !== undefined && { was }),
        ...(got !== undefined && { got }),
        met: got !== undefined && shortOf(goal, got, unit) === 0,
      };
    });
  const now = kept(asked.map(({ was }) => was));
  const choices = choicesOf(tree, design).filter(
    ({ kind, bounded, plain }) => kind === "let" && bounded && plain,
  );
  const nothing = { movable: choices.length, changes: [], edits: [], comes: [], goes: [], against: [] };
  if (now.every(({ met }) => met)) return { requirements: now, met: true, ...nothing };

  const goals = asked.map(({ goal }) => goal);
  const problem: Problem = { asking, choices, goals };
  for (const some of subsets(choices.length)) {
    const found = yield* solved(problem, some);
    if (!found) continue;
    const end = yield* steppedTo(problem, found);
    if (!end) continue;
    const { changes, edits, tried } = end;
    const before = knownBy(study.problems);
    const after = knownBy(tried.problems);
    return {
      requirements: kept(goals.map((goal) => figureOf(tried.chair, goal))),
      met: true,
      movable: choices.length,
      changes,
      edits,
      comes: [...after].flatMap(([key, known]) => (before.has(key) ? [] : [known])),
      goes: [...before].flatMap(([key, known]) => (after.has(key) ? [] : [known])),
      against: [],
    };
  }
  const against = yield* opposed(problem);
  return {
    requirements: now,
    met: false,
    ...nothing,
    against: against.flatMap((k) => asked[k]?.line ?? []),
  };
}

/** Most values that are moved at once, and most sets of them that are tried. */
const MOST_MOVED = 4;
const MOST_SETS = 60;

/** Sets of choices to move, the smallest first. */
function subsets(count: number): number[][] {
  const all: number[][] = [];
  for (let size = 1; size <= Math.min(count, MOST_MOVED); size++) all.push(...combinations(count, size));
  return all.slice(0, MOST_SETS);
}

function combinations(count: number, size: number, from = 0): number[][] {
  if (size === 0) return [[]];
  const all: number[][] = [];
  for (let k = from; k <= count - size; k++)
    for (const rest of combinations(count, size - 1, k + 1)) all.push([k, ...rest]);
  return all;
}

/** What a change of a whole unit of print means, so that millimetres and degrees can be weighed against each other. */
const scales: Partial<Record<Goal["dimension"], number>> = {
  angle: Math.PI / 1800,
  mass: 0.01,
  number: 0.01,
};

function* figuresAt(
  { asking, choices, goals }: Problem,
  places: readonly number[],
): Steps<(number | undefined)[]> {
  const edits = choices.flatMap((choice, k) => {
    const place = places[k] ?? choice.now;
    return place === choice.now ? [] : [rewrite(choice, exactly(choice, place))];
  });
  const { text, address, files, late } = asking.subject;
  const earlier = asking.study.chair;
  const tree = parse(edited(text, edits), vocabulary);
  const settled = yield* settleSteps({ tree, address, files, earlier });
  const wanted = late && goals.some(({ value }) => valueRow(value)?.late);
  const chair = wanted ? yield* lateChairSteps(settled.chair, late) : settled.chair;
  yield;
  return goals.map((goal) => figureOf(chair, goal));
}

/** How far each goal is from being met, in units of print; nothing when one has no figure. */
function shortfalls(
  { goals, asking }: Problem,
  figures: readonly (number | undefined)[],
): number[] | undefined {
  const short = goals.map((goal, k) => {
    const figure = figures[k];
    return figure === undefined
      ? Number.NaN
      : shortOf(goal, figure, asking.study.design.units) / (scales[goal.dimension] ?? 0.1);
  });
  return short.every(Number.isFinite) ? short : undefined;
}

const ROUNDS = 8;

/** Places of all choices, moving only some, at which every goal is met; from where the text has them. */
function* solved(
  problem: Problem,
  some: readonly number[],
  begin?: readonly number[],
): Steps<number[] | undefined> {
  const { choices } = problem;
  let places = begin ? [...begin] : choices.map(({ now }) => now);
  let figures = yield* figuresAt(problem, places);
  let short = shortfalls(problem, figures);
  for (let round = 0; short && round < ROUNDS; round++) {
    if (short.every((each) => each === 0)) return places;
    const slopes: number[][] = [];
    for (const k of some) {
      const choice = choices[k];
      const place = places[k];
      if (!choice || place === undefined) return undefined;
      const nudge = (choice.high - choice.low) / 200 || choice.step;
      const to = place + nudge <= choice.high ? place + nudge : place - nudge;
      const moved = yield* figuresAt(
        problem,
        places.map((each, at) => (at === k ? to : each)),
      );
      const size = choice.high - choice.low || 1;
      slopes.push(slopesOf(problem, figures, moved, (to - place) / size));
    }
    const step = leastSquaresStep(slopes, short);
    const next = places.map((place, k) => {
      const at = some.indexOf(k);
      const choice = choices[k];
      if (at < 0 || !choice) return place;
      const size = choice.high - choice.low || 1;
      return Math.min(choice.high, Math.max(choice.low, place + (step[at] ?? 0) * size));
    });
    if (next.every((place, k) => Math.abs(place - (places[k] ?? 0)) < 1e-9)) return undefined;
    places = next;
    figures = yield* figuresAt(problem, places);
    short = shortfalls(problem, figures);
  }
  return short?.every((each) => each === 0) ? places : undefined;
}

/** How much each goal's figure moves, in units of print, over the whole range of one choice. */
function slopesOf(
  { goals }: Problem,
  before: readonly (number | undefined)[],
  after: readonly (number | undefined)[],
  share: number,
): number[] {
  return goals.map((goal, k) => {
    const moved = (after[k] ?? Number.NaN) - (before[k] ?? Number.NaN);
    return Number.isFinite(moved) ? moved / (scales[goal.dimension] ?? 0.1) / share : 0;
  });
}

interface End {
  changes: Change[];
  edits: Edit[];
  tried: Study;
}

/** The places stepped to figures that a maker would write, if some steps near them still meet every goal. */
function* steppedTo(problem: Problem, places: readonly number[]): Steps<End | undefined> {
  const { choices, goals, asking } = problem;
  const moved = choices.flatMap((choice, k) => {
    const place = places[k] ?? choice.now;
    return Math.abs(place - choice.now) > choice.step / 1000 ? [{ choice, place }] : [];
  });
  for (const part of [1, 2, 10]) {
    for (const sides of combinationsOfSides(moved.length)) {
      const changes = moved.flatMap(({ choice, place }, k): Change[] => {
        const step = choice.step / (choice.unit === "in" && part === 10 ? 4 : part);
        const near = Math.round(place / step);
        const to = (near + (sides[k] === 0 ? 0 : place >= near * step ? 1 : -1)) * step;
        if (to < choice.low - 1e-9 || to > choice.high + 1e-9) return [];
        return [{ choice, to, written: stepped(choice, to, step) }];
      });
      if (changes.length < moved.length) continue;
      const edits = changes.map(({ choice, written }) => rewrite(choice, written));
      const tried = yield* attemptSteps({ ...asking.subject, earlier: asking.study.chair }, edits);
      yield;
      const figures = goals.map((goal) => figureOf(tried.chair, goal));
      if (shortfalls(problem, figures)?.every((each) => each === 0)) return { changes, edits, tried };
    }
  }
  return undefined;
}

/** Nearest step or the next on its other side, for each of some figures; all nearest first. */
function combinationsOfSides(count: number): number[][] {
  return Array.from({ length: 2 ** Math.min(count, MOST_MOVED) }, (_, bits) =>
    Array.from({ length: count }, (_, k) => (bits >> k) & 1),
  );
}

/** The fewest goals that cannot be met together: one after another is left out as long as the rest still cannot. */
function* opposed(problem: Problem): Steps<number[]> {
  let left = problem.goals.map((_, k) => k);
  for (const k of [...left]) {
    const rest = left.filter((each) => each !== k);
    const goals = rest.flatMap((each) => problem.goals[each] ?? []);
    if (goals.length > 0 && !(yield* canBeMet({ ...problem, goals }))) left = rest;
  }
  return left;
}

/** Whether some figures within the ranges meet the goals: sought from the text's own, the middle and the ends of every range. */
function* canBeMet(problem: Problem): Steps<boolean> {
  const { choices } = problem;
  const some = choices.map((_, k) => k);
  const starts = [
    choices.map(({ now }) => now),
    choices.map(({ low, high }) => (low + high) / 2),
    choices.map(({ low }) => low),
    choices.map(({ high }) => high),
  ];
  for (const start of starts) if (yield* solved(problem, some, start)) return true;
  return false;
}
