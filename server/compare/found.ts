/**
 * What is found in one chair and not in the other, and what is found in both but worse or better.
 */
import type { Problem, Severity } from "../../grammar/problem.ts";
import { type Called, dotted } from "./spelled.ts";

export interface Found {
  new: Problem[];
  gone: Problem[];
  changed: { old: Problem; new: Problem; worse: boolean }[];
}

const weights: Readonly<Record<Severity, number>> = { hint: 0, information: 1, warning: 2, error: 3 };

/** Compares the findings of two files; one of the same rule about the same part is the same finding. */
export function foundBetween(old: readonly Problem[], now: readonly Problem[], called: Called): Found {
  const found: Found = { new: [], gone: [], changed: [] };
  const left = old.map((problem) => ({ problem, ...told(problem, called) }));
  const take = (fits: (each: (typeof left)[number]) => boolean) => {
    const at = left.findIndex(fits);
    return at < 0 ? undefined : left.splice(at, 1)[0];
  };
  const asBefore = (problem: Problem) => {
    const { about, message } = told(problem, (name) => name);
    return (
      take(
        (each) => each.about === about && each.message === message && sameFigures(each.problem, problem),
      ) !== undefined
    );
  };
  for (const problem of now.filter((each) => !asBefore(each))) {
    const { about } = told(problem, (name) => name);
    const was = take((each) => each.about === about);
    if (was === undefined) found.new.push(problem);
    else found.changed.push({ old: was.problem, new: problem, worse: isWorse(was.problem, problem) });
  }
  found.gone = left.map(({ problem }) => problem);
  return found;
}

/**
 * What a finding is about, and its sentence, names as `called` gives them. Of several parts of which the same is true the one that the
 * sentence names is a matter of order.
 */
function told({ code, subject = "", alsoOf = [], message }: Problem, called: Called) {
  const named = (each: string) =>
    each
      .split(/( to | and )/)
      .map((name) => dotted(name, called))
      .join("");
  const about = [subject, ...alsoOf].map(named).sort();
  return {
    about: `${code} ${about.join(", ")}`,
    message: alsoOf.length > 0 ? "" : message.replace(/[\p{L}][\p{L}\p{N}-]*/gu, called),
  };
}

const sameFigures = (a: Problem, b: Problem): boolean =>
  a.severity === b.severity && a.found === b.found && a.allowed === b.allowed;

/** Further from what is allowed than before, or taken more seriously, or true of more parts. */
function isWorse(old: Problem, now: Problem): boolean {
  const weight = weights[now.severity] - weights[old.severity];
  if (weight !== 0) return weight > 0;
  const [before, after] = [beyond(old), beyond(now)];
  if (before !== undefined && after !== undefined && Math.abs(before - after) > 1e-9) return after > before;
  return (now.alsoOf?.length ?? 0) > (old.alsoOf?.length ?? 0);
}

/** By how much a figure is outside what is allowed, in its unit; undefined when the two are not figures. */
function beyond({ found, allowed }: Problem): number | undefined {
  const figure = figuresIn(found)[0];
  const limits = figuresIn(allowed);
  if (figure === undefined || limits.length === 0) return undefined;
  const [low, high] = [Math.min(...limits), Math.max(...limits)];
  if (/more/.test(allowed ?? "")) return low - figure;
  if (/less/.test(allowed ?? "")) return figure - high;
  return Math.max(low - figure, figure - high);
}

/** The figures in a printed text: `4.8 mm`, `1 3/8 in`, `1 : 8.2`. */
function figuresIn(text = ""): number[] {
  return [...text.replaceAll("−", "-").matchAll(/(-?\d+) (\d+)\/(\d+)|(-?\d+)\/(\d+)|-?\d+(?:\.\d+)?/g)].map(
    ([all, whole, top, bottom, over, under]) => {
      if (bottom !== undefined)
        return Number(whole) + Math.sign(Number(whole) || 1) * (Number(top) / Number(bottom));
      return under === undefined ? Number(all) : Number(over) / Number(under);
    },
  );
}
