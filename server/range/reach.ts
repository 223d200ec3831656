/**
 * Which single choice, moved how far, gives a figure: each choice that may move is followed to the figure, stepped to one that a maker
 * would write, and worked out again.
 */

import { parse } from "../../grammar/parser.ts";
import type { Edit } from "../../grammar/problem.ts";
import type { Steps } from "../../grammar/steps.ts";
import { vocabulary } from "../../grammar/vocabulary/index.ts";
import { valueRow } from "../../grammar/vocabulary/values.ts";
import { settleSteps } from "../settle.ts";
import { lateChairSteps, type Study } from "../study.ts";
import { attemptSteps, type Subject } from "./attempt.ts";
import { type Choice, choicesOf, edited, exactly, rewrite, stepped } from "./choice.ts";
import { type Known, knownBy } from "./findings.ts";
import { aimOf, figureOf, type Goal, shortOf } from "./goal.ts";
import { searchSteps } from "./secant.ts";

/** One way to the figure. */
export interface Way {
  choice: Choice;
  /** What the text then says: `15`, `5.2deg`. */
  written: string;
  /** The new figure in the choice's unit. */
  to: number;
  edits: Edit[];
  /** The value got, in its own dimension. */
  got: number;
  /** Whether it is as asked; else the best that this choice can do within its bounds. */
  met: boolean;
  /** Findings that come and go with it. */
  comes: Known[];
  goes: Known[];
}

interface Asking {
  subject: Subject;
  /** What is known of the file as it is. */
  study: Study;
  goal: Goal;
  /** Only this choice, by its name or the first part of it: `trim`, `back.foot.back`. */
  by?: string;
}

/** Lines whose figures may be moved to reach another: where a post stands and leans, where a rail lies, what the feet lose. */
const movable = new Set([
  "let",
  "trim",
  "foot",
  "top",
  "at",
  "kick",
  "rake",
  "splay",
  "up",
  "fall",
  "height",
]);

/** The choices that may be moved for a figure; `by` names others too. */
export function movableChoices({ tree, design }: Pick<Study, "tree" | "design">, by?: string): Choice[] {
  const plain = choicesOf(tree, design).filter((choice) => choice.plain);
  if (by !== undefined) return plain.filter(({ name }) => name === by || name.startsWith(`${by}.`));
  return plain.filter(({ kind, part, bounded, words }) =>
    kind === "let" ? bounded || part === undefined : movable.has(kind) && !/ (over|height)\b/.test(words),
  );
}

/** Every way there is, those that meet the goal first, the smallest change for its range first; rests between reckonings. */
export function* reachSteps({ study, goal, by, ...asking }: Asking): Steps<Way[]> {
  const subject = { ...asking.subject, earlier: study.chair };
  const at = figureOf(study.chair, goal);
  if (at === undefined) return [];
  const before = knownBy(study.problems);
  const ways: Way[] = [];
  for (const choice of movableChoices(study, by)) {
    const way = yield* wayBy(choice, { subject, study, goal, at, before });
    if (way) ways.push(way);
    yield;
  }
  const size = ({ choice, to }: Way) => Math.abs(to - choice.now) / Math.max(choice.high - choice.low, 1e-9);
  const news = ({ comes }: Way) => comes.length;
  const sorted = ways.sort((a, b) => Number(b.met) - Number(a.met) || news(a) - news(b) || size(a) - size(b));
  // One that breaks the chair is no way to the figure while another keeps it whole.
  const whole = sorted.filter((way) => !breaks(way));
  return by === undefined && whole.some(({ met }) => met) ? whole : sorted;
}

const breaks = ({ comes }: Way): boolean => comes.some(({ severity }) => severity === "error");

interface Trying {
  subject: Subject;
  study: Study;
  goal: Goal;
  at: number;
  before: ReadonlyMap<string, Known>;
}

/** Most reckonings of one choice before it is stepped. */
const MOST = 8;

function* wayBy(choice: Choice, trying: Trying): Steps<Way | undefined> {
  const { subject, study, goal, at } = trying;
  const unit = study.design.units;
  const aim = aimOf(goal, at);
  const figureAt = function* (x: number): Steps<number | undefined> {
    const text = edited(subject.text, [rewrite(choice, exactly(choice, x))]);
    const tree = parse(text, vocabulary);
    const { chair } = yield* settleSteps({ ...subject, tree });
    const late = valueRow(goal.value)?.late && subject.late;
    return figureOf(late ? yield* lateChairSteps(chair, late) : chair, goal);
  };
  const { low, high, step } = choice;
  const far = (high - low) / 50;
  const found = yield* searchSteps(
    { from: choice.now, at, aim, low, high, fine: step / 3, step: Math.max(step, far), most: MOST },
    figureAt,
  );
  if (!found.moves) return undefined;
  let best: Way | undefined;
  for (const fineness of finenesses(choice)) {
    for (const to of roundings(found.guess, fineness, choice)) {
      const way = yield* stepTo(choice, to, fineness, trying);
      if (way && (!best || nearer(way, best, goal, unit))) best = way;
      if (best?.met) return best;
    }
  }
  return best && Math.abs(best.to - choice.now) > step / 1000 ? best : undefined;
}

/** A whole step first; half and a tenth of one where a whole one would miss. */
const finenesses = ({ step, unit }: Choice): number[] =>
  unit === "in" ? [step, step / 2, step / 4] : [step, step / 2, step / 10];

/** The step nearest to a place and the next on its other side, within the bounds. */
function roundings(place: number, fineness: number, { low, high }: Choice): number[] {
  const near = Math.round(place / fineness) * fineness;
  const other = near + (place >= near ? fineness : -fineness);
  return [near, other].filter((x) => x >= low - fineness * 1e-6 && x <= high + fineness * 1e-6);
}

function* stepTo(
  choice: Choice,
  to: number,
  fineness: number,
  { subject, goal, before }: Trying,
): Steps<Way | undefined> {
  const written = stepped(choice, to, fineness);
  const edits = [rewrite(choice, written)];
  const tried = yield* attemptSteps(subject, edits);
  const got = figureOf(tried.chair, goal);
  if (got === undefined) return undefined;
  const after = knownBy(tried.problems);
  return {
    choice,
    written,
    to,
    edits,
    got,
    met: shortOf(goal, got, tried.design.units) === 0,
    comes: [...after].flatMap(([key, known]) => (before.has(key) ? [] : [known])),
    goes: [...before].flatMap(([key, known]) => (after.has(key) ? [] : [known])),
  };
}

function nearer(a: Way, b: Way, goal: Goal, unit: Study["design"]["units"]): boolean {
  return Math.abs(shortOf(goal, a.got, unit)) < Math.abs(shortOf(goal, b.got, unit));
}
