/**
 * What the server and the command line put to work, as both know it.
 */
import type { Problem } from "../../grammar/problem.ts";
import type { Vocabulary } from "../../grammar/row.ts";
import type { Steps } from "../../grammar/steps.ts";
import type { Tree } from "../../grammar/tree.ts";
import type { Chair } from "../chair/chair.ts";
import type { Behind, OverlayName, Sheet } from "../drawing/sheet.ts";
import type { Rule } from "../rules/machinery/rule.ts";
import type { LateWork } from "../strength/late.ts";
import type { Asked, OtherFiles, Study } from "../study.ts";

export interface Services {
  vocabulary: Vocabulary;
  rules: readonly Rule[];
  parse(text: string): Steps<Tree>;
  study(asked: Asked): Steps<Study>;
  deepen(study: Study, work: LateWork): Steps<Study>;
  /** Loads what works out how strong a chair is and how its wood moves. */
  late(): Promise<LateWork>;
  settle(from: { tree: Tree; address: string; files: OtherFiles }): { chair: Chair };
  mend(study: Study, files: OtherFiles, problems: readonly Problem[]): Steps<void>;
  draw(chair: Chair, asked?: readonly OverlayName[], behind?: Behind): Steps<Sheet>;
}
