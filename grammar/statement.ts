import { checkUnits } from "./alike.ts";
import type { Context } from "./context.ts";
import type { Kind } from "./kind.ts";
import { mend } from "./mend.ts";
import { isOnlyNearest, nearest } from "./nearest.ts";
import { leadingWord, type Reading, readParts, type Setting, startOf } from "./parts.ts";
import type { Item } from "./phrases.ts";
import { isChain } from "./phrases.ts";
import type { Row } from "./row.ts";
import { fix, replaceFix, say } from "./say.ts";
import { sentence } from "./sentences/sentence.ts";
import { isWhole, matchRow } from "./shape.ts";
import { markersOf, type Table } from "./table.ts";
import { T } from "./tokens.ts";
import type { Match, Part, Statement } from "./tree.ts";
import { nameOfKind, orList, placeOf } from "./wording.ts";

/** How a phrase is to be read, when its first word alone does not say. */
export interface Forced {
  row: Row;
  /** The statement's own word is missing: its first word is a part. */
  headless: boolean;
}

/**
 * Reads one phrase as a statement, or as several where a line end was lost between them. `opens` says that a block follows, so
 * that rows that open one are preferred.
 */
export function readStatements(
  items: readonly Item[],
  kind: Kind,
  opens: boolean,
  context: Context,
  forced?: Forced,
): Statement[] {
  const statements: Statement[] = [];
  let rest = items;
  for (;;) {
    const read = readOne(rest, kind, opens, context, statements.length === 0 ? forced : undefined);
    statements.push(read.statement);
    if (read.left === undefined) return statements;
    rest = read.left;
  }
}

function readOne(
  items: readonly Item[],
  kind: Kind,
  opens: boolean,
  context: Context,
  forced?: Forced,
): { statement: Statement; left?: readonly Item[] } {
  const first = forced?.headless ? undefined : leadingWord(items[0]);
  const rows = forced ? [forced.row] : first === undefined ? [] : context.table.rows(kind, first.image);
  const reading = readParts(items, settingOf(rows, context), forced?.headless);
  const statement = makeStatement(reading, kind, items);
  if (rows.length === 0) {
    context.problems.push(...reading.problems);
    if (kind !== "unknown" && reading.problems.length === 0) tellUnknown(statement, kind, context);
    return { statement };
  }
  const before = context.problems.length;
  const { row, match } = bestRow(rows, reading.parts, opens);
  statement.row = row;
  statement.match = match;
  if (!isWhole(match, reading.parts)) {
    const cut = lostLineEnd(items, reading.parts, match, kind, context.table);
    if (cut?.part.text === LIKE && opens && row.opens !== undefined) {
      tellLikePart(statement, cut.part, context);
      return { statement };
    }
    const mended = mend({
      statement,
      row,
      match,
      problems: reading.problems,
      context,
      cut: cut !== undefined,
    });
    if (mended === "cut" && cut !== undefined) {
      const head = readOne(items.slice(0, cut.item), kind, false, context, forced);
      tellLostLineEnd(head.statement, cut.part, context);
      return { statement: head.statement, left: items.slice(cut.item) };
    }
  } else checkNames(statement, context);
  context.problems.push(...reading.problems);
  tellErrorTokens(statement, reading, before, context);
  if (isWhole(statement.match, reading.parts)) checkUnits(statement, context.fileUnit, context.problems);
  if (row.later) {
    const at = statement.word ?? statement;
    context.problems.push(
      say("not-yet-worked-out", at, sentence("not-yet-worked-out", { word: row.word }), [], "information"),
    );
  }
  return { statement };
}

function settingOf(rows: readonly Row[], { table, told }: Pick<Context, "table" | "told">): Setting {
  const markers = rows.map(({ shape }) => markersOf(shape));
  return {
    isMarker: (word) => markers.some((set) => set.has(word)),
    isFunction: table.isFunction,
    nearFunction: table.nearFunction,
    told,
  };
}

function makeStatement(reading: Reading, kind: Kind, items: readonly Item[]): Statement {
  const last = reading.parts.at(-1) ?? reading.word;
  const start = startOf(items[0]!);
  const statement: Statement = { within: kind, parts: reading.parts, start, end: last?.end ?? start };
  if (reading.word !== undefined) statement.word = reading.word;
  return statement;
}

/** Of the rows that share a word, the one that fits; else the one that fits furthest. */
function bestRow(rows: readonly Row[], parts: readonly Part[], opens: boolean): { row: Row; match: Match } {
  let best: { row: Row; match: Match; score: number } | undefined;
  for (const row of rows) {
    const match = matchRow(row, parts);
    const fits = isWhole(match, parts) ? 1000 : match.complete ? 0.5 : 0;
    const score = match.stopped + fits + ((row.opens !== undefined) === opens ? 0.25 : 0);
    if (best === undefined || score > best.score) best = { row, match, score };
  }
  return best!;
}

