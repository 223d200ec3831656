/**
 * All rules put to one chair.
 */

import type { Problem, Related } from "../../grammar/problem.ts";
import { sentence } from "../../grammar/sentences/sentence.ts";
import { finish, type Steps } from "../../grammar/steps.ts";
import type { Tree } from "../../grammar/tree.ts";
import type { Chair } from "../chair/chair.ts";
import type { Failure } from "../chair/fault.ts";
import type { AcceptDesign, Design } from "../design/design.ts";
import { partsNamed } from "../design/identity.ts";
import { asksLate } from "../design/values.ts";
import type { Late } from "../strength/late.ts";
import { idleAccepts } from "./file/accept-accepts-nothing.ts";
import { toldFailures } from "./file/internal-error.ts";
import { rules } from "./index.ts";
import { merged, sortedByAccepts } from "./machinery/accepts.ts";
import { type Doubt, doubtIn, withoutMisread } from "./machinery/doubt.ts";
import { boundsOf } from "./machinery/limits.ts";
import { plain } from "./machinery/names.ts";
import { designOf } from "./machinery/place.ts";
import { goesBy, type Rule } from "./machinery/rule.ts";
import type { Finding } from "./machinery/say.ts";

interface Judged {
  tree: Tree;
  design: Design;
  chair: Chair;
  /** What is worked out after the other rules; while it is absent, rules that ask for it alone are not asked. */
  late?: Late;
  /** What each rule found of this chair before; only those that ask for what is late are asked again. */
  before?: ReadonlyMap<string, readonly Finding[]>;
}

export interface Judgement {
  problems: Problem[];
  /** What the file accepts, each with its reason. */
  accepted: { problem: Problem; because: string }[];
  /** Rules that threw, by their codes. */
  failures: Failure[];
  /** What each rule found, by its code, for judging again. */
  found: ReadonlyMap<string, readonly Finding[]>;
}

/**
 * What all rules find, in the order of the text, both sides of a pair told once, less what the file accepts. `also` are the problems of
 * the stages before, which are put among them; a warning there can be accepted too. Never throws: a rule that does costs its own
 * findings alone, and is reported.
 */
export const judge = (of: Judged, also: readonly Problem[] = [], table: readonly Rule[] = rules): Judgement =>
  finish(judgeSteps(of, also, table));

/** The same, resting after each rule, and within those that rest themselves. */
export function* judgeSteps(
  { tree, design, chair, late, before }: Judged,
  earlier: readonly Problem[] = [],
  table: readonly Rule[] = rules,
): Steps<Judgement> {
  const also = withoutMisread(tree, earlier);
  const doubt = doubtIn(chair, [...tree.problems, ...design.problems, ...also]);
  yield;
  const byRule = new Map<string, readonly Finding[]>();
  const failures: Failure[] = [];
  for (const rule of table) {
    if (rule.late === "only" && !late) continue;
    const known = rule.late ? undefined : before?.get(rule.code);
    if (known) {
      byRule.set(rule.code, known);
      continue;
    }
    try {
      const findings = yield* foundBy(rule, { tree, design, chair, ...(late && { late }) }, doubt);
      byRule.set(
        rule.code,
        findings.filter(
          (finding) =>
            !doubt.about(finding.subject ?? "") &&
            !(finding.deciders ?? []).some(doubt.at) &&
            !(rule.code === "cannot-be-built" && doubt.at(finding)),
        ),
      );
    } catch (thrown) {
      failures.push({ what: rule.code, thrown });
    }
    yield;
  }
  const found = [...byRule.values()].flat();
  found.push(...toldFailures(chair, failures));
  const accepts = underTodaysCodes(design.accepts, table);
  const alone = sortedByAccepts(
    found.filter(({ code }) => table.some((rule) => rule.alone && rule.code === code)),
    accepts,
  ).problems;
  const settled = sortedByAccepts(alone.length > 0 ? alone : found, accepts);
  yield;
  const others = sortedByAccepts(
    also.filter(({ severity }) => severity !== "error"),
    accepts,
  );
  yield;
  // Nobody knows what a rule that failed would have found, or one that is yet to be asked.
  const unjudged = new Set([...failures.map(({ what }) => what), ...(late ? [] : waiting(table, design))]);
  const idle =
    doubt.anywhere || alone.length > 0
      ? []
      : settled.idle.filter((line) => others.idle.includes(line) && !unjudged.has(line.rule));
  const told = [...settled.problems, ...idleAccepts(chair, tree.text, idle, rules)];
  const problems = [
    ...also.filter(({ severity }) => severity === "error"),
    ...others.problems,
    ...merged(told).map(({ finding, others: subjects }) => finished(finding, subjects, chair)),
  ];
  const reasons = new Map(settled.accepted.map(({ problem, because }) => [problem, because]));
  const accepted = merged([...reasons.keys()]).map(({ finding, others: subjects }) => ({
    problem: finished(finding, subjects, chair),
    because: reasons.get(finding) ?? "",
  }));
  return {
    problems: problems.sort((a, b) => a.start - b.start || a.end - b.end),
    accepted: [...others.accepted, ...accepted],
    failures,
    found: byRule,
  };
}

/** Codes of the rules that ask for what is worked out late. */
const waiting = (table: readonly Rule[], design: Design): string[] =>
  table.filter(({ late }) => late === "only" || (late === "too" && asksLate(design))).map(({ code }) => code);

/** The lines with the codes that their rules have today. */
const underTodaysCodes = (accepts: readonly AcceptDesign[], table: readonly Rule[]): AcceptDesign[] =>
  accepts.map((line) => ({
    ...line,
    rule: table.find((rule) => goesBy(rule, line.rule))?.code ?? line.rule,
  }));

/** The rules' own findings, without those of the stages before. */
export const findings = (of: Judged): Problem[] => judge(of).problems;

function* foundBy(rule: Rule, { tree, design, chair, late }: Judged, doubt: Doubt): Steps<Finding[]> {
  if (!rule.find || (rule.asksForMissing && doubt.anywhere)) return [];
  const found = rule.find({ tree, design, chair, rules, ...boundsOf(rule, design), ...(late && { late }) });
  return (Array.isArray(found) ? found : yield* found) as Finding[];
}

/** A finding as others see it, with the other parts it speaks of beside it. */
function finished(problem: Finding, subjects: readonly string[], chair: Chair): Problem {
  const related: Related[] = [...(problem.related ?? [])];
  const seen = new Set([plain(problem.subject ?? "")]);
  const alsoOf = subjects.filter((subject) => subject !== problem.subject);
  for (const subject of subjects) {
    const short = plain(subject);
    const part = designOf(chair, partsNamed(subject)[0] ?? "");
    if (seen.has(short) || !part || part.file !== undefined) continue;
    seen.add(short);
    related.push({
      start: part.at.start,
      end: part.at.end,
      message: sentence("related.so-with", { part: short }),
    });
  }
  return {
    ...problem,
    ...(related.length > 0 && { related }),
    ...(alsoOf.length > 0 && { alsoOf }),
  };
}
