/**
 * A finding in words: what is wrong, and, once it has been tried, what puts it right.
 */
import type { Problem } from "../../grammar/problem.ts";
import { aboutRules } from "../rules/file/about-rules.ts";
import { isOfReading } from "./trial.ts";

/** The whole message. A finding of reading, or of a line about rules, says itself what to do. */
export function messageOf(problem: Problem): string {
  const { message, mends, otherwise } = problem;
  if (!mends || isOfReading(problem) || aboutRules.has(problem.code)) return message;
  if (mends.length > 0)
    return `${message} What works: ${mends.map(({ title }) => lower(title)).join("; or ")}.`;
  return `${message} ${otherwise ?? "No change of one figure was found that puts it right without a new finding."}`;
}

const lower = (title: string): string => title.charAt(0).toLowerCase() + title.slice(1);
