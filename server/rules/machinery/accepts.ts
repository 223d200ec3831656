/**
 * What `accept … because` lines set aside.
 */

import type { Problem } from "../../../grammar/problem.ts";
import type { AcceptDesign } from "../../design/design.ts";
import { covers as namesPart, partsNamed } from "../../design/identity.ts";
import type { Finding } from "./say.ts";

interface Settled<P extends Problem> {
  problems: P[];
  accepted: { problem: P; because: string }[];
  /** Lines that set nothing aside. */
  idle: AcceptDesign[];
}

/** Sorts findings into those that stand and those that a line of the file accepts. Errors of the text itself cannot be accepted. */
export function sortedByAccepts<P extends Problem>(
  problems: readonly P[],
  accepts: readonly AcceptDesign[],
): Settled<P> {
  const used = new Set<AcceptDesign>();
  const standing: P[] = [];
  const accepted: Settled<P>["accepted"] = [];
  for (const problem of problems) {
    const line = accepts.find((each) => accepting(each, problem));
    if (!line) {
      standing.push(problem);
      continue;
    }
    used.add(line);
    accepted.push({ problem, because: line.because?.value ?? "" });
  }
  return { problems: standing, accepted, idle: accepts.filter((each) => !used.has(each)) };
}

function accepting(line: AcceptDesign, problem: Problem): boolean {
  if (line.rule !== problem.code || !line.because?.value.trim()) return false;
  return line.on === undefined || covers(line.on.value, problem.subject ?? "");
}

/** Whether what an `accept` names covers a finding's subject: a pair's name both sides, a row's all its members, a part all its joints. */
export function covers(named: string, subject: string): boolean {
  const subjects = partsNamed(subject);
  return partsNamed(named).every((name) => subjects.some((each) => namesPart(name, each)));
}

/** Badness that differs by less than this share of itself is the same: two twins differ by rounding alone. */
const SAME = 1e-6;

/** Findings that say the same on the same place become one, the worst, of equals the first; what else they speak of is kept. */
export function merged(findings: readonly Finding[]): { finding: Finding; others: string[] }[] {
  const groups = new Map<string, Finding[]>();
  for (const finding of findings) {
    const key = `${finding.code} ${finding.start} ${finding.end}`;
    const group = groups.get(key);
    if (group) group.push(finding);
    else groups.set(key, [finding]);
  }
  return [...groups.values()].map((group) => {
    const worst = group.reduce((a, b) => (b.badness > a.badness + SAME * (1 + Math.abs(a.badness)) ? b : a));
    return { finding: worst, others: group.flatMap((each) => each.subject ?? []) };
  });
}
