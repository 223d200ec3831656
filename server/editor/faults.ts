/**
 * Which drawn parts the findings speak of, so that a drawing can mark them.
 */

import type { Severity } from "../../grammar/problem.ts";
import { partsNamed, subjectsNamed } from "../design/identity.ts";
import { messageOf } from "../mends/words.ts";
import { problemsShown } from "./diagnostics.ts";
import type { Settings } from "./settings.ts";
import type { View } from "./view.ts";

export interface Fault {
  /** `A`, `B` … `Z`, `AA` …, in the order of the text. */
  letter: string;
  severity: Severity;
  code: string;
  message: string;
  /** Where its finding stands in the text. */
  at: number;
  /** The drawn parts at fault; none when it speaks of the chair as a whole. */
  parts: FaultyPart[];
}

interface FaultyPart {
  part: string;
  /** The part that its end at fault goes into. */
  towards?: string;
}

/** The errors and warnings that stand under the maker's settings, with those of `drawn` that they speak of. */
export function faultsOf(view: View, settings: Settings, drawn: ReadonlySet<string>): Fault[] {
  return problemsShown(view, settings)
    .filter(({ severity }) => severity === "error" || severity === "warning")
    .slice(0, settings.problemLimit)
    .map((problem, index) => {
      const { severity, code, start, subject, alsoOf = [] } = problem;
      const subjects = subject === undefined ? alsoOf : [subject, ...alsoOf];
      const parts = subjects.flatMap((each) => partsIn(each, drawn));
      return {
        letter: letterOf(index),
        severity,
        code,
        message: messageOf(problem),
        at: start,
        parts: once(parts),
      };
    });
}

/** `seat-side.left to front.left` is of the rail, at the end towards the post; `a and b` is of both. */
function partsIn(subject: string, drawn: ReadonlySet<string>): FaultyPart[] {
  return subjectsNamed(subject).flatMap((each) => {
    const [name = "", into = ""] = partsNamed(each);
    const towards = drawnBy(into, drawn)[0];
    return drawnBy(name, drawn).map((part) => ({ part, ...(towards !== undefined && { towards }) }));
  });
}

/** The part of this name, all those of a pair or row, or the part that a value such as `seat.slope` is of. */
function drawnBy(name: string, drawn: ReadonlySet<string>): string[] {
  if (!name) return [];
  if (drawn.has(name)) return [name];
  const members = [...drawn].filter((part) => part.startsWith(`${name}.`));
  if (members.length) return members;
  const dot = name.lastIndexOf(".");
  return dot < 0 ? [] : drawnBy(name.slice(0, dot), drawn);
}

function once(parts: readonly FaultyPart[]): FaultyPart[] {
  return [...new Map(parts.map((each) => [`${each.part} to ${each.towards ?? ""}`, each])).values()];
}

/** As columns are lettered: after `Z` comes `AA`. */
export function letterOf(index: number): string {
  const last = String.fromCharCode(65 + (index % 26));
  return index < 26 ? last : letterOf(Math.floor(index / 26) - 1) + last;
}
