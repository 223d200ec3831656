/**
 * What is offered for findings: the mends that were tried, accepting with a reason, and all certain mends at once.
 */

import {
  type CodeAction,
  CodeActionKind,
  StringValue,
  type WorkspaceEdit,
} from "vscode-languageserver-types";
import type { Edit, Problem, Span } from "../../grammar/problem.ts";
import { editorSentence } from "../../grammar/sentences/editor-sentence.ts";
import { finish, type Steps } from "../../grammar/steps.ts";
import { asAccepted } from "../design/identity.ts";
import { aboutRules } from "../rules/file/about-rules.ts";
import { changedLines } from "./changed-lines.ts";
import { problemsShown, toDiagnostic, underSettings } from "./diagnostics.ts";
import { fixedText } from "./fix-all.ts";
import type { Settings } from "./settings.ts";
import { meet, textEdit, type View } from "./view.ts";

/** The kind of the action that applies every certain fix of a file. */
export const FIX_ALL = "source.fixAll.seatwright";

interface Asked {
  /** The kinds asked for, all when absent. */
  only?: readonly string[] | undefined;
  /** Whether the editor takes edits that place the caret. */
  placesCaret?: boolean;
}

/** Actions for a stretch of text. */
export const codeActions = (view: View, span: Span, settings: Settings, given?: Asked): CodeAction[] =>
  finish(codeActionSteps(view, span, settings, given));

/** The same, resting as fixes of the whole file are tried. */
export function* codeActionSteps(
  view: View,
  span: Span,
  settings: Settings,
  { only, placesCaret = false }: Asked = {},
): Steps<CodeAction[]> {
  const actions: CodeAction[] = [];
  const shown = problemsShown(view, settings);
  if (asked(CodeActionKind.QuickFix, only)) {
    for (const problem of shown) {
      if (meet(problem, span))
        actions.push(...fixesOf(view, problem), ...acceptOf(view, problem, placesCaret));
    }
  }
  if (only && asked(FIX_ALL, only)) actions.push(...(yield* fixAll(view, shown, settings)));
  return actions;
}

/** Whether actions of a kind are asked for. */
export function asked(kind: string, only: readonly string[] | undefined): boolean {
  return !only || only.some((wanted) => kind === wanted || kind.startsWith(`${wanted}.`));
}

function fixesOf(view: View, problem: Problem): CodeAction[] {
  const mends = problem.mends ?? [];
  return mends.map(({ title, edits }) => ({
    title,
    kind: CodeActionKind.QuickFix,
    diagnostics: [toDiagnostic(view, problem)],
    edit: { changes: { [view.uri]: edits.map((edit) => textEdit(view, edit)) } },
    ...(mends.length === 1 && { isPreferred: true }),
  }));
}

/**
 * Lines that accept the finding, their reason left for the maker to write: on its subject, both sides of a pair, and everywhere. Only
 * what a rule finds in a chair can be accepted. The caret is placed between the quotes where the editor can do so.
 */
function acceptOf(view: View, problem: Problem, placesCaret: boolean): CodeAction[] {
  const rule = view.rules.find(({ code }) => code === problem.code);
  if (!rule?.find || aboutRules.has(rule.code)) return [];
  const subject = problem.subject && asAccepted(problem.subject);
  const targets = subject
    ? [
        { on: ` on ${subject}`, title: editorSentence("action.accept-on", { part: subject }) },
        { on: "", title: editorSentence("action.accept-everywhere") },
      ]
    : [{ on: "", title: editorSentence("action.accept") }];
  return targets.map(({ on, title }) => ({
    title,
    kind: CodeActionKind.QuickFix,
    diagnostics: [toDiagnostic(view, problem)],
    edit: reasonLeftOpen(view, newStatement(view, `accept ${problem.code}${on} because ""`), placesCaret),
  }));
}

/** An edit whose last pair of quotes is to be filled in. */
function reasonLeftOpen(view: View, edit: Edit, placesCaret: boolean): WorkspaceEdit {
  const { range, newText } = textEdit(view, edit);
  if (!placesCaret) return { changes: { [view.uri]: [{ range, newText }] } };
  const quotes = newText.lastIndexOf('""') + 1;
  const plain = (text: string) => text.replace(/[\\$}]/g, "\\$&");
  const snippet = StringValue.createSnippet(
    `${plain(newText.slice(0, quotes))}$1${plain(newText.slice(quotes))}`,
  );
  const textDocument = { uri: view.uri, version: view.document.version };
  return { documentChanges: [{ textDocument, edits: [{ range, snippet }] }] };
}

/** A line of its own after the last `accept`, else at the end of the file. */
function newStatement(view: View, line: string): Edit {
  const text = view.document.getText();
  const newline = text.includes("\r\n") ? "\r\n" : "\n";
  const last = view.tree.statements.filter(({ word }) => word?.text === "accept").at(-1);
  if (last) {
    const from = text.slice(last.end).search(/[\r\n]/);
    const end = from < 0 ? text.length : last.end + from;
    return { start: end, end, text: newline + line };
  }
  const trimmed = text.trimEnd().length;
  const before = trimmed === 0 ? "" : newline + newline;
  return { start: trimmed, end: text.length, text: before + line + newline };
}

/** One action with every certain fix of the file; nothing when there is none. */
function* fixAll(view: View, shown: readonly Problem[], settings: Settings): Steps<CodeAction[]> {
  const text = view.document.getText();
  const fixed = yield* fixedText({
    text,
    problems: shown,
    *reread(other) {
      const problems = yield* view.reread(other);
      return underSettings(problems, settings);
    },
  });
  if (fixed === text) return [];
  const edits = changedLines(text, fixed).map((edit) => textEdit(view, edit));
  return [
    { title: editorSentence("action.fix-all"), kind: FIX_ALL, edit: { changes: { [view.uri]: edits } } },
  ];
}
