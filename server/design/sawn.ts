/**
 * What any part says of the wood it is sawn from: its board, and its faces that nobody sees.
 */
import type { Fact } from "../../grammar/tree.ts";
import type { BoardRef, HiddenFace, SawnDesign } from "./board-design.ts";
import type { Given } from "./design.ts";
import type { Item, Line } from "./merge.ts";
import { checked } from "./names.ts";
import { allOf, factOf, given, lineOf, type Reading, spanOf } from "./reading.ts";

/** `sawn from` and `hidden` of any part. */
export function readSawn(reading: Reading, item: Item, part: SawnDesign): void {
  const sawn = lineOf(item, "sawn");
  const board = sawn && boardRef(reading, sawn, factOf(sawn, "board"));
  if (board !== undefined) part.sawnFrom = board;
  const hidden = lineOf(item, "hidden");
  if (hidden === undefined) return;
  const facts = allOf(hidden, "face");
  const faces = facts.flatMap(({ name }) => (name === undefined ? [] : [name as HiddenFace]));
  if (faces.length > 0) part.hidden = given(hidden, spanOf(facts, hidden.statement), [...new Set(faces)]);
}

/** A reference to a board, with the number of one of several alike. */
export function boardRef(reading: Reading, line: Line, fact: Fact | undefined): Given<BoardRef> | undefined {
  const ref = checked(reading, line, fact, ["board"]);
  if (ref === undefined) return undefined;
  const [name = "", which] = ref.value.name.split(".");
  return { ...ref, value: { name, ...(which !== undefined && { which: Number(which) }) } };
}
