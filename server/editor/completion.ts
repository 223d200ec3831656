/**
 * What may be written at a place: statements of the block it stands in, then whatever the line's row still wants.
 */
import { type CompletionItem, CompletionItemKind } from "vscode-languageserver-types";
import { type Expectation, expectedAt } from "../../grammar/expected.ts";
import { fileUnit } from "../../grammar/parser.ts";
import type { Span } from "../../grammar/problem.ts";
import type { Row, Shape } from "../../grammar/row.ts";
import { editorSentence } from "../../grammar/sentences/editor-sentence.ts";
import type { Statement } from "../../grammar/tree.ts";
import { unitNames } from "../../grammar/units.ts";
import type { Dimension } from "../design/design.ts";
import { units } from "../design/units.ts";
import { aboutRow, aboutWord } from "./about/about-word.ts";
import { item, namesFor, valueNames } from "./names/completion-names.ts";
import { blockSnippet, blockText } from "./snippets.ts";
import { startsIn } from "./starts.ts";
import { type Known, rangeOf } from "./view.ts";

interface Asked {
  /** The client fills in snippets. */
  snippets: boolean;
  /** Asked because a space was typed: only names and words are worth showing then. */
  bySpace?: boolean;
  /** The chair files that this one could name, as it would name them. */
  files?: readonly string[];
  /** Those of them that bring joints and values without a chair. */
  libraries?: ReadonlySet<string>;
}

/** The words that another file's name follows. */
const naming = new Set(["use", "like"]);

/** Whether a file's name may stand at a place. */
export function takesFile({ tree, vocabulary }: Pick<Known, "tree" | "vocabulary">, offset: number): boolean {
  const { at, row, shapes } = expectedAt(tree, offset, vocabulary);
  return (
    naming.has(row?.word ?? "") &&
    (at === "text" || shapes.some((shape) => shape.is === "slot" && shape.slot === "text"))
  );
}

/** Completions at a place, with the text each takes the place of. Empty in comments and quoted text. */
export function completion(view: Known, offset: number, asked: Asked): CompletionItem[] {
  const expected = expectedAt(view.tree, offset, view.vocabulary);
  if (asked.bySpace && !worthShowing(expected)) return [];
  const span = expected.at === "text" ? quotedAt(view.tree.text, offset) : expected.span;
  return finish(view, span, itemsOf(view, expected, asked));
}

/** A place where a space typed may bring up a list: one that takes a name or one of a few words. */
function worthShowing({ at, row, shapes }: Expectation): boolean {
  return (
    at === "part" &&
    (naming.has(row?.word ?? "") ||
      shapes.some((shape) => shape.is === "slot" && (shape.slot === "ref" || shape.slot === "word")))
  );
}

