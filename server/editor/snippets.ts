/**
 * Text with places to fill in, made from the examples of the vocabulary table.
 */

import { exampleIn } from "../../grammar/example.ts";
import type { Kind } from "../../grammar/kind.ts";
import type { Row, Vocabulary } from "../../grammar/row.ts";

interface Asked {
  vocabulary: Vocabulary;
  /** The file's unit, which the figures are written in. */
  unit: string;
}

/** A block with the lines it must have, its name and figures to be filled in: in the form of a client's snippet. */
export function blockSnippet(row: Row, { vocabulary, unit }: Asked): string {
  let stop = 1;
  const fill = (text: string) =>
    text.replace(/(?:\d+ )?\d+(?:\.\d+|\/\d+)?/g, (figure) => `\${${stop++}:${figure}}`);
  const named = /^\s*\S+\s+(\S+)(.*)$/.exec(row.example.replace(/\s*\{\s*$/, ""));
  const head = named
    ? `${row.word} \${${stop++}:${harmless(named[1] as string)}}${harmless(named[2] as string)}`
    : row.word;
  const lines = required(row.opens, vocabulary).map(
    (inside) => `\t${fill(harmless(exampleIn(inside, unit)))}`,
  );
  return `${head} {\n${[...lines, "\t$0"].join("\n")}\n}`;
}

/** The same without places to fill in, for clients that know no snippets. */
export function blockText(row: Row): string {
  return `${row.example.replace(/\s*\{\s*$/, "")} {`;
}

/** The rows that a block of this kind must have, one for each question. */
function required(kind: Kind | undefined, vocabulary: Vocabulary): Row[] {
  return vocabulary.rows.filter((row) => row.owner === kind && row.required);
}

function harmless(text: string): string {
  return text.replace(/[\\$}]/g, "\\$&");
}
