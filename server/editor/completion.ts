/**
 * What may be written at a place: statements of the block it stands in, then whatever the line's row still wants.
 */
import { type CompletionItem, CompletionItemKind } from "vscode-languageserver-types";
import { type Expectation, expectedAt } from "../../grammar/expected.ts";
import { fileUnit } from "../../grammar/parser.ts";
import type { Span } from "../../grammar/problem.ts";
import type { Row, Shape, Slot } from "../../grammar/row.ts";
import type { Statement } from "../../grammar/tree.ts";
import { unitNames } from "../../grammar/units.ts";
import { units } from "../design/units.ts";
import { aboutRow, aboutWord } from "./about/about-word.ts";
import { item, namesFor, valueNames } from "./names/completion-names.ts";
import { blockSnippet, blockText } from "./snippets.ts";
import { type Known, rangeOf } from "./view.ts";

interface Asked {
  /** The client fills in snippets. */
  snippets: boolean;
  /** Asked because a space was typed: only names and words are worth showing then. */
  bySpace?: boolean;
}

/** Completions at a place, with the text each takes the place of. Empty in comments and quoted text. */
export function completion(view: Known, offset: number, asked: Asked): CompletionItem[] {
  const expected = expectedAt(view.tree, offset, view.vocabulary);
  if (asked.bySpace && !worthShowing(expected)) return [];
  return finish(view, expected.span, itemsOf(view, expected, asked));
}

/** A place where a space typed may bring up a list: one that takes a name or one of a few words. */
function worthShowing({ at, shapes }: Expectation): boolean {
  return (
    at === "part" &&
    shapes.some((shape) => shape.is === "slot" && (shape.slot === "ref" || shape.slot === "word"))
  );
}

function itemsOf(view: Known, expected: Expectation, asked: Asked): CompletionItem[] {
  switch (expected.at) {
    case "comment":
    case "text":
      return [];
    case "first": {
      const given = expected.statement?.block !== undefined || headerHasBlock(view, expected);
      return expected.rows.map((row, order) => statementItem(view, row, order, asked, given));
    }
    case "unit":
      return unitsFor(expected.number?.slot).map((unit) =>
        item(unit, CompletionItemKind.Unit, undefined, aboutWord(view.vocabulary, unit, "unit")),
      );
    default: {
      const { word } = expected.row ?? {};
      const place = {
        owner: ownerOf(expected.statement),
        worked: word === "require" || word === "let",
        asked,
      };
      return expected.shapes.flatMap((shape) => shapeItems(view, shape, place));
    }
  }
}

/** Whether the word being written already heads a block, so that none need be added. */
function headerHasBlock({ tree }: Known, { span, block }: Expectation): boolean {
  const level = block?.block?.statements ?? tree.statements;
  return level.some((statement) => statement.word?.start === span.start && statement.block !== undefined);
}

function statementItem(
  view: Known,
  row: Row,
  order: number,
  { snippets }: Asked,
  given: boolean,
): CompletionItem {
  const opens = row.opens !== undefined && !row.blockOptional && !given;
  const kind = opens ? CompletionItemKind.Struct : CompletionItemKind.Keyword;
  const shown = {
    ...item(row.word, kind, row.meaning, aboutRow(row, fileUnit(view.tree.text))),
    sortText: (row.required ? "0" : "1") + String(order).padStart(3, "0"),
  };
  if (!opens) return shown;
  return snippets
    ? {
        ...shown,
        insertText: blockSnippet(row, { vocabulary: view.vocabulary, unit: fileUnit(view.tree.text) }),
        insertTextFormat: 2,
      }
    : { ...shown, insertText: blockText(row) };
}

/** Units that a number in a slot may take. */
function unitsFor(slot: Slot | "marker" | undefined): readonly string[] {
  if (slot === "count") return [];
  if (slot !== "length" && slot !== "angle") return unitNames;
  return unitNames.filter((unit) => units[unit]?.dimension === slot);
}

interface Place {
  /** Name of the thing the line belongs to: it cannot point at itself. */
  owner: string | undefined;
  /** Worked-out values may stand here. */
  worked: boolean;
  asked: Asked;
}

function shapeItems(
  view: Known,
  shape: Shape,
  { owner, worked, asked: { snippets } }: Place,
): CompletionItem[] {
  if (shape.is === "word") return /^[a-z]/i.test(shape.word) ? [wordItem(view, shape.word)] : [];
  if (shape.is !== "slot") return [];
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
      return valueNames(view, { worked: worked && shape.slot === "value", snippets, not: owner });
    case "text":
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
