/**
 * What an editor feature is given: one version of one file, and the means to look at the files it names.
 */

import type { TextDocument } from "vscode-languageserver-textdocument";
import type { TextEdit, Range as TextRange } from "vscode-languageserver-types";
import type { Edit, Problem, Span } from "../../grammar/problem.ts";
import type { Vocabulary } from "../../grammar/row.ts";
import type { Steps } from "../../grammar/steps.ts";
import type { Tree } from "../../grammar/tree.ts";
import type { Chair } from "../chair/chair.ts";
import type { Range } from "../range/bands.ts";
import type { Rule } from "../rules/machinery/rule.ts";
import type { LateWork } from "../strength/late.ts";
import type { OtherFiles, Study } from "../study.ts";
import type { Outline } from "./names/outline.ts";

export interface View {
  uri: string;
  document: TextDocument;
  /** Read at once; features that need no more than the text ask only for this. */
  readonly tree: Tree;
  /** The names in it, read off without working anything out. */
  readonly outline: Outline;
  /** All that is worked out; costs the whole road the first time it is asked for. */
  readonly study: Study;
  /** The way to the study, for whoever has other things to do in between; several may go it together. */
  work(): Steps<Study>;
  /** The last whole study of this file, perhaps of an earlier version of its text; nothing before the first. */
  readonly lastStudy: Study | undefined;
  /** Works out what is late of the study, which has it from then on; nothing where it has it already. */
  deepen(work: LateWork): Steps<void>;
  /** What is found in another text in this one's place, as it would be if a fix were applied. */
  reread(text: string): Steps<readonly Problem[]>;
  /** The chair of a tree that differs from this file's in some figure; nothing is kept of it. */
  rework(tree: Tree): Chair;
  /** Tries mends for findings of the study, which then carry them; of those that have not been tried yet. */
  mend(problems: readonly Problem[]): Steps<void>;
  /** The files it names, as its study reads them. */
  files: OtherFiles;
  /** Ranges of its choices that have been worked out for this version, by the choice's name. */
  ranges: Map<string, Range>;
  vocabulary: Vocabulary;
  rules: readonly Rule[];
  /** Another file's text by its address, if it can be had now. */
  other(address: string): TextDocument | undefined;
  /** The address of a file named in this one by `use` or `like`; nothing when it must not name such a place. */
  resolve(path: string): string | undefined;
}

/** As much of a view as completion asks for: the tree of the text as it is, the study perhaps of an earlier version. */
export type Known = Pick<View, "document" | "tree" | "study" | "vocabulary" | "rules">;

/** A span as line and character places. */
export function rangeOf(document: TextDocument, span: Span): TextRange {
  return { start: document.positionAt(span.start), end: document.positionAt(span.end) };
}

/** Whether two ranges share a place; ranges that only touch do. */
export function meet(a: Span, b: Span): boolean {
  return a.start <= b.end && b.start <= a.end;
}

/** An edit of the text as the protocol has it. */
export function textEdit({ document }: View, edit: Edit): TextEdit {
  return { range: rangeOf(document, edit), newText: edit.text };
}

/** Line and character places as a span. */
export function spanOf(document: TextDocument, { start, end }: TextRange): Span {
  return { start: document.offsetAt(start), end: document.offsetAt(end) };
}