/** What stands between the quotes around a place, on its line. */
function quotedAt(text: string, offset: number): Span {
  const from = text.lastIndexOf('"', offset - 1) + 1;
  const rest = /^[^"\n]*/.exec(text.slice(offset))?.[0].length ?? 0;
  return { start: from, end: offset + rest };
}

/** The files that fit come first: a chair uses a library, and starts from another chair. */
function fileItems(
  { files = [], libraries }: Asked,
  { quoted, word }: { quoted: boolean; word: string | undefined },
): CompletionItem[] {
  return files.map((path, order) => ({
    ...item(
      path,
      CompletionItemKind.File,
      libraries?.has(path) ? editorSentence("completion.library") : undefined,
    ),
    sortText: `${libraries?.has(path) === (word === "use") ? 0 : 1}${String(order).padStart(4, "0")}`,
    ...(!quoted && { insertText: `"${path}"`, filterText: `"${path}"` }),
  }));
}

function itemsOf(view: Known, expected: Expectation, asked: Asked): CompletionItem[] {
  switch (expected.at) {
    case "comment":
      return [];
    case "text":
      return naming.has(expected.row?.word ?? "")
        ? fileItems(asked, { quoted: true, word: expected.row?.word })
        : [];
    case "first": {
      const given = expected.statement?.block !== undefined || headerHasBlock(view, expected);
      const rows = expected.rows.map((row, order) => ({
        ...statementItem(view, row, asked, given),
        sortText: rankOf(row, expected.kind) + String(order).padStart(3, "0"),
      }));
      return asked.snippets && expected.kind === "file" && !given ? [...rows, ...startItems(view)] : rows;
    }
    case "unit":
      return unitsFor(expected, fileUnit(view.tree.text)).map((unit, order) => ({
        ...item(unit, CompletionItemKind.Unit, undefined, aboutWord(view.vocabulary, unit, "unit")),
        sortText: String(order).padStart(2, "0"),
      }));
    default: {
      const { word } = expected.row ?? {};
      const place = {
        owner: ownerOf(expected.statement),
        worked: word === "require" || word === "let",
        required: word === "require",
        file: naming.has(word ?? ""),
        word,
        asked,
      };
      return expected.shapes.flatMap((shape) => shapeItems(view, shape, place));
    }
  }
}

/** Whole pieces to start from, behind the statements. */
const startItems = (view: Known): CompletionItem[] =>
  startsIn(fileUnit(view.tree.text)).map(({ label, word, about, snippet }) => ({
    ...item(label, CompletionItemKind.Snippet, about),
    filterText: `${word} ${label}`,
    sortText: `3${label}`,
    insertText: snippet,
    insertTextFormat: 2,
  }));

/** Whether the word being written already heads a block, so that none need be added. */
function headerHasBlock({ tree }: Known, { span, block }: Expectation): boolean {
  const level = block?.block?.statements ?? tree.statements;
  return level.some((statement) => statement.word?.start === span.start && statement.block !== undefined);
}

/** What must be given comes first; of a whole file its parts, posts and rails, before the single lines about all of it. */
const rankOf = (row: Row, kind: string | undefined): string =>
  row.required ? "0" : kind === "file" && !row.opens ? "2" : "1";

function statementItem(view: Known, row: Row, { snippets }: Asked, given: boolean): CompletionItem {
  const opens = row.opens !== undefined && !row.blockOptional && !given;
  const kind = opens ? CompletionItemKind.Struct : CompletionItemKind.Keyword;
  const shown = item(row.word, kind, row.meaning, aboutRow(row, fileUnit(view.tree.text)));
  if (!opens) return shown;
  return snippets
    ? {
        ...shown,
        insertText: blockSnippet(row, { vocabulary: view.vocabulary, unit: fileUnit(view.tree.text) }),
        insertTextFormat: 2,
      }
    : { ...shown, insertText: blockText(row) };
}

/** What a number of some lines is, by its label: a `value` may be anything else. */
const dimensions: Readonly<Record<string, Dimension>> = { force: "force", moisture: "share" };

/** Units that the number before the place may take, those of the file's own system first. */
function unitsFor({ number, row }: Expectation, unit: string): readonly string[] {
  if (!number || number.slot === "count" || number.label === "price") return number ? [] : unitNames;
  const { slot, label } = number;
  const known = slot === "length" || slot === "angle" ? slot : dimensions[label];
  const dimension = row?.word === "climate" ? "share" : known;
  if (dimension === undefined) return unitNames;
  const fitting = unitNames.filter((each) => units[each]?.dimension === dimension);
  return dimension === "force" && unit === "in" ? fitting.reverse() : fitting;
}

interface Place {
  /** Name of the thing the line belongs to: it cannot point at itself. */
  owner: string | undefined;
  /** Worked-out values may stand here. */
  worked: boolean;
  /** They are what it is about. */
  required: boolean;
  /** A file's name stands here. */
  file: boolean;
  /** The word that begins the line. */
  word: string | undefined;
  asked: Asked;
}

function shapeItems(
  view: Known,
  shape: Shape,
  { owner, worked, required, file, word, asked }: Place,
): CompletionItem[] {
  if (shape.is === "word") return /^[a-z]/i.test(shape.word) ? [wordItem(view, shape.word)] : [];
  if (shape.is !== "slot") return [];
  const { snippets } = asked;
  switch (shape.slot) {
    case "ref":
      return [
        ...namesFor(view, shape.ref ?? "any", owner),
        ...(shape.words ?? []).map((word) => wordItem(view, word)),
      ];
    case "word":
      return (shape.words ?? []).map((word) => wordItem(view, word, CompletionItemKind.EnumMember));
    case "length":
    case "angle":
    case "value":
      return valueNames(view, {
        worked: worked && shape.slot === "value",
        required,
        snippets,
        not: owner,
        ...(shape.slot !== "value" && { dimension: shape.slot }),
      });
    case "text":
      if (file) return fileItems(asked, { quoted: false, word });
      return snippets
        ? [
            {
              label: `"${shape.label}"`,
              kind: CompletionItemKind.Text,
              insertText: '"$1"$0',
              insertTextFormat: 2,
            },
          ]
        : [];
    default:
      return [];
  }
}

function wordItem(
  view: Known,
  word: string,
  kind: CompletionItemKind = CompletionItemKind.Keyword,
): CompletionItem {
  return item(word, kind, undefined, aboutWord(view.vocabulary, word));
}

function ownerOf(statement: Statement | undefined): string | undefined {
  for (let at = statement; at; at = at.owner) {
    const name = at.match?.facts.find(({ slot }) => slot === "name")?.name;
    if (name !== undefined) return name;
  }
  return undefined;
}

/** Each label once, with the text it takes the place of. */
function finish(view: Known, replace: Span, items: CompletionItem[]): CompletionItem[] {
  const range = rangeOf(view.document, replace);
  const seen = new Set<string>();
  return items.flatMap(({ insertText, ...each }) => {
    if (seen.has(each.label)) return [];
    seen.add(each.label);
    return [{ ...each, textEdit: { range, newText: insertText ?? each.label } }];
  });
}
