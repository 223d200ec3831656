/**
 * Findings as ranges and reached figures compare them: known by what they say of what, never by their place in the text.
 */
import type { Problem } from "../../grammar/problem.ts";

/** A finding without its place. */
export interface Known {
  code: string;
  subject: string;
  severity: "error" | "warning";
  message: string;
  /** How far past its limit it is, in the rule's own measure; absent or 0 where the rule does not say. */
  badness?: number;
}

/** The errors and warnings, each once, by a key that stays the same while the text moves. A requirement is known by what it asks. */
export function knownBy(problems: readonly Problem[]): Map<string, Known> {
  const found = new Map<string, Known>();
  for (const { code, subject = "", severity, message, allowed, badness } of problems) {
    if (severity !== "error" && severity !== "warning") continue;
    const asked = code === "requirement-not-met" ? `|${allowed ?? ""}` : "";
    const key = `${code}|${subject}${asked}`;
    if (!found.has(key))
      found.set(key, { code, subject, severity, message, ...(badness !== undefined && { badness }) });
  }
  return found;
}

/** Whether two sets of findings are of the same things. */
export const sameFound = (a: ReadonlyMap<string, Known>, b: ReadonlyMap<string, Known>): boolean =>
  a.size === b.size && [...a.keys()].every((key) => b.has(key));
