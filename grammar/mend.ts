import type { Context } from "./context.ts";
import { exampleOf } from "./example.ts";
import { isOnlyNearest, nearest } from "./nearest.ts";
import type { Problem, Span } from "./problem.ts";
import type { Row, Shape } from "./row.ts";
import { fix, replaceFix, say } from "./say.ts";
import { sentence } from "./sentences/sentence.ts";
import { isWhole, matchRow, textOf } from "./shape.ts";
import type { Match, Part, Statement } from "./tree.ts";
import { unitOf } from "./units.ts";
import { capital, describe, nameOfKind, orList } from "./wording.ts";

interface Case {
  statement: Statement;
  row: Row;
  match: Match;
  /** Problems found in reading the parts. */
  problems: Problem[];
  context: Context;
  /** A line end was plainly lost where matching stopped. */
  cut: boolean;
}

/**
 * Finds the one small slip that explains why a statement does not fit its row, tells of it, and keeps the meaning where
 * only one is possible. Gives `cut` when the statement should rather be cut in two at the place given.
 */
export function mend(at: Case): "told" | "cut" {
  const { statement, context, problems } = at;
  const { parts } = statement;
  const silent = problems.length > 0 || context.told(statement.start, statement.end);
  const last = parts.at(-1);
  if (last?.is === "comma" && !silent) {
    const shorter = matchRow(at.row, parts.slice(0, -1));
    if (shorter.complete && shorter.stopped === parts.length - 1) {
      keep(at, shorter);
      tell(at, "left-over", last, sentence("left-over.comma-end"), [
        fix(sentence("fix.take-comma-out"), [{ ...place(last), text: "" }], true),
      ]);
      return "told";
    }
  }
  if (at.cut) return "cut";
  const swapped = trySwap(at);
  if (swapped !== undefined) {
    keep(at, swapped.match);
    if (!silent) tellSwapped(at, swapped.text);
    return "told";
  }
  const inserted = tryInsert(at);
  if (inserted !== undefined) {
    keep(at, inserted.match);
    if (!silent) tellInserted(at, inserted.text);
    return "told";
  }
  const spare = tryDelete(at);
  if (spare !== undefined) {
    keep(at, spare.match);
    if (!silent) {
      const out = [fix(sentence("fix.take-comma-out"), [{ ...place(spare.comma), text: "" }], true)];
      tell(at, "left-over", spare.comma, sentence("left-over.comma"), out);
    }
    return "told";
  }
  if (!silent) tellFailure(at);
  return "told";
}

/** Takes the match of the mended parts as the statement's own. */
function keep({ statement }: Case, better: Match): void {
  statement.match = { ...better, complete: true, stopped: statement.parts.length, expected: [] };
}

const place = ({ start, end }: Span): Span => ({ start, end });

function tell(
  { context }: Case,
  code: string,
  span: Span,
  message: string,
  fixes: Problem["fixes"] = [],
): void {
  context.problems.push(say(code, place(span), message, fixes));
}

/** The words and signs that could stand where matching stopped. */
function wordsAt(match: Match): string[] {
  const words = match.expected.flatMap((shape: Shape) =>
    shape.is === "word" ? [shape.word] : shape.is === "slot" ? [...(shape.words ?? [])] : [],
  );
  return [...new Set(words)];
}

/** Puts one missing word or comma in, if then all fits. */
function tryInsert({ row, match, statement }: Case): { match: Match; text: string } | undefined {
  const { parts } = statement;
  const { stopped } = match;
  if (stopped >= parts.length) return undefined;
  const at = parts[stopped]!.start;
  for (const text of [",", ...wordsAt(match)]) {
    const word: Part =
      text === "," ? { is: "comma", start: at, end: at } : { is: "word", text, start: at, end: at };
    const tried = [...parts.slice(0, stopped), word, ...parts.slice(stopped)];
    const better = matchRow(row, tried);
    if (isWhole(better, tried)) return { match: better, text };
  }
  return undefined;
}

