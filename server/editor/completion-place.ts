/**
 * Where in a statement a place lies, and what the vocabulary lets stand there.
 */
import type { Span } from "../../grammar/problem.ts";
import type { Row, Shape } from "../../grammar/row.ts";
import { matchRow } from "../../grammar/shape.ts";
import { tableOf } from "../../grammar/table.ts";
import type { Kind, Statement } from "../../grammar/tree.ts";
import { blockAt, lineAt } from "../../grammar/walk.ts";
import type { View } from "./view.ts";

/** What may stand at a place, and the text that it would take the place of. */
export type Opening = { replace: Span } & (
  | { is: "statement"; rows: readonly Row[]; given: boolean }
  | { is: "unit" }
  | { is: "rest"; shapes: readonly Shape[]; row: Row; owner: string | undefined }
);

/** What may stand at a place; nothing inside quoted text or after a word that is not known. */
export function whatMayStand(view: View, offset: number): Opening | undefined {
  const { text } = view.tree;
  const lineStart = Math.max(text.lastIndexOf("\n", offset - 1), text.lastIndexOf("\r", offset - 1)) + 1;
  const before = text.slice(lineStart, offset);
  if (insideText(before)) return undefined;
  const typed = /[\p{L}\d_.\-%]*$/u.exec(before)?.[0] ?? "";
  const after = /^[\p{L}\d_.\-%]*/u.exec(text.slice(offset))?.[0] ?? "";
  const number = /^-?\d+(?:\.\d+)?(\p{L}*|%)$/u.exec(typed);
  if (number) {
    const unit = number[1] ?? "";
    return { is: "unit", replace: { start: offset - unit.length, end: offset } };
  }
  const replace = { start: offset - typed.length, end: offset + after.length };
  const block = blockAt(view.tree, offset);
  const statement = lineAt(view.tree, offset);
  const kind: Kind = block?.block?.kind ?? "file";
  if (!statement?.word || replace.start <= statement.word.start) {
    const siblings = block?.block?.statements ?? view.tree.statements;
    return {
      is: "statement",
      replace,
      rows: rowsLeft(view, kind, siblings, statement),
      given: statement?.block !== undefined,
    };
  }
  return rest(view, statement, kind, replace, before.slice(0, before.length - typed.length));
}

/** Statements of this kind of block that may still be given, those with a question of their own answered left out. */
function rowsLeft(
  view: View,
  kind: Kind,
  siblings: readonly Statement[],
  current: Statement | undefined,
): Row[] {
  const answered = new Set(
    siblings.flatMap(({ row, ...at }) => (row && at.start !== current?.start ? [facetOf(row)] : [])),
  );
  return view.vocabulary.rows.filter(
    (row) => row.owner === kind && (row.many || !answered.has(facetOf(row))),
  );
}

function facetOf({ facet, word }: Row): string {
  return facet ?? word;
}

function rest(
  view: View,
  statement: Statement,
  kind: Kind,
  replace: Span,
  before: string,
): Opening | undefined {
  const rows = tableOf(view.vocabulary).rows(statement.row?.owner ?? kind, statement.word?.text ?? "");
  const owner = nameOf(statement) ?? nameOf(statement.owner);
  const parts = statement.parts.filter((part) => part.end <= replace.start);
  const reached = rows
    .map((row) => ({ row, match: matchRow(row, parts) }))
    .filter(({ match }) => match.stopped === parts.length);
  const [first] = reached;
  const row = statement.row ?? first?.row;
  if (!row) return undefined;
  if (operandWanted(before)) return { is: "rest", replace, shapes: [operand], row, owner };
  if (!first) return undefined;
  return { is: "rest", replace, shapes: reached.flatMap(({ match }) => match.expected), row, owner };
}

const operand: Shape = { is: "slot", slot: "value", label: "value" };

/** After a sign of arithmetic, or inside parentheses, an expression goes on. */
function operandWanted(before: string): boolean {
  const open = before.split("(").length - before.split(")").length;
  return open > 0 || /(?:\s[-+]|[*/(])\s*$/.test(before);
}

function nameOf(statement: Statement | undefined): string | undefined {
  return statement?.match?.facts.find(({ slot }) => slot === "name")?.name;
}

/** Whether a line's beginning ends inside quoted text or a comment. */
function insideText(before: string): boolean {
  let quoted = false;
  for (let at = 0; at < before.length; at++) {
    if (quoted && before[at] === "\\") at++;
    else if (before[at] === '"') quoted = !quoted;
    else if (before[at] === "#" && !quoted) return true;
  }
  return quoted;
}
