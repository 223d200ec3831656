/**
 * What a word of the language means.
 */
import { exampleIn } from "../../../grammar/example.ts";
import type { Row, Shape, Vocabulary, WordMeaning } from "../../../grammar/row.ts";
import { code, fenced, paragraphs, plain } from "./markdown.ts";

/** A row of the vocabulary: its meaning, an example in the file's unit, and what holds without it. */
export function aboutRow(row: Row, unit: string): string {
  const example = exampleIn(row, unit);
  return paragraphs(
    `**${plain(row.word)}** ${plain(shapeInWords(row.shape))}`.trimEnd(),
    row.meaning,
    fenced(row.opens && example.trimEnd().endsWith("{") ? `${example}\n}` : example),
    row.default && `Without it: ${plain(row.default)}`,
    row.later && "Read and kept, not yet worked out.",
  );
}

/** Where a word may be looked for, the likeliest first. */
const sorts: WordMeaning["sort"][] = ["marker", "choice", "direction", "unit", "function", "value"];

/** A marker word, unit, function or other word that does not begin a line; `prefer` is the sort to try first. */
export function aboutWord(
  vocabulary: Vocabulary,
  word: string,
  prefer?: WordMeaning["sort"],
): string | undefined {
  const found = vocabulary.words.filter((row) => row.word === word);
  found.sort((a, b) => rank(a, prefer) - rank(b, prefer));
  return found[0] && paragraphs(`**${plain(word)}**`, found[0].meaning);
}

function rank({ sort }: WordMeaning, prefer: WordMeaning["sort"] | undefined): number {
  return sort === prefer ? -1 : sorts.indexOf(sort);
}

/** A shape as a maker would read it: `out LENGTH, back LENGTH`. */
function shapeInWords(shape: Shape): string {
  switch (shape.is) {
    case "word":
      return shape.word;
    case "slot":
      return shape.words && shape.slot === "word" ? shape.words.join("|") : slotName(shape.slot, shape.label);
    case "seq":
      return shape.of.map(shapeInWords).filter(Boolean).join(" ");
    case "either":
      return shape.of.map(shapeInWords).join(" | ");
    case "clauses":
      return shape.of.map(shapeInWords).join(", ");
    case "maybe":
      return `[${shapeInWords(shape.of)}]`;
    case "list":
      return `${shapeInWords(shape.of)}, …`;
  }
}

function slotName(slot: string, label: string): string {
  if (slot === "text") return `"${label}"`;
  return slot === "name" ? "NAME" : label.toUpperCase();
}

/** Words of the language said of a rule's code in a hover. */
export function aboutRule(rule: {
  code: string;
  title: string;
  explanation: string;
  source: string;
}): string {
  return paragraphs(
    `**${plain(rule.title)}** ${code(rule.code)}`,
    rule.explanation,
    `Source: ${rule.source}`,
  );
}
