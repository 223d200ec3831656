/**
 * Which worked-out values stand under the pointer, so that it can be told which figures of the text move them.
 */
import type { Statement } from "../../../grammar/tree.ts";
import { lineAt } from "../../../grammar/walk.ts";
import { workedValue } from "../../chair/values/values.ts";
import { commentAt, factsAt, headEnd, valueAt, valuesAt, within } from "../names/place.ts";
import type { View } from "../view.ts";

/** What a header's name is asked for: the values that its own hover shows. */
const ofHeaders: Record<string, (name: string) => string[]> = {
  seat: () => ["seat.height", "seat.slope", "seat.depth"],
  angle: (name) => [name],
  post: (name) => [`${name}.foot-bevel`],
  rail: (name) => [`${name}.length`],
};

/** The dotted names of the values at a place, as the chair lists them; none where no value stands. */
export function valuesUnder(view: View, offset: number): string[] {
  const statement = lineAt(view.tree, offset);
  if (!statement || commentAt(view.tree, offset)) return [];
  const { chair } = view.study;
  return asked(statement, offset).flatMap((name) => workedValue(chair, name)?.name ?? []);
}

function asked(statement: Statement, offset: number): string[] {
  const value = valueAt(statement, offset);
  const narrow = value && valuesAt(value, offset).at(-1);
  if (narrow) return narrow.is === "name" ? [narrow.name] : [];
  const header = ofHeaders[statement.word?.text ?? ""];
  if (!header || !statement.block || offset > headEnd(statement)) return [];
  if (statement.word?.text === "seat") return header("");
  const name = factsAt(statement, offset).find(({ slot }) => slot === "name")?.name;
  return name === undefined || within(statement.word ?? statement, offset) ? [] : header(name);
}
