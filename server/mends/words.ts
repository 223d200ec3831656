/**
 * A finding in words: what is wrong, and, once it has been tried, what puts it right.
 */
import type { Problem } from "../../grammar/problem.ts";
import { isOfReading } from "./trial.ts";

/** The whole message. A finding of reading already asks whether the nearest word was meant. */
export function messageOf(problem: Problem): string {
  const { message, mends, otherwise } = problem;
  if (!mends || isOfReading(problem)) return message;
  if (mends.length > 0)
    return `${message} What works: ${mends.map(({ title }) => lower(title)).join("; or ")}.`;
  return `${message} ${otherwise ?? "No change of one figure was found that puts it right without a new finding."}`;
}

const lower = (title: string): string => title.charAt(0).toLowerCase() + title.slice(1);