function tellInserted(at: Case, text: string): void {
  const { statement, match } = at;
  const part = statement.parts[match.stopped]!;
  const before = statement.parts[match.stopped - 1] ?? statement.word;
  if (text === ",") {
    const end = before?.end ?? part.start;
    tell(at, "missing-comma", part, sentence("missing-comma"), [
      fix(sentence("fix.put-comma-in"), [{ start: end, end, text: "," }], !isBetweenValues(at)),
    ]);
    return;
  }
  const start = before?.end ?? part.start;
  tell(at, "missing-word", part, sentence("missing-word.as-in", { word: text, example: exampleFor(at) }), [
    fix(
      sentence("fix.put-in", { word: text }),
      [{ start, end: part.start, text: `${start === part.start ? "" : " "}${text} ` }],
      !isBetweenValues(at),
    ),
  ]);
}

/** Two values side by side may just as well have lost a sign between them. */
function isBetweenValues({ statement, match }: Case): boolean {
  return statement.parts[match.stopped - 1]?.is === "value" && statement.parts[match.stopped]?.is === "value";
}

/** Takes one comma out, if then all fits. */
function tryDelete({ row, match, statement }: Case): { match: Match; comma: Part } | undefined {
  const { parts } = statement;
  for (const at of [match.stopped, match.stopped - 1]) {
    const comma = parts[at];
    if (comma?.is !== "comma") continue;
    const tried = parts.filter((part) => part !== comma);
    const better = matchRow(row, tried);
    if (isWhole(better, tried)) return { match: better, comma };
  }
  return undefined;
}

/** Puts the nearest word that could stand here in the place of one that cannot, if then all fits. */
function trySwap({ row, match, statement }: Case): { match: Match; text: string } | undefined {
  const { parts } = statement;
  const part = parts[match.stopped];
  if (part?.is !== "word") return undefined;
  const text = unitMeant(part.text, wordsAt(match)) ?? nearest(part.text, wordsAt(match));
  if (text === undefined) return undefined;
  const tried = parts.map((one) => (one === part ? { ...part, text } : one));
  const better = matchRow(row, tried);
  return isWhole(better, tried) ? { match: better, text } : undefined;
}

/** `units inches`: a unit spelt as people do elsewhere. */
function unitMeant(word: string, words: readonly string[]): string | undefined {
  const unit = unitOf(word.toLowerCase());
  return words.includes(unit) ? unit : undefined;
}

function tellSwapped(at: Case, text: string): void {
  const part = at.statement.parts[at.match.stopped]!;
  const words = wordsAt(at.match);
  const certain =
    part.is === "word" && (unitMeant(part.text, words) === text || isOnlyNearest(part.text, text, words));
  tell(at, "unknown-word", part, sentence("unknown-word.near", { word: textOf(part), near: text }), [
    replaceFix(part, text, certain),
  ]);
}

function tellFailure(at: Case): void {
  const part = at.statement.parts[at.match.stopped];
  if (part === undefined) {
    tellUnfinished(at);
    return;
  }
  if (part.is === "error") return; // reported by itself
  const told =
    tellNameless(at, part) || tellDate(at, part) || tellRepeated(at, part) || tellExpected(at, part);
  if (!told) tellLeftOver(at, part);
}

/** An example that begins as the maker's line does. */
const exampleFor = ({ row, statement, match, context }: Case): string => {
  const said = statement.parts
    .slice(0, match.stopped)
    .flatMap((part) => (part.is === "word" ? part.text : []));
  return exampleOf(row, context.fileUnit, said);
};

/** The line ends where more should stand. */
function tellUnfinished(at: Case): void {
  const { statement, match, row } = at;
  const expected = describe(match.expected);
  const example = exampleFor(at);
  if (row.opens !== undefined && statement.parts.length === 0) {
    const what = expected.length > 0 ? orList(expected) : sentence("slot.name");
    tell(
      at,
      "missing-name",
      statement.word ?? statement,
      sentence("missing-name.needs", { Kind: capital(nameOfKind(row.opens)), what, example }),
    );
    return;
  }
  if (tellInches(at)) return;
  const end = statement.parts.at(-1) ?? statement.word ?? statement;
  tell(
    at,
    "missing-value",
    end,
    sentence("missing-value.must-follow", { Expected: capital(orList(expected)), example }),
  );
}