/** Where what is left over after a complete line begins with a word that could start another: a line end was lost there. */
function lostLineEnd(
  items: readonly Item[],
  parts: readonly Part[],
  match: Match,
  kind: Kind,
  table: Table,
): { item: number; part: Part & { is: "word" } } | undefined {
  const part = parts[match.stopped];
  if (!match.complete || part?.is !== "word" || table.rows(kind, part.text).length === 0) return undefined;
  const item = items.findIndex((one) => startOf(one) === part.start);
  return item > 0 ? { item, part } : undefined;
}

const LIKE = "like";

/** A header that names another part to begin from, as only a whole chair does. */
function tellLikePart(header: Statement, { start }: Part, { problems }: Context): void {
  const name = header.match?.facts.find(({ label }) => label === "name")?.name ?? "";
  const before = header.parts.filter((part) => part.end <= start).at(-1)?.end ?? start;
  const at = { start, end: header.end };
  problems.push(
    say("left-over", at, sentence("left-over.like", { name }), [
      fix(sentence("fix.take-out"), [{ start: before, end: header.end, text: "" }]),
    ]),
  );
}

function tellLostLineEnd(before: Statement, part: Part, context: Context): void {
  if (part.is !== "word") return;
  context.problems.push(
    say("missing-line-end", part, sentence("missing-line-end", { word: part.text }), [
      fix(
        sentence("fix.begin-line", { word: part.text }),
        [{ start: before.end, end: part.start, text: context.newLine }],
        true,
      ),
    ]),
  );
}

function tellUnknown(statement: Statement, kind: Kind, { table, problems, told }: Context): void {
  const { word } = statement;
  if (told(statement.start, statement.end)) return;
  if (word === undefined) {
    const [first] = statement.parts;
    const at = first ?? statement;
    problems.push(say("unreadable", at, sentence("unreadable.line", { place: placeOf(kind) })));
    return;
  }
  const elsewhere = table.kindsOf(word.text);
  const near = nearest(word.text, table.wordsOf(kind));
  const slips = near !== undefined;
  if (elsewhere.length > 0) {
    const where = elsewhere.map((one) =>
      one === "file" ? sentence("place.outside-blocks") : sentence("place.in", { kind: nameOfKind(one) }),
    );
    problems.push(
      say(
        "misplaced-word",
        word,
        sentence("misplaced-word", { word: word.text, place: placeOf(kind), where: orList(where) }),
        slips ? [replaceFix(word, near)] : [],
      ),
    );
    return;
  }
  problems.push(
    say(
      "unknown-word",
      word,
      slips
        ? sentence("unknown-word.line-near", { word: word.text, place: placeOf(kind), near })
        : sentence("unknown-word.line", { word: word.text, place: placeOf(kind) }),
      slips ? [replaceFix(word, near, isOnlyNearest(word.text, near, table.wordsOf(kind)))] : [],
    ),
  );
}

/** Error tokens that nothing has been said of yet. */
function tellErrorTokens(
  statement: Statement,
  reading: Reading,
  before: number,
  { problems, told }: Context,
): void {
  for (const part of statement.parts) {
    if (part.is !== "error" || told(part.start, part.end)) continue;
    if (reading.problems.some(({ start, end }) => start < part.end && end > part.start)) continue;
    if (problems.slice(before).some(({ start, end }) => start < part.end && end > part.start)) continue;
    problems.push(
      say("unreadable", part, sentence("unreadable.means-nothing", { text: part.text }), [takeOut(part)]),
    );
  }
}

const takeOut = (part: Part) =>
  fix(sentence("fix.take-out"), [{ start: part.start, end: part.end, text: "" }]);

function checkNames({ match }: Statement, { problems }: Context): void {
  for (const fact of match?.facts ?? []) {
    if (fact.slot !== "name" || !fact.name?.includes(".")) continue;
    const plain = fact.name.replaceAll(".", "-");
    problems.push(say("unreadable", fact, sentence("left-over.point"), [replaceFix(fact, plain)]));
  }
}

/** Whether a phrase, its first word included, is all that must follow the word of a row. */
export function readsWhole(items: readonly Item[], row: Row, table: Table, headless = true): boolean {
  const { parts } = readParts(items, settingOf([row], { table, told: () => true }), headless);
  return isWhole(matchRow(row, parts), parts);
}

/** How well a phrase fits as a line of a kind of block: 0 when its word is unknown there, 2 when all of it fits. */
export function suitability(items: readonly Item[], kind: Kind, table: Table): 0 | 1 | 2 {
  const word = firstWordOf(items);
  const rows = word === undefined ? [] : table.rows(kind, word);
  if (rows.length === 0) return 0;
  const { parts } = readParts(items, settingOf(rows, { table, told: () => true }));
  return rows.some((row) => isWhole(matchRow(row, parts), parts)) ? 2 : 1;
}

/** The first word of a phrase, when it begins with one. */
export function firstWordOf(items: readonly Item[]): string | undefined {
  const word = leadingWord(items[0]);
  return word?.image;
}

/** True when a phrase holds nothing but marks of a merge or other error tokens. */
export function isOnlyErrors(items: readonly Item[]): boolean {
  return items.every((item) => !isChain(item) && item.tokenType === T.Error);
}
