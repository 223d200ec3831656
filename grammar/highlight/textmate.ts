import type { Kind } from "../kind.ts";
import type { Row, Shape, Vocabulary, WordMeaning } from "../row.ts";

/** A rule of a TextMate grammar. */
interface Rule {
  name?: string;
  match?: string;
  begin?: string;
  end?: string;
  captures?: Record<string, Rule>;
  beginCaptures?: Record<string, Rule>;
  endCaptures?: Record<string, Rule>;
  patterns?: Rule[];
  include?: string;
}

interface TextMateGrammar {
  name: string;
  scopeName: string;
  fileTypes: string[];
  patterns: Rule[];
  repository: Record<string, Rule>;
}

/** Nothing that would make the word before it longer: `top` is not `top-rail`. */
const wordEnd = "(?![\\p{L}\\p{M}\\d_.-])";
const wordStart = "(?<![\\p{L}\\p{M}\\d_.-])";
/** A number may follow a minus sign; a name that holds digits was matched whole before. */
const numberStart = "(?<![\\p{L}\\p{M}\\d_.])";
/** Where a statement can begin. */
const lineStart = "(?:^|(?<=[;{}]))\\s*";
const name = "\\p{L}[\\p{L}\\p{M}\\d]*(?:-[\\p{L}\\p{M}\\d]+)*";

/**
 * The TextMate grammar of the language, made from the vocabulary: the words that begin lines are coloured in the kind of block
 * they belong to, and words within a line as markers, choices, units, functions or names. Scopes are the usual ones of the format.
 */
function textmateGrammar(vocabulary: Vocabulary): TextMateGrammar {
  const kinds = [...new Set(vocabulary.rows.map(({ owner }) => owner))];
  const repository: Record<string, Rule> = {
    comment: { name: "comment.line.number-sign.chair", match: "#.*$" },
    rest: { patterns: rest(vocabulary) },
  };
  for (const kind of kinds) {
    const rows = vocabulary.rows.filter(({ owner }) => owner === kind);
    repository[kind] = {
      patterns: [
        include("comment"),
        ...blocks(rows),
        ...statements(rows, kind),
        include("rest"),
        { name: "punctuation.separator.chair", match: "[;,]" },
      ],
    };
  }
  return {
    name: "Chair",
    scopeName: "source.chair",
    fileTypes: ["chair"],
    patterns: [include("file")],
    repository,
  };
}

const include = (what: string): Rule => ({ include: `#${what}` });
const scope = (named: string): Rule => ({ name: `${named}.chair` });

/** One rule for each kind of block that these rows open: its header up to the brace, and what stands inside. */
function blocks(rows: readonly Row[]): Rule[] {
  const openers = rows.filter((row) => row.opens !== undefined);
  // `seat solid` opens another block than `seat` and any other word: it is looked for first.
  const exact = ({ shape }: Row) => (shape.is === "word" ? 0 : 1);
  openers.sort((a, b) => exact(a) - exact(b));
  return openers.map((row) => ({
    begin: `${lineStart}(${literal(row.word)})${wordEnd}${second(row)}([^#;{}"\\n]*)(\\{)`,
    beginCaptures: {
      1: scope("storage.type"),
      2: scope("entity.name.type"),
      3: { patterns: [include("rest")] },
      4: scope("punctuation.section.block.begin"),
    },
    end: "\\}",
    endCaptures: { 0: scope("punctuation.section.block.end") },
    patterns: [include(row.opens as Kind)],
  }));
}

/** What may stand after an opener's word: a name, or the one word that makes it this opener. */
const second = ({ shape }: Row): string =>
  shape.is === "word" ? `([ \\t]+${literal(shape.word)})${wordEnd}` : `([ \\t]+${name})?`;

/** The words that begin lines. At the outermost level they are the language's keywords, in a block its properties. */
function statements(rows: readonly Row[], kind: Kind): Rule[] {
  const words = alternatives(rows.map(({ word }) => word));
  const named = alternatives(rows.filter(({ shape }) => declares(shape)).map(({ word }) => word));
  const own = kind === "file" ? "keyword.other" : "support.type.property-name";
  const rules: Rule[] = [];
  if (named !== undefined) {
    rules.push({
      match: `${lineStart}(${named})${wordEnd}[ \\t]+(${name})`,
      captures: { 1: scope("storage.type"), 2: scope("entity.name.type") },
    });
  }
  if (words !== undefined) {
    rules.push({ match: `${lineStart}(${words})${wordEnd}`, captures: { 1: scope(own) } });
  }
  return rules;
}

