/**
 * Reading what the text says of boards, yards, waste and matches.
 */
import { sentence } from "../../grammar/sentences/sentence.ts";
import type {
  BoardDesign,
  DefectDesign,
  GrainDesign,
  MatchDesign,
  WasteDesign,
  YardDesign,
} from "./board-design.ts";
import type { Given, Named } from "./design.ts";
import type { Item } from "./merge.ts";
import { checked } from "./names.ts";
import { timber } from "./places.ts";
import { set } from "./post.ts";
import {
  allOf,
  count,
  factOf,
  figure,
  given,
  length,
  lengthAt,
  lineOf,
  linesOf,
  type Reading,
  report,
  spanOf,
} from "./reading.ts";
import { boardRef } from "./sawn.ts";

/** Length of a defect that gives none, mm. */
const DEFECT_LONG = 50;
/** Most boards alike, and most chairs at once. */
const MOST_MADE = 1000;

export const newBoard = (named: Named): BoardDesign => ({ ...named, is: "board", defects: [] });
export const newYard = (named: Named): YardDesign => ({ ...named, is: "yard" });

export function readBoard(reading: Reading, item: Item, board: BoardDesign): void {
  const size = lineOf(item, "size");
  if (size !== undefined) {
    const [long, wide, thick] = ["long", "wide", "thick"].map((label) =>
      length(reading, size, label, "positive"),
    );
    if (long && wide && thick) {
      const at = spanOf([factOf(size, "long"), factOf(size, "thick")], size.statement);
      board.size = given(size, at, { long: long.value, wide: wide.value, thick: thick.value });
    }
  }
  set(board, "count", count(reading, lineOf(item, "count"), "count", MOST_MADE));
  set(board, "wane", length(reading, lineOf(item, "wane"), "width", "not negative"));
  const grain = lineOf(item, "grain");
  const sawn = grain && factOf(grain, "grain");
  if (grain !== undefined && sawn?.name !== undefined)
    board.grain = given(grain, sawn, sawn.name as GrainDesign);
  set(board, "timber", timber(reading, lineOf(item, "timber")));
  set(board, "price", price(reading, lineOf(item, "price")));
  board.defects = linesOf(item, "defect").flatMap((line) => readDefect(reading, line) ?? []);
}

function readDefect(reading: Reading, line: Item): Given<DefectDesign> | undefined {
  const at = length(reading, line, "at", "not negative");
  if (at === undefined) return undefined;
  const long = length(reading, line, "long", "positive")?.value ?? DEFECT_LONG;
  const fromEdge = length(reading, line, "from-edge", "not negative")?.value ?? 0;
  const wide = length(reading, line, "wide", "positive")?.value;
  const what = factOf(line, "what")?.text;
  const facts = ["at", "long", "from-edge", "wide"].map((label) => factOf(line, label));
  return given(line, spanOf(facts, line.statement), {
    at: at.value,
    long,
    fromEdge,
    ...(wide !== undefined && { wide }),
    ...(what !== undefined && { what }),
  });
}

export function readYard(reading: Reading, item: Item, yard: YardDesign): void {
  const thick = lineOf(item, "thick");
  if (thick !== undefined) {
    const facts = allOf(thick, "thick");
    const sizes = facts.flatMap((fact) => lengthAt(reading, thick, fact, "positive")?.value ?? []);
    if (sizes.length > 0)
      yard.thick = given(
        thick,
        spanOf(facts, thick.statement),
        [...new Set(sizes)].sort((a, b) => a - b),
      );
  }
  set(yard, "long", range(reading, lineOf(item, "long")));
  set(yard, "wide", range(reading, lineOf(item, "wide")));
  set(yard, "timber", timber(reading, lineOf(item, "timber")));
  set(yard, "price", price(reading, lineOf(item, "price")));
}

function range(reading: Reading, line: Item | undefined): Given<{ low: number; high: number }> | undefined {
  const low = length(reading, line, "low", "positive");
  const high = length(reading, line, "high", "positive");
  if (line === undefined || low === undefined || high === undefined) return undefined;
  const at = spanOf([factOf(line, "low"), factOf(line, "high")], line.statement);
  if (low.value > high.value) {
    report(reading, line.source, at, {
      code: "impossible-size",
      message: sentence("impossible-size.board-range"),
    });
    return undefined;
  }
  return given(line, at, { low: low.value, high: high.value });
}

function price(reading: Reading, line: Item | undefined): Given<number> | undefined {
  const found = line && figure(reading, line, "price", "number");
  if (line === undefined || found === undefined || found.value >= 0) return found;
  report(reading, line.source, found.at, {
    code: "impossible-size",
    message: sentence("impossible-size.price"),
  });
  return undefined;
}

export function readWaste(reading: Reading, item: Item): WasteDesign {
  const waste: WasteDesign = {};
  for (const word of ["saw", "plane", "ends", "jointing"] as const)
    set(waste, word, length(reading, lineOf(item, word), "length", "not negative"));
  return waste;
}

export function readMatch(reading: Reading, item: Item): MatchDesign | undefined {
  const facts = allOf(item, "part");
  const parts = facts.flatMap(
    (fact) => checked(reading, item, fact, ["post", "rail", "slat", "stick", "bow", "block"]) ?? [],
  );
  const board = boardRef(reading, item, factOf(item, "board"));
  if (parts.length === 0 || board === undefined) return undefined;
  const laid = factOf(item, "laid")?.name === "end" ? "end to end" : "side by side";
  const match: MatchDesign = {
    parts,
    board,
    laid,
    at: spanOf([...facts, factOf(item, "board")], item.statement),
    statement: item.statement,
  };
  set(match, "file", item.source.file);
  return match;
}

/** How many chairs: a whole number from 1. */
export const readMake = (reading: Reading, item: Item): Given<number> | undefined =>
  count(reading, item, "count", MOST_MADE);
