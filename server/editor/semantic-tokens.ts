/**
 * Colours that only meaning can give: which word is a property and which a name, what a name stands for, where it is given.
 */
import type { SemanticTokens, SemanticTokensLegend } from "vscode-languageserver-types";
import type { Span } from "../../grammar/problem.ts";
import { markersOf } from "../../grammar/table.ts";
import type { Fact, Statement, Value } from "../../grammar/tree.ts";
import { everyStatement } from "../../grammar/walk.ts";
import { workedValue } from "../chair/values/values.ts";
import type { Declared } from "../design/design.ts";
import { mentionsIn } from "./names/names.ts";
import { everyValue, refSlot, valuesOf } from "./names/place.ts";
import { meet, type View } from "./view.ts";

const types = [
  "keyword",
  "property",
  "modifier",
  "enumMember",
  "class",
  "interface",
  "variable",
  "function",
] as const;
const modifiers = ["declaration", "readonly"] as const;
type Type = (typeof types)[number];
type Modifier = (typeof modifiers)[number];

export const semanticLegend: SemanticTokensLegend = {
  tokenTypes: [...types],
  tokenModifiers: [...modifiers],
};

interface Token extends Span {
  type: Type;
  modifiers: Modifier[];
}

const typeOfDeclared: Record<Declared["is"], Type> = {
  post: "class",
  rail: "class",
  slat: "class",
  stick: "class",
  bow: "class",
  block: "class",
  board: "class",
  yard: "class",
  load: "interface",
  joint: "interface",
  angle: "variable",
  let: "variable",
};

/** The tokens of a file, or of the stretch asked for, in the encoding of the protocol. */
export function semanticTokens(view: View, stretch?: Span): SemanticTokens {
  const tokens = [...namesOf(view), ...wordsOf(view)].filter((token) => !stretch || meet(token, stretch));
  return { data: encode(view, withoutOverlaps(tokens)) };
}

function namesOf(view: View): Token[] {
  const { names } = view.study.design;
  return mentionsIn(view).flatMap(({ name, is, start, end }) => {
    const declared = names.get(name);
    if (!declared) return [];
    const fixed = declared.is === "angle" || (declared.is === "let" && !declared.within);
    const says: Modifier[] = [
      ...(is === "declaration" ? ["declaration" as const] : []),
      ...(fixed ? ["readonly" as const] : []),
    ];
    return [{ start, end, type: typeOfDeclared[declared.is], modifiers: says }];
  });
}

function* wordsOf(view: View): Generator<Token> {
  for (const statement of everyStatement(view.tree.statements)) {
    const { word, row } = statement;
    if (word && row) yield token(word, row.opens || row.owner === "file" ? "keyword" : "property");
    for (const fact of statement.match?.facts ?? []) yield* ofFact(statement, fact);
    yield* markersIn(statement);
    for (const value of valuesOf(statement)) yield* insideValue(view, value);
  }
}

function* markersIn({ row, parts }: Statement): Generator<Token> {
  const markers = row && markersOf(row.shape);
  for (const part of parts)
    if (part.is === "word" && part.text !== "x" && markers?.has(part.text)) yield token(part, "modifier");
}

function* insideValue(view: View, value: Value): Generator<Token> {
  for (const inside of everyValue(value)) {
    if (inside.is === "call") yield token(inside.fn, "function");
    if (inside.is === "share") yield token(inside.of, "modifier");
    if (inside.is === "name" && workedValue(view.study.chair, inside.name))
      yield token(inside, "property", ["readonly"]);
  }
}

function* ofFact(statement: Statement, fact: Fact): Generator<Token> {
  if (fact.slot === "marker") yield token(fact, "modifier");
  if (fact.slot === "word") yield token(fact, "enumMember");
  if (fact.slot !== "ref" || !statement.row) return;
  const slot = refSlot(statement.row, fact.label);
  if (slot?.ref === "rule" || slot?.ref === "species") yield token(fact, "enumMember");
  // Any other name that nobody declared keeps the plain colour: that it is unknown shows.
}

function token({ start, end }: Span, type: Type, says: Modifier[] = []): Token {
  return { start, end, type, modifiers: says };
}

/** In the order of the text; of tokens that overlap, the first given. */
function withoutOverlaps(tokens: Token[]): Token[] {
  const ordered = tokens
    .map((each, given) => ({ each, given }))
    .sort((a, b) => a.each.start - b.each.start || a.given - b.given);
  const kept: Token[] = [];
  let end = 0;
  for (const { each } of ordered) {
    if (each.start < end || each.end <= each.start) continue;
    kept.push(each);
    end = each.end;
  }
  return kept;
}

function encode({ document }: View, tokens: Token[]): number[] {
  const data: number[] = [];
  let line = 0;
  let character = 0;
  for (const { start, end, type, modifiers: says } of tokens) {
    const at = document.positionAt(start);
    const bits = says.reduce((sum, modifier) => sum | (1 << modifiers.indexOf(modifier)), 0);
    data.push(
      at.line - line,
      at.line === line ? at.character - character : at.character,
      end - start,
      types.indexOf(type),
      bits,
    );
    line = at.line;
    character = at.character;
  }
  return data;
}
