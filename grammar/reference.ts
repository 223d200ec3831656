import { codes } from "./codes.ts";
import type { Kind } from "./kind.ts";
import type { Row, Shape, Vocabulary, WordMeaning } from "./row.ts";
import { capital, nameOfKind } from "./wording.ts";

const titles: Partial<Record<Kind, string>> = {
  file: "The file",
  slat: "Slats",
  block: "Corner blocks",
  end: "Ends",
  seat: "The seat",
  sitter: "The sitter",
  waste: "Waste",
};

const sorts: [WordMeaning["sort"], string][] = [
  ["direction", "Directions"],
  ["unit", "Units"],
  ["function", "Functions"],
  ["choice", "Choices"],
  ["marker", "Words within a line"],
  ["value", "Worked-out values"],
];

/** The language reference in Markdown, made from the vocabulary; `more` are sections that others make, such as the species. */
export function reference(vocabulary: Vocabulary, more: readonly string[] = []): string {
  const kinds = [...new Set(vocabulary.rows.map(({ owner }) => owner))];
  const parts = [
    "# The language, word by word",
    "This page is made from the vocabulary table by `grammar/reference.ts`; change the table, not the page.",
    "In the shapes below, words stand as they are written; `‹length›` and the like are what you put in. What stands in `[ ]` may be left out; `A | B` is one or the other; `…, …` is a list. Phrases separated by `,` in `{ }` may come in any order.",
    ...kinds.flatMap((kind) => kindSection(kind, vocabulary)),
    "## Words",
    ...sorts.flatMap(([sort, title]) =>
      wordSection(
        title,
        vocabulary.words.filter((one) => one.sort === sort),
      ),
    ),
    ...more,
    "## What reading can find wrong",
    ["| code | what it means |", "| --- | --- |", ...codes.map(codeLine)].join("\n"),
  ];
  return `${parts.join("\n\n")}\n`;
}

function kindSection(kind: Kind, { rows }: Vocabulary): string[] {
  const opener = rows.find((row) => row.opens === kind);
  const title = titles[kind] ?? `${capital(nameOfKind(kind).replace(/^an? /, ""))}s`;
  const where =
    kind === "file"
      ? "What stands outside all blocks."
      : `What stands in the block of \`${opener?.example ?? kind}\`.`;
  return [`## ${title}`, where, ...rows.filter(({ owner }) => owner === kind).flatMap(rowSection)];
}

function rowSection(row: Row): string[] {
  const shape = shapeText(row.shape);
  const notes: string[] = [];
  if (row.required) notes.push("Must be given.");
  if (row.many) notes.push("May be given more than once.");
  if (row.default !== undefined) notes.push(`When not given: ${asCode(row.default, row)}.`);
  if (row.opens !== undefined) notes.push(row.blockOptional ? "May open a block." : "Opens a block.");
  if (row.later) notes.push("Read and kept; nothing is worked out from it yet.");
  return [
    `### \`${`${row.word} ${shape}`.trim()}\``,
    row.meaning,
    [
      "```chair",
      row.opens !== undefined && row.example.endsWith("{") ? `${row.example} … }` : row.example,
      "```",
    ].join("\n"),
    ...(row.drawing === undefined
      ? []
      : [`A bare angle goes this way:\n\n\`\`\`text\n${row.drawing}\n\`\`\``]),
    ...(notes.length > 0 ? [notes.join(" ")] : []),
  ];
}

/** A default that is a line of the language stands as code, one in words as it is. */
function asCode(text: string, row: Row): string {
  return text.startsWith(row.word) ? `\`${text}\`` : text;
}

/** A shape as the reference shows it: `‹length› x ‹length›`. */
function shapeText(shape: Shape): string {
  switch (shape.is) {
    case "word":
      return shape.word;
    case "slot":
      return slotText(shape);
    case "seq":
      return shape.of.map(grouped).filter(Boolean).join(" ");
    case "either":
      return shape.of.map(shapeText).join(" | ");
    case "clauses":
      return `{ ${shape.of.map(shapeText).join(", ")} }`;
    case "maybe":
      return `[${shapeText(shape.of)}]`;
    case "list":
      return `${grouped(shape.of)}, …`;
  }
}

function grouped(shape: Shape): string {
  return shape.is === "either" ? `(${shapeText(shape)})` : shapeText(shape);
}

function slotText(shape: Extract<Shape, { is: "slot" }>): string {
  if (shape.slot === "word" && shape.words)
    return shape.words.length > 1 ? `(${shape.words.join(" | ")})` : `${shape.words[0]}`;
  const what =
    shape.slot === "ref" ? (shape.ref === "any" || shape.ref === undefined ? "name" : shape.ref) : shape.slot;
  return [`‹${what}›`, ...(shape.words ?? [])].join(" | ");
}

function wordSection(title: string, words: readonly WordMeaning[]): string[] {
  if (words.length === 0) return [];
  const lines = words.map(({ word, meaning }) => `| \`${word}\` | ${cell(meaning)} |`);
  return [`### ${title}`, ["| word | meaning |", "| --- | --- |", ...lines].join("\n")];
}

function codeLine({ code, explanation }: (typeof codes)[number]): string {
  return `| \`${code}\` | ${cell(explanation)} |`;
}

const cell = (text: string): string => text.replaceAll("|", "\\|");
