/**
 * A file with other figures in it: written into the text, read and worked out as if the maker had typed it.
 */
import type { Edit } from "../../grammar/problem.ts";
import type { Steps } from "../../grammar/steps.ts";
import type { Chair } from "../chair/chair.ts";
import type { Rule } from "../rules/machinery/rule.ts";
import type { LateWork } from "../strength/late.ts";
import { type OtherFiles, type Study, studySteps } from "../study.ts";
import { edited } from "./choice.ts";
import type { MovedText } from "./moving.ts";

/** The file that is asked about. */
export interface Subject {
  text: string;
  address: string;
  files: OtherFiles;
  /** Works out what is late as well, where that is asked about. */
  late?: LateWork;
  lateWhen?: "required";
  /** The chair of the text or of a place tried before, for the parts that stay as they are. */
  earlier?: Pick<Chair, "made">;
}

/** All that is known of the file with some edits made. */
export const attemptSteps = (subject: Subject, edits: readonly Edit[]): Steps<Study> =>
  studySteps({ ...subject, text: edited(subject.text, edits) });

/** The same of the file with a text that stands for its own; `rules` alone are asked where they are given. */
export const textSteps = (subject: Subject, moved: MovedText, rules?: readonly Rule[]): Steps<Study> =>
  studySteps({ ...subject, ...moved, ...(rules && { rules }) });
