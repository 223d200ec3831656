import { exampleOf } from "./example.ts";
import type { Kind } from "./kind.ts";
import { eolOf, lineEnd, lineStart } from "./lines.ts";
import type { Problem } from "./problem.ts";
import type { Row, Vocabulary } from "./row.ts";
import { fix, say } from "./say.ts";
import { sentence } from "./sentences/sentence.ts";
import { isWhole } from "./shape.ts";
import type { Statement } from "./tree.ts";
import { capital, nameOfKind, orList } from "./wording.ts";

/** The question a row answers; two rows of one block with the same facet cannot both be given. */
export function facetOf(row: Row): string {
  return row.facet ?? row.word;
}

interface Asked {
  vocabulary: Vocabulary;
  /** The file's unit, which examples are written in. */
  unit: string;
}

/** Looks at whole blocks: what is given twice in one, and what it lacks. */
export function checkBlocks(text: string, statements: readonly Statement[], asked: Asked): Problem[] {
  const problems: Problem[] = [];
  const inherits = statements.some(
    ({ row }) => row === undefined || (row.owner === "file" && row.word === "like"),
  );
  const walk = (block: readonly Statement[], kind: Kind, header?: Statement) => {
    tellTwice(block, problems);
    if (header !== undefined && !inherits) tellMissing(text, block, kind, header, asked, problems);
    for (const statement of block) {
      if (statement.block !== undefined) walk(statement.block.statements, statement.block.kind, statement);
    }
  };
  walk(statements, "file");
  return problems;
}

/** A line already reported, whose question may well be another. */
function isBroken({ match, parts }: Statement): boolean {
  return match !== undefined && !isWhole(match, parts);
}

function tellTwice(block: readonly Statement[], problems: Problem[]): void {
  const first = new Map<string, Statement>();
  for (const statement of block) {
    const row = statement.row;
    if (row === undefined || row.many === true || row.owner !== statement.within || isBroken(statement))
      continue;
    const facet = facetOf(row);
    const before = first.get(facet);
    if (before === undefined) {
      first.set(facet, statement);
      continue;
    }
    const other = before.row?.word;
    const same = other === row.word;
    const problem = say(
      "given-twice",
      statement.word ?? statement,
      same
        ? sentence("given-twice.above", { word: row.word })
        : sentence("given-twice.other", { other, word: row.word }),
    );
    const at = before.word ?? before;
    problem.related = [
      { start: at.start, end: at.end, message: sentence("related.word-given-here", { word: other }) },
    ];
    problems.push(problem);
  }
}

function tellMissing(
  text: string,
  block: readonly Statement[],
  kind: Kind,
  header: Statement,
  { vocabulary, unit }: Asked,
  problems: Problem[],
): void {
  const given = new Set(
    block.flatMap(({ row }) => (row === undefined ? [] : [facetOf(row), ...(row.insteadOf ?? [])])),
  );
  if (block.some(({ row }) => row === undefined)) return; // an unread line may be the one that is missing
  for (const row of requiredRows(kind, vocabulary)) {
    const facet = facetOf(row);
    if (given.has(facet)) continue;
    const choices = vocabulary.rows.filter((one) => one.owner === kind && facetOf(one) === facet);
    const words = choices.map(({ word }) => word);
    const name = header.match?.facts.find(({ slot }) => slot === "name" || slot === "ref")?.name;
    const title = name === undefined ? nameOfKind(kind) : `\`${name}\``;
    const needed = orList([...new Set(words)].map((word) => `\`${word}\``));
    problems.push(
      say(
        "missing-property",
        header.word ?? header,
        sentence("missing-property", { Title: capital(title), needed, example: exampleOf(row, unit) }),
        [addLine(text, header, exampleOf(row, unit))],
      ),
    );
  }
}

/** A fix that puts an example line in at the head of the block. */
function addLine(text: string, header: Statement, line: string) {
  const { block } = header;
  const [first] = block!.statements;
  if (text[block!.start] !== "{" && first !== undefined && first.start === block!.start) {
    // The block's header is gone, so the new line goes above the first that is left.
    const indent = /^[ \t]*/.exec(text.slice(lineStart(text, first.start)))?.[0] ?? "";
    return fix(sentence("fix.add-line", { line }), [
      { start: first.start, end: first.start, text: `${line}${eolOf(text, first.start)}${indent}` },
    ]);
  }
  const start = text[block!.start] === "{" ? block!.start + 1 : block!.start;
  const before = text.slice(lineStart(text, header.start), header.start);
  const pad = /^\s*/.exec(before)?.[0] ?? "";
  const eol = eolOf(text, start);
  const rest = /^[ \t]*(?:#|\r|\n|$)/.test(text.slice(start, lineEnd(text, start) + 1))
    ? ""
    : `${eol}${pad}  `;
  return fix(sentence("fix.add-line", { line }), [
    { start, end: start, text: `${eol}${pad}  ${line}${rest}` },
  ]);
}

const required = new WeakMap<Vocabulary, Map<Kind, Row[]>>();

function requiredRows(kind: Kind, vocabulary: Vocabulary): readonly Row[] {
  let kinds = required.get(vocabulary);
  if (kinds === undefined) {
    kinds = new Map();
    for (const row of vocabulary.rows) {
      if (row.required === true) kinds.set(row.owner, [...(kinds.get(row.owner) ?? []), row]);
    }
    required.set(vocabulary, kinds);
  }
  return kinds.get(kind) ?? [];
}
