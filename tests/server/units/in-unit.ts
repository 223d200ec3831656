/**
 * Chairs in another unit: every bare length of a text written anew, so that the same chair stands in inches or centimetres.
 */
import { bareLengthsOf } from "../../../grammar/bare-lengths.ts";
import { fileUnit, parse } from "../../../grammar/parser.ts";
import type { Statement, Value } from "../../../grammar/tree.ts";
import { vocabulary } from "../../../grammar/vocabulary/index.ts";
import { everyStatement } from "../../../grammar/walk.ts";
import { ruleOf } from "../../../server/rules/index.ts";

export type Unit = "mm" | "cm" | "in";
const sizes: Record<string, number> = { mm: 1, cm: 10, in: 25.4 };

/** The same chair with its bare lengths in a unit; a bare figure of `limit` or `require` carries the unit that it had. */
export function inUnit(text: string, unit: Unit): string {
  const before = fileUnit(text);
  const edits: { start: number; end: number; text: string }[] = [];
  for (const statement of everyStatement(parse(text, vocabulary).statements)) {
    for (const { start, end, number } of bareLengthsOf(statement)) {
      const figure = Number(((number * sizes[before]!) / sizes[unit]!).toFixed(4));
      edits.push({ start, end, text: String(figure) });
    }
    for (const { end } of bareBounds(statement)) edits.push({ start: end, end, text: before });
  }
  const written = edits
    .sort((a, b) => b.start - a.start)
    .reduce((whole, each) => whole.slice(0, each.start) + each.text + whole.slice(each.end), text);
  const line = /^[ \t]*units[ \t]+(mm|cm|in)\b.*$/m;
  return line.test(written) ? written.replace(line, `units ${unit}`) : `units ${unit}\n${written}`;
}

/** Bare figures that a value of length, or a rule of lengths, is held to. */
function bareBounds({ row, match }: Statement): Value[] {
  const [subject, ...rest] = match?.facts ?? [];
  const isLength =
    row?.word === "require"
      ? subject?.value?.is === "name" && /(height|width|depth|length|top)$/.test(subject.value.name)
      : row?.word === "limit" && ruleOf(subject?.name ?? "")?.limit?.dimension === "length";
  return isLength ? rest.flatMap(({ value }) => (value?.is === "number" ? [value] : [])) : [];
}