/** A block that says at once what it is to be, without a name. */
function tellNameless(at: Case, part: Part): boolean {
  const { match, row } = at;
  if (match.stopped > 0 || row.opens === undefined || part.is !== "word" || !match.expected.some(isName))
    return false;
  const example = exampleFor(at);
  tell(at, "missing-name", part, sentence("missing-name.before", { word: part.text, example }));
  return true;
}

function tellDate(at: Case, part: Part): boolean {
  const { match, statement } = at;
  if (!match.expected.some((shape) => shape.is === "slot" && shape.slot === "date")) return false;
  const { parts } = statement;
  const rest = parts.slice(match.stopped).findIndex(({ is }) => is === "text" || is === "comma");
  const end = (rest < 0 ? parts.at(-1) : parts[match.stopped + rest - 1]) ?? part;
  tell(
    at,
    "date-spelling",
    { start: part.start, end: Math.max(part.end, end.end) },
    sentence("date-spelling"),
  );
  return true;
}

function tellRepeated(at: Case, part: Part): boolean {
  const again = repeated(at);
  if (again === undefined) return false;
  tell(at, "given-twice", part, sentence("given-twice.on-line", { word: again }));
  return true;
}

/** Something else must stand here. */
function tellExpected(at: Case, part: Part): boolean {
  const { match } = at;
  const expected = describe(match.expected);
  // A row that may end at its word is still read as one that lacks what comes next.
  if (expected.length === 0 || (match.complete && match.stopped > 0)) return false;
  const words = part.is === "word" ? wordsAt(match) : [];
  const near = part.is === "word" ? nearest(part.text, words) : undefined;
  const code = part.is === "comma" ? "missing-value" : words.length > 0 ? "unknown-word" : "left-over";
  const Expected = capital(orList(expected));
  const example = exampleFor(at);
  tell(
    at,
    code,
    part,
    near === undefined
      ? sentence("left-over.expected", { Expected, example })
      : sentence("left-over.expected-near", { Expected, example, near }),
    near === undefined ? [] : [replaceFix(part, near)],
  );
  return true;
}

/** The line was whole before this. */
function tellLeftOver(at: Case, part: Part): void {
  const { match, row, statement } = at;
  const near = part.is === "word" ? nearest(part.text, wordsAt(match)) : undefined;
  if (near !== undefined) {
    tell(at, "unknown-word", part, sentence("unknown-word.near", { word: textOf(part), near }), [
      replaceFix(part, near),
    ]);
    return;
  }
  const rest = { start: part.start, end: statement.parts.at(-1)?.end ?? part.end };
  const expected = describe(match.expected);
  const complete =
    expected.length > 0
      ? sentence("left-over.complete-options", { word: row.word, expected: orList(expected) })
      : sentence("left-over.complete", { word: row.word });
  tell(at, "left-over", rest, complete, [fix(sentence("fix.take-out"), [{ ...rest, text: "" }])]);
}

const isName = (shape: Shape): boolean => shape.is === "slot" && shape.slot === "name";

/** The word of a clause that stands a second time after a comma. */
function repeated({ statement, match }: Case): string | undefined {
  const { parts } = statement;
  const at = parts[match.stopped]?.is === "comma" ? match.stopped + 1 : match.stopped;
  const part = parts[at];
  if (part?.is !== "word" || parts[at - 1]?.is !== "comma") return undefined;
  const text = part.text;
  return parts.slice(0, at).some((before) => before.is === "word" && before.text === text) ? text : undefined;
}

const unitWords: Record<string, string> = { mm: "millimetres", cm: "centimetres", in: "inches" };

/** `bow 22 in` is 22 inches with the direction missing: reported in those words. */
function tellInches(at: Case): boolean {
  const { match, statement } = at;
  const value = statement.parts.at(-1);
  if (value?.is !== "value" || value.value.is !== "quantity" || value.value.unit !== "in") return false;
  if (!wordsAt(match).includes("in")) return false;
  const { fileUnit } = at.context;
  const [written, meant] = [`${value.value.number}${fileUnit}`, unitWords[fileUnit] ?? fileUnit];
  tell(
    at,
    "missing-value",
    value,
    sentence("missing-value.inwards", { number: value.value.number, written }),
    [
      fix(sentence("fix.read-inwards", { meant }), [
        { start: value.start, end: value.end, text: `${written} in` },
      ]),
    ],
  );
  return true;
}