/** Whether a line of this shape gives something a name. */
function declares(shape: Shape): boolean {
  if (shape.is === "slot") return shape.slot === "name";
  return shape.is === "seq" && shape.of[0] !== undefined && declares(shape.of[0]);
}

function rest({ rows, words }: Vocabulary): Rule[] {
  const markers = new Set(
    rows.flatMap(({ shape }) => markersIn(shape)).filter((word) => /^\p{L}/u.test(word)),
  );
  const choices = new Set(words.filter(({ sort }) => sort === "choice").map(({ word }) => word));
  for (const row of rows) for (const choice of choicesIn(row.shape)) choices.add(choice);
  for (const marker of markers) choices.delete(marker);
  const of = (sort: WordMeaning["sort"]) =>
    alternatives(
      words.filter((one) => one.sort === sort && /^\p{L}/u.test(one.word)).map(({ word }) => word),
    );
  const rules: Rule[] = [
    include("comment"),
    {
      name: "string.quoted.double.chair",
      begin: '"',
      end: '"|$',
      patterns: [{ name: "constant.character.escape.chair", match: '\\\\["\\\\]' }],
    },
    { name: "constant.other.date.chair", match: "\\b\\d{4}-\\d{2}-\\d{2}\\b" },
    { name: "constant.numeric.slope.chair", match: `${numberStart}\\d+(?:\\.\\d+)?:\\d+(?:\\.\\d+)?` },
    {
      match: `${numberStart}(\\d+[ \\t]+\\d+/\\d+|\\d+/\\d+|\\d+(?:\\.\\d+)?)(?:[ \\t]*(%|(?:${of("unit")})${wordEnd}))?`,
      captures: { 1: scope("constant.numeric"), 2: scope("keyword.other.unit") },
    },
    { match: `${wordStart}(${of("function")})(?=[ \\t]*\\()`, captures: { 1: scope("support.function") } },
    {
      match: `${wordStart}(${alternatives([...markers, "of"])})${wordEnd}`,
      captures: { 1: scope("keyword.operator.word") },
    },
    {
      match: `${wordStart}(${alternatives([...choices])})${wordEnd}`,
      captures: { 1: scope("constant.language") },
    },
    { name: "variable.other.chair", match: `${name}(?:\\.[\\p{L}\\p{M}\\d_-]+)*` },
    { name: "keyword.operator.chair", match: "<=|>=|[-+*/=<>]" },
    { name: "punctuation.section.parens.chair", match: "[()]" },
  ];
  return rules;
}

function markersIn(shape: Shape): string[] {
  if (shape.is === "word") return shape.label === undefined ? [shape.word] : [];
  if (shape.is === "slot") return [];
  return Array.isArray(shape.of) ? shape.of.flatMap(markersIn) : markersIn(shape.of as Shape);
}

/** Words that say something by themselves: labelled words, and the words a slot chooses from. */
function choicesIn(shape: Shape): string[] {
  if (shape.is === "word") return shape.label === undefined ? [] : [shape.word];
  if (shape.is === "slot") return [...(shape.words ?? [])];
  return Array.isArray(shape.of) ? shape.of.flatMap(choicesIn) : choicesIn(shape.of as Shape);
}

/** Words as alternatives of a pattern, the longer first so that none hides another. */
function alternatives(words: readonly string[]): string | undefined {
  if (words.length === 0) return undefined;
  const sorted = [...new Set(words)].sort(
    (one, other) => other.length - one.length || (one < other ? -1 : 1),
  );
  return sorted.map(literal).join("|");
}

function literal(word: string): string {
  return word.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");
}

/** The text of the generated file. */
export function textmateFile(vocabulary: Vocabulary): string {
  return `${JSON.stringify(textmateGrammar(vocabulary), undefined, 2)}\n`;
}
