/**
 * Text to everything: the one road from a file's text to its tree, design, chair and findings.
 */
import { parseSteps } from "../grammar/parser.ts";
import { type Problem, shortWords } from "../grammar/problem.ts";
import { finish, type Steps } from "../grammar/steps.ts";
import type { Tree } from "../grammar/tree.ts";
import { vocabulary } from "../grammar/vocabulary/index.ts";
import type { Chair, Worked } from "./chair/chair.ts";
import type { Failure } from "./chair/fault.ts";
import type { Design } from "./design/design.ts";
import { asksLate } from "./design/values.ts";
import { isOfReading } from "./rules/file/language.ts";
import { type Judgement, judgeSteps } from "./rules/judge.ts";
import type { Rule } from "./rules/machinery/rule.ts";
import { settleSteps } from "./settle.ts";
import type { Late, LateWork } from "./strength/late.ts";

/** Gives the text of another file named by `use` or `like`, or nothing if there is none. `address` is already resolved. */
export interface OtherFiles {
  /** The address of a path written in the file at `from`; nothing when a file must not name such a place. */
  resolve(from: string, path: string): string | undefined;
  read(address: string): string | undefined;
}

/** All that is known of one version of one file. */
export interface Study {
  address: string;
  text: string;
  tree: Tree;
  design: Design;
  chair: Chair;
  /** In the order of the text; accepted findings are left out. */
  problems: Problem[];
  /** Findings that the file accepts with a reason. */
  accepted: { problem: Problem; because: string }[];
  /** What threw on the way, for the log; the maker has a finding for each. */
  failures: Failure[];
  /** What is worked out after the findings, once it is; its values are then among the chair's, its findings among the problems. */
  late?: Late;
  /** The study as it was before. */
  quick?: Study;
  /** How that is worked out, for whoever tries a change of the text. */
  lateWork?: LateWork;
  /** What the problems were put together from, for putting them together again. */
  grounds: Grounds;
}

interface Grounds {
  also: readonly Problem[];
  found: Judgement["found"];
}

export interface Asked {
  text: string;
  address: string;
  files: OtherFiles;
  /** The text's tree, if it has been read already. */
  tree?: Tree;
  /** The chair of an earlier version: parts that are the same are taken over from it, which changes nothing but the time. */
  earlier?: Pick<Chair, "made">;
  /** Works out what is late as well: always, or only where a line of the file requires it. */
  late?: LateWork;
  lateWhen?: "required";
  /** Asks these rules alone, for whoever wants no more. */
  rules?: readonly Rule[];
}

/** Reads, evaluates, builds and judges a file. Always a whole study, whatever the text; never throws. */
export const study = (asked: Asked): Study => finish(studySteps(asked));

/** The same, resting after each part of the chair and each rule. */
export function* studySteps(asked: Asked): Steps<Study> {
  const quick = yield* quickSteps(asked);
  const { late, lateWhen } = asked;
  return late && (lateWhen !== "required" || asksLate(quick.design))
    ? yield* deepenSteps(quick, late)
    : quick;
}

function* quickSteps({ text, address, files, tree: read, rules, earlier }: Asked): Steps<Study> {
  const tree = read ?? (yield* parseSteps(text, vocabulary));
  yield;
  const {
    design,
    chair,
    problems: unsettled,
  } = yield* settleSteps({ tree, address, files, ...(earlier && { earlier }) });
  const also = [...tree.problems, ...design.problems, ...unsettled];
  const judged = yield* judgeSteps({ tree, design, chair }, also, rules);
  yield;
  return {
    address,
    text,
    tree,
    design,
    chair,
    ...shown(chair, judged),
    grounds: { also, found: judged.found },
  };
}

/**
 * A study with what is worked out after the findings: how hard joints and parts work, how the wood moves. Rests within. When that fails,
 * the study as it was, with the failure.
 */
export function* deepenSteps(study: Study, work: LateWork): Steps<Study> {
  const { tree, design, chair: quick, grounds } = study;
  let late: Late;
  try {
    late = yield* work(quick);
  } catch (thrown) {
    return { ...study, failures: [...study.failures, { what: "strength and moisture", thrown }] };
  }
  const chair = { ...quick, values: withLate(quick.values, late) };
  const judged = yield* judgeSteps({ tree, design, chair, late, before: grounds.found }, grounds.also);
  const now = shown(chair, judged);
  return {
    ...study,
    chair,
    ...now,
    problems: now.problems.map(withMends(study)),
    late,
    lateWork: work,
    quick: study,
  };
}

/** A finding about the text itself with the mends that were tried for it before: those need not hold with what is late. */
function withMends({ problems }: Study): (problem: Problem) => Problem {
  const keyOf = ({ code, start, end, message }: Problem) => `${code} ${start} ${end} ${message}`;
  const tried = new Map(
    problems.flatMap((each) => (each.mends && isOfReading(each) ? [[keyOf(each), each.mends] as const] : [])),
  );
  return (problem) => {
    const mends = tried.get(keyOf(problem));
    return mends ? { ...problem, mends } : problem;
  };
}

/** A chair with its late values among the others, after those of how it tips. */
export function* lateChairSteps(chair: Chair, work: LateWork): Steps<Chair> {
  return { ...chair, values: withLate(chair.values, yield* work(chair)) };
}

function withLate(values: Chair["values"], { values: late }: Late): Chair["values"] {
  const all = new Map<string, Worked>();
  const whole = late.filter(({ part }) => part === undefined);
  const put = () => {
    for (const value of whole) if (!all.has(value.name)) all.set(value.name, value);
  };
  for (const [name, worked] of values) {
    if (name.startsWith("seat.")) put();
    all.set(name, worked);
  }
  put();
  for (const value of late) all.set(value.name, value);
  return all;
}

const shown = (
  chair: Chair,
  { problems, accepted, failures }: Judgement,
): Pick<Study, "problems" | "accepted" | "failures"> => ({
  problems: problems.map((problem) => ({ ...problem, message: shortWords(problem.message) })),
  accepted,
  failures: [...failuresIn(chair), ...failures],
});

/** What threw while the chair was built and its values worked out. */
function failuresIn({ faults }: Chair): Failure[] {
  return faults.flatMap((fault) => {
    if (fault.is === "failed") return [{ what: fault.what, thrown: fault.thrown }];
    if (fault.is !== "not-buildable" || fault.thrown === undefined) return [];
    return [{ what: fault.part || "the chair", thrown: fault.thrown }];
  });
}
