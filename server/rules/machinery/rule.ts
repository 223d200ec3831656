import type { Fix, Problem, Severity } from "../../../grammar/problem.ts";
import { finish, type Steps } from "../../../grammar/steps.ts";
import type { Tree } from "../../../grammar/tree.ts";
import type { Chair } from "../../chair/chair.ts";
import type { Bound, Design, Dimension } from "../../design/design.ts";
import type { Late } from "../../strength/late.ts";

/** What a figure without a unit of its own is: how the reference prints it. */
type What = "share of the rail" | "share of the post" | "slope" | "as margin" | "times the thickness";

/** A rule: its row in the table and the function that finds its faults. One file each; `CODE.chair` beside it is a chair that breaks it. */
export interface Rule {
  /** Kebab case, such as `tenon-too-thin`. */
  code: string;
  /** Codes that it had before: they still work in `accept`, `limit`, settings and `explain`. */
  was?: readonly string[];
  severity: Severity;
  /** A few words for lists and settings. */
  title: string;
  /** A paragraph or two in plain sentences for `explain`, hovers and the reference: why it matters, the figure, what to do. */
  explanation: string;
  /** Where the figures come from; "common practice" where no print stands behind it. */
  source: string;
  /** The figure that `limit` can change, in its own dimension, with the built-in value. */
  limit?: Bound & { dimension: Dimension; of?: What };
  /** A second figure of the same rule, told from the first by its dimension, which `limit` can change too. */
  also?: Bound & { dimension: Dimension };
  /** Asks after what is missing, or after the whole chair: keeps quiet while errors in the text may be why. */
  asksForMissing?: true;
  /**
   * Asks what is worked out after the other rules (`RuleContext.late`): `only`, or `too`, beside what is known at once. `only` rules are
   * not asked before.
   */
  late?: "only" | "too";
  /** While it finds something, nothing else is said of the chair: the rest follows from it. */
  alone?: true;
  /**
   * Absent for the language's own rules, which the earlier stages report. One that compares many solids is a generator, so that
   * others are answered in between.
   */
  find?: (at: RuleContext) => Problem[] | Steps<Problem[]>;
}

/** Whether a rule goes by this code, today or before it was renamed. */
export const goesBy = (rule: Pick<Rule, "code" | "was">, code: string): boolean =>
  rule.code === code || rule.was?.includes(code) === true;

/** What a rule finds, at one go. */
export function allFound(rule: Rule, at: RuleContext): Problem[] {
  const found = rule.find?.(at) ?? [];
  return Array.isArray(found) ? found : finish(found);
}

export interface RuleContext {
  tree: Tree;
  design: Design;
  chair: Chair;
  /** The rule's figure after any `limit` of the file. */
  limit: Bound;
  /** The same for its second figure. */
  also: Bound;
  /** The whole table, for the rules that judge the lines about rules. */
  rules: readonly Rule[];
  /** What is worked out after the other rules, once it is. */
  late?: Late;
}

export type { Fix };
