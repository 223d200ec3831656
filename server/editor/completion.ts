/**
 * What may be written at a place: statements of the block it stands in, then whatever the line's row still wants.
 */
import { type CompletionItem, CompletionItemKind } from "vscode-languageserver-types";
import type { Span } from "../../grammar/problem.ts";
import type { Row, Shape } from "../../grammar/row.ts";
import { unitNames } from "../../grammar/units.ts";
import { aboutRow, aboutWord } from "./about-word.ts";
import { item, namesFor, valueNames } from "./completion-names.ts";
import { type Opening, whatMayStand } from "./completion-place.ts";
import { commentAt } from "./place.ts";
import { blockSnippet, blockText } from "./snippets.ts";
import { rangeOf, type View } from "./view.ts";

export interface Asked {
  /** The client fills in snippets. */
  snippets: boolean;
  /** Asked because a space was typed: only names and words are worth showing then. */
  bySpace?: boolean;
}

/** Completions at a place, the text they replace in each. Empty in comments and quoted text. */
export function completion(view: View, offset: number, asked: Asked): CompletionItem[] {
  if (commentAt(view.tree, offset)) return [];
  const opening = whatMayStand(view, offset);
  if (!opening) return [];
  const items = asked.bySpace && opening.is !== "rest" ? [] : itemsOf(view, opening, asked);
  return finish(view, opening.replace, items);
}

function itemsOf(view: View, opening: Opening, asked: Asked): CompletionItem[] {
  switch (opening.is) {
    case "statement":
      return opening.rows.map((row, order) => statementItem(view, row, order, asked, opening.given));
    case "unit":
      return unitNames.map((unit) =>
        item(unit, CompletionItemKind.Unit, undefined, aboutWord(view.vocabulary, unit, "unit")),
      );
    case "rest": {
      const pointed = opening.shapes.some(
        (shape) => shape.is === "slot" && (shape.slot === "ref" || shape.slot === "word"),
      );
      if (asked.bySpace && !pointed) return [];
      return opening.shapes.flatMap((shape) => shapeItems(view, shape, opening, asked));
    }
  }
}

function statementItem(
  view: View,
  row: Row,
  order: number,
  { snippets }: Asked,
  given: boolean,
): CompletionItem {
  const opens = row.opens !== undefined && !row.blockOptional && !given;
  const base = item(
    row.word,
    opens ? CompletionItemKind.Struct : CompletionItemKind.Keyword,
    row.meaning,
    aboutRow(row),
  );
  const first = row.required ? "0" : "1";
  return {
    ...base,
    sortText: first + String(order).padStart(3, "0"),
    ...(opens &&
      (snippets
        ? { insertText: blockSnippet(row, view.vocabulary), insertTextFormat: 2 as const }
        : { insertText: blockText(row) })),
  };
}

function shapeItems(
  view: View,
  shape: Shape,
  { owner, row }: Extract<Opening, { is: "rest" }>,
  { snippets }: Asked,
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
      return valueNames(view, {
        worked: shape.slot === "value" && (row.word === "require" || row.word === "let"),
        snippets,
        not: owner,
      });
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
  view: View,
  word: string,
  kind: CompletionItemKind = CompletionItemKind.Keyword,
): CompletionItem {
  return item(word, kind, undefined, aboutWord(view.vocabulary, word));
}

/** Each label once, and the text it takes the place of. */
function finish(view: View, replace: Span, items: CompletionItem[]): CompletionItem[] {
  const range = rangeOf(view.document, replace);
  const seen = new Set<string>();
  return items.flatMap(({ insertText, ...each }) => {
    if (seen.has(each.label)) return [];
    seen.add(each.label);
    return [{ ...each, textEdit: { range, newText: insertText ?? each.label } }];
  });
}
