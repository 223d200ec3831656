/**
 * Findings as the editor shows them.
 */

import { type Diagnostic, DiagnosticSeverity, DiagnosticTag } from "vscode-languageserver-types";
import type { Problem, Severity } from "../../grammar/problem.ts";
import { editorSentence } from "../../grammar/sentences/editor-sentence.ts";
import { messageOf } from "../mends/words.ts";
import { ruleOf } from "../rules/index.ts";
import type { Level, Settings } from "./settings.ts";
import { rangeOf, type View } from "./view.ts";

/** Shown as the sender of every diagnostic. */
const SOURCE = "seatwright";

const severities: Record<Severity, DiagnosticSeverity> = {
  error: DiagnosticSeverity.Error,
  warning: DiagnosticSeverity.Warning,
  information: DiagnosticSeverity.Information,
  hint: DiagnosticSeverity.Hint,
};

/** Rules about text that does nothing: the editor fades it. */
const fading = new Set(["accept-accepts-nothing"]);

/** The file's findings under the maker's settings, in the order of the text, at most `problemLimit` of them with a note for the rest. */
export function diagnostics(view: View, settings: Settings): Diagnostic[] {
  const shown = problemsShown(view, settings);
  const listed = shown.slice(0, settings.problemLimit).map((problem) => toDiagnostic(view, problem));
  const rest = shown.length - listed.length;
  if (rest > 0) listed.push(note(rest));
  return listed;
}

/** The findings left after settings have silenced some and changed the severity of others. */
export const problemsShown = (view: View, settings: Settings): Problem[] =>
  underSettings(view.study.problems, settings);

/** The same of any findings. */
export function underSettings(problems: readonly Problem[], settings: Settings): Problem[] {
  const shown: Problem[] = [];
  for (const problem of problems) {
    const level = levelOf(settings, problem.code);
    if (level === "off") continue;
    shown.push(level ? { ...problem, severity: level } : problem);
  }
  return shown;
}

/**
 * What the maker set for a rule. An editor sends a rule's own severity where nothing is set; then what is set for a code that it had
 * before counts.
 */
function levelOf(settings: Settings, code: string): Level | undefined {
  const rule = ruleOf(code);
  const today = settings.rules[code];
  if (!rule?.was || (today !== undefined && today !== rule.severity)) return today;
  return rule.was.map((old) => settings.rules[old]).find((level) => level !== undefined) ?? today;
}

/** One finding as a diagnostic. */
export function toDiagnostic(view: View, problem: Problem): Diagnostic {
  const diagnostic: Diagnostic = {
    range: rangeOf(view.document, problem),
    severity: severities[problem.severity],
    code: problem.code,
    source: SOURCE,
    message: messageOf(problem),
  };
  if (fading.has(problem.code)) diagnostic.tags = [DiagnosticTag.Unnecessary];
  const related = relatedInformation(view, problem);
  if (related.length) diagnostic.relatedInformation = related;
  return diagnostic;
}

function relatedInformation(view: View, problem: Problem) {
  return (problem.related ?? []).flatMap((related) => {
    const document = related.file && related.file !== view.uri ? view.other(related.file) : view.document;
    if (!document) return [];
    return [
      {
        location: { uri: related.file ?? view.uri, range: rangeOf(document, related) },
        message: related.message,
      },
    ];
  });
}

function note(rest: number): Diagnostic {
  return {
    range: { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } },
    severity: DiagnosticSeverity.Information,
    source: SOURCE,
    message:
      rest === 1 ? editorSentence("findings.more-one") : editorSentence("findings.more", { count: rest }),
  };
}
