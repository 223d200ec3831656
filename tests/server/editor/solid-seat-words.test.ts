/** Every statement of chairs on a solid seat, through the whole of the language: read, laid out, told of, offered, coloured, listed, taken on, wrong. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import type { MarkupContent } from "vscode-languageserver-types";
import type { Row } from "../../../grammar/row.ts";
import { vocabulary } from "../../../grammar/vocabulary/index.ts";
import { completion } from "../../../server/editor/completion.ts";
import { formatting } from "../../../server/editor/formatting.ts";
import { hover } from "../../../server/editor/hover.ts";
import { rename } from "../../../server/editor/rename.ts";
import { semanticTokens } from "../../../server/editor/semantic-tokens.ts";
import { documentSymbols } from "../../../server/editor/symbols.ts";
import { studied } from "../../check.ts";
import { edited } from "./frame.ts";
import { viewOf } from "./view.ts";

/** Of each header its statements, each with the same cut short or misspelt and the code of what is found then. */
const statements: Record<string, [line: string, wrong: string, code: string][]> = {
  "seat solid": [
    ["up 430", "up", "missing-value"],
    ["back 15", "back x", "unknown-name"],
    ["fall 12", "fall 12deg", "wrong-unit"],
    ["slope 2deg", "slope 2mm", "wrong-unit"],
    ["thick 44", "thick", "missing-value"],
    ["deep 400", "deep", "missing-value"],
    ["wide 410 at 12", "wide 410 at", "missing-value"],
    ["wide 440 at 150 straight", "wide 440", "missing-value"],
    ["round 330", "round", "missing-value"],
    ["corner 25", "corner", "missing-value"],
    ["corner front 35, back 25", "corner front", "missing-value"],
    ["tail 90 x 40", "tail 90 x", "missing-value"],
    ["hollow 12 over 100 open front, rim 50", "hollow 12 over", "missing-value"],
    ["bevel 25 x 14 below", "bevel 25 x 14", "missing-value"],
    ["grain fore-and-aft", "grain along", "unknown-word"],
    ["boards 3", "boards", "missing-value"],
    ["timber american-elm moisture 9%", "timber", "missing-value"],
  ],
  "post leg pair": [
    ["into seat at out 155, back 80 from above", "into seat at out", "missing-value"],
    ["stand on seat at out 190, back 140", "stand on seat", "missing-value"],
    ["top into arm-bow at 60 with arm-tenon", "top into", "missing-value"],
    ["splay 9deg top out", "splay 9deg top", "missing-value"],
    ["rake 7deg foot forward", "rake 7deg foot", "missing-value"],
    ["lean 12deg, sight-line 130deg", "lean", "missing-value"],
    ["shape at top round 28", "shape at top", "missing-value"],
  ],
  "stick back-stick": [
    ["from seat to crest", "from seat to", "missing-value"],
    ["count 7 even", "count 7", "missing-value"],
    ["feet in 34, behind 300 to 340", "feet in", "missing-value"],
    ["at out 190, back 210", "at", "missing-value"],
    ["heads margin 48 to 96", "heads", "missing-value"],
    ["heads spread 190", "heads spread", "missing-value"],
    ["through arm-bow spread 190", "through", "missing-value"],
    ["round 14", "round", "missing-value"],
    ["taper 12 to end", "taper 12 to", "missing-value"],
    ["shape at 150 round 16", "shape at 150", "missing-value"],
    ["joined stick-tenon", "joined", "missing-value"],
  ],
  "bow hoop": [
    ["feet in seat at out 150, back 330", "feet in seat", "missing-value"],
    ["hands out 255, back 150", "hands out", "missing-value"],
    ["rake 12deg", "rake", "missing-value"],
    ["lie up 660, fall 10", "lie", "missing-value"],
    ["wide 470 at 180", "wide 470", "missing-value"],
    ["rise 480", "rise", "missing-value"],
    ["round 24", "round", "missing-value"],
    ["section 22 x 32", "section 22", "missing-value"],
    ["taper 20 to ends", "taper 20 to", "missing-value"],
    ["joined hoop-foot", "joined", "missing-value"],
  ],
  "rail crest": [
    ["carried by back-stick", "carried by", "missing-value"],
    ["long 430", "long", "missing-value"],
    ["taper 18 to ends", "taper 18", "missing-value"],
    ["shape at 30 round 19", "shape at 30", "missing-value"],
    ["from leg to hoop at 120", "from leg to", "missing-value"],
  ],
  "joint leg-socket": [
    ["round 28 to 22", "round 28 to", "missing-value"],
    ["round 12, long 26", "round", "missing-value"],
    ["through wedged", "through wedge", "unknown-word"],
  ],
};

const cases = Object.entries(statements).flatMap(([header, lines]) =>
  lines.map(([line, wrong, code]) => ({ header, line, wrong, code })),
);
const written = (header: string, line: string, unit = "mm") => `units ${unit}\n${header} {\n  ${line}\n}\n`;
/** What is wrong with the line itself: of each block only one line is given here. */
const syntax = ({ view }: ReturnType<typeof viewOf>) =>
  view.tree.problems.map(({ code }) => code).filter((code) => code !== "missing-property");
const two = { insertSpaces: true, tabSize: 2 };

