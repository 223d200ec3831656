import type { TextDocument } from "vscode-languageserver-textdocument";
import type { Span } from "../../../grammar/problem.ts";
import { harmless } from "./terminal.ts";

/** Longest stretch of a line shown. */
const WIDEST = 110;

/** The line a span begins on, with marks under the span: two lines, or nothing when the line is empty or too long to help. */
export function excerpt(document: TextDocument, span: Span): { line: string; marks: string } | undefined {
  const start = document.positionAt(span.start);
  const end = document.positionAt(span.end);
  const line = document
    .getText({ start: { line: start.line, character: 0 }, end: { line: start.line + 1, character: 0 } })
    .replace(/[\r\n]+$/, "");
  if (!line.trim() || line.length > WIDEST) return undefined;
  const until = end.line === start.line ? end.character : line.length;
  const width = Math.max(1, Math.min(until, line.length) - start.character);
  const before = line.slice(0, start.character).replace(/[^\t]/g, " ");
  return { line: harmless(line), marks: before + "^".repeat(width) };
}
