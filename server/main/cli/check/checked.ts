import type { TextDocument } from "vscode-languageserver-textdocument";
import type { Problem } from "../../../../grammar/problem.ts";
import type { Study } from "../../../study.ts";

/** A file that was checked, or why it could not be. */
export type Checked =
  | { file: string; refused: string }
  | {
      file: string;
      document: TextDocument;
      study: Study;
      /** Of the study, or of these those that are new. */
      problems: readonly Problem[];
      accepted: Study["accepted"];
    };

export type CheckedFile = Extract<Checked, { study: Study }>;

export const isRead = (checked: Checked): checked is CheckedFile => "study" in checked;
