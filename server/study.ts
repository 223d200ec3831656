/**
 * Text to everything: the one road from a file's text to its tree, design, chair and findings.
 */
import { parseSteps } from "../grammar/parser.ts";
import { type Problem, shortWords } from "../grammar/problem.ts";
import { finish, type Steps } from "../grammar/steps.ts";
import type { Tree } from "../grammar/tree.ts";
import { vocabulary } from "../grammar/vocabulary/index.ts";
import type { Chair, Failure } from "./chair/chair.ts";
import type { Design } from "./design/design.ts";
import { judgeSteps } from "./rules/judge.ts";
import { settleSteps } from "./settle.ts";

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
}

export interface Asked {
  text: string;
  address: string;
  files: OtherFiles;
  /** The text's tree, if it has been read already. */
  tree?: Tree;
}

/** Reads, evaluates, builds and judges a file. Always a whole study, whatever the text; never throws. */
export const study = (asked: Asked): Study => finish(studySteps(asked));

/** The same, resting after each part of the chair and each rule. */
export function* studySteps({ text, address, files, tree: read }: Asked): Steps<Study> {
  const tree = read ?? (yield* parseSteps(text, vocabulary));
  yield;
  const { design, chair, problems: unsettled } = yield* settleSteps({ tree, address, files });
  const {
    problems: judged,
    accepted,
    failures,
  } = yield* judgeSteps({ tree, design, chair }, [...tree.problems, ...design.problems, ...unsettled]);
  const problems = judged.map((problem) => ({ ...problem, message: shortWords(problem.message) }));
  return {
    address,
    text,
    tree,
    design,
    chair,
    problems,
    accepted,
    failures: [...failuresIn(chair), ...failures],
  };
}

/** What threw while the chair was built and its values worked out. */
function failuresIn({ faults }: Chair): Failure[] {
  return faults.flatMap((fault) => {
    if (fault.is === "failed") return [{ what: fault.what, thrown: fault.thrown }];
    if (fault.is !== "not-buildable" || fault.thrown === undefined) return [];
    return [{ what: fault.part || "the chair", thrown: fault.thrown }];
  });
}