describe.each(cases)("$header: $line", ({ header, line, wrong, code }) => {
  const word = line.split(" ")[0]!;
  const read = viewOf(written(header, `|${line}`));
  const statement = read.view.tree.statements[1]?.block?.statements[0];

  it("is read by a row of its own, in inches too", () => {
    expect(syntax(read)).toEqual([]);
    expect(statement?.row?.word).toBe(word);
    expect(
      syntax(
        viewOf(
          written(
            header,
            line.replace(/\b(\d+)(?![\d%]|deg)/g, "$1 1/2").replace(/(boards|count) (\d+) 1\/2/, "$1 $2"),
            "in",
          ),
        ),
      ),
    ).toEqual([]);
  });

  it("is laid out, told of, offered and coloured", () => {
    const untidy = viewOf(written(header, `   ${line.replaceAll(" ", "   ")}`)).view;
    expect(edited(untidy, formatting(untidy, two))).toBe(read.text);
    const told = hover(read.view, read.offset)?.contents as MarkupContent | undefined;
    expect(told?.value).toContain(statement?.row?.meaning);
    const { view, offset } = viewOf(written(header, "|"));
    expect(completion(view, offset, { snippets: false }).map(({ label }) => label)).toContain(word);
    expect(semanticTokens(read.view).data.length).toBeGreaterThan(0);
  });

  it("cut short or wrong is found on its own line, and the lines beside it hold", () => {
    const text = `${written(header, `${wrong}`)}let beside = 5\n`;
    const found = studied(text).problems.filter(({ severity }) => severity === "error");
    expect(found.map((each) => each.code)).toContain(code);
    const { start, end } = found.find((each) => each.code === code)!;
    const from = text.indexOf(wrong);
    expect(start >= from - 3 && end <= from + wrong.length + 1).toBe(true);
    expect(viewOf(text).view.tree.statements.length).toBe(3);
  });
});

it("leaves out no statement of solid seats, sticks and bows", () => {
  const used = new Set<Row>();
  for (const { header, line } of cases) {
    const row = viewOf(written(header, line)).view.tree.statements[1]?.block?.statements[0]?.row;
    if (row) used.add(row);
  }
  const own = vocabulary.rows.filter(({ owner }) => ["solid-seat", "stick", "bow"].includes(owner));
  // Timber, boards to saw from and hidden faces are as those of any other part.
  const shared = ["timber", "sawn", "hidden", "end"];
  const missing = own.filter((row) => !used.has(row) && !shared.includes(row.word));
  expect(missing.map(({ owner, word }) => `${owner} ${word}`)).toEqual([]);
});

const sample = (name: string) =>
  readFileSync(new URL(`../../../samples/${name}.chair`, import.meta.url), "utf8");
const [slip, bow] = [sample("slip-chair"), sample("bow-armchair")];

it.each([
  ["slip-chair", "crest"],
  ["slip-chair", "back-stick"],
  ["slip-chair", "front-leg"],
  ["slip-chair", "leg-socket"],
  ["bow-armchair", "arm-bow"],
  ["bow-armchair", "hoop"],
  ["bow-armchair", "arm-post"],
] as const)("%s: %s is renamed wherever it is named, and stands in the outline", (name, part) => {
  const text = sample(name);
  const { view, offset } = viewOf(text.replace(new RegExp(`^(\\w+ )${part}(?![\\w-])`, "m"), `$1|${part}`));
  const answer = rename(view, offset, "newly", []);
  if ("refused" in answer) throw new Error(answer.refused);
  const other = edited(view, answer.changes?.[view.uri] ?? []);
  expect(other.replace(/#.*/g, "")).not.toMatch(new RegExp(`[ .]${part}(?![\\w-])`));
  expect(studied(other).problems).toEqual([]);
  const names = documentSymbols(viewOf(other).view).map((symbol) => symbol.name);
  expect(names.some((each) => each.includes("newly"))).toBe(true);
});

describe("a chair that starts from another", () => {
  const on = (base: string, more: string) =>
    studied(`like "base.chair"\nchair "Other"\n${more}`, { "base.chair": base });

  it.each([
    [slip, "seat solid {\n  hollow 8 over 100, rim 50\n}\n", "seat.low", 418],
    [slip, "seat solid {\n  up 440\n}\n", "seat.height", 440],
    [slip, "post front-leg pair {\n  rake 12deg foot forward\n}\n", "front-leg.left.lean", 0.26],
    [slip, "stick back-stick {\n  feet in 30, behind 300\n}\n", "back-stick.1.length", 488],
    [slip, "rail crest {\n  long 420\n}\n", "crest.length", 420],
    [bow, "bow hoop {\n  rise 440\n}\n", "hoop.strip-length", 1230],
    [bow, "bow arm-bow {\n  rise 290\n}\n", "arm-bow.length", 900],
  ])("changes one line of it (%#)", (base, more, value, about) => {
    const was = studied(base).chair.values.get(value)!.number;
    const now = on(base, more).chair.values.get(value)!.number;
    expect(now).not.toBeCloseTo(was, 4);
    expect(Math.abs(now / about - 1)).toBeLessThan(0.1);
  });

  it("goes without sticks, crest and bows", () => {
    const { chair, problems } = on(slip, "without crest, back-stick\n");
    expect(problems.filter(({ severity }) => severity === "error")).toEqual([]);
    expect([chair.sticks.size, chair.rails.has("crest"), chair.seat !== undefined]).toEqual([0, false, true]);
    const bare = on(bow, "without hoop, back-stick, arm-bow, arm-stick, short-stick, arm-post\n");
    expect([bare.chair.bows.size, bare.chair.sticks.size]).toEqual([0, 0]);
    expect(bare.problems.filter(({ severity }) => severity === "error")).toEqual([]);
  });
});
