/**
 * Whatever is shown to a file in inches or centimetres is in its unit: findings with their mends, hovers, completions and snippets,
 * hints, reports and the drawings' words, over samples and over the same samples with a number moved, so that there are findings.
 */
import { describe, expect, it } from "vitest";
import { fileUnit, parse } from "../../../grammar/parser.ts";
import { vocabulary } from "../../../grammar/vocabulary/index.ts";
import { everyStatement } from "../../../grammar/walk.ts";
import { drawSheet } from "../../../server/drawing/draw-sheet.ts";
import { markoutPages } from "../../../server/drawing/markout/pages.ts";
import { completion } from "../../../server/editor/completion.ts";
import { hover } from "../../../server/editor/hover.ts";
import { inlayHints } from "../../../server/editor/inlay-hints.ts";
import { defaultSettings } from "../../../server/editor/settings.ts";
import { mend } from "../../../server/mends/mends.ts";
import { messageOf } from "../../../server/mends/words.ts";
import { samples } from "../../proofs/mended-texts.ts";
import { examples } from "../../rule-examples.ts";
import { plainView } from "../editor/view.ts";
import { chairs, seatwright } from "../main/cli/bench.ts";
import { inUnit, type Unit } from "./in-unit.ts";

const address = "file:///samples/chair.chair";
const viewIn = (name: string, unit: Unit, change = (text: string) => text) =>
  plainView(change(inUnit(samples[`${name}.chair`]!, unit)), address, { ...samples });

/** What is left of a text once everything that may name another unit is taken away. */
function strangers(text: string, unit: Unit): string[] {
  const plain = text
    // A figure of a printed source stands beside the file's own: `7 7/8 in (200 mm)`.
    .replace(/(?:in|lb|lbf|lbf·ft\/rad) \([^)]*\)/g, "")
    // The language's own words for units, and what a maker or an explanation writes with its unit touching.
    .replace(/`[^`]*`/g, "")
    .replace(/\b\d[\d./]*(?:mm|cm|in|kg|lb|N)\b/g, "");
  const others = {
    mm: /\d (?:cm|in|lb|lbf)\b/g,
    cm: /\d (?:mm|in|lb|lbf)\b/g,
    in: /\d (?:mm|cm|m³|kg|N)(?:[²³]|\b)/g,
  }[unit];
  return [...plain.matchAll(others)].map(({ index }) => plain.slice(Math.max(0, index - 40), index + 12));
}

/** Bare lengths in the code of a text that are the same whatever the file's unit is: nobody wrote them anew. */
function bareIn(text: string): string[] {
  const lines = [...text.matchAll(/```chair\n([\s\S]*?)\n```|`([^`\n]+)`/g)].map(
    ([, block, span]) => block ?? span ?? "",
  );
  return lines.flatMap((line) =>
    [...line.matchAll(/(?<![\w./-])\d[\d./]*(?![\w./%:°])/g)].map(([figure]) => `${figure} of ${line}`),
  );
}

describe.each(["in", "cm"] as const)("in a file in %s", (unit) => {
  it.each(["mess-armchair", "harbour-chair", "joined-stool"])(
    "hovers, completions and hints of %s",
    (name) => {
      const view = viewIn(name, unit);
      expect(fileUnit(view.tree.text)).toBe(unit);
      const shown: string[] = [];
      for (const statement of everyStatement(view.tree.statements)) {
        const facts = statement.match?.facts ?? [];
        for (const { start } of [statement.word ?? statement, ...facts]) {
          const contents = hover(view, start)?.contents;
          if (contents && typeof contents === "object" && "value" in contents) shown.push(contents.value);
        }
      }
      const stretch = { start: 0, end: view.tree.text.length };
      const settings = {
        ...defaultSettings,
        inlayHints: { lengths: true, bevels: true, values: true, strength: true },
      };
      shown.push(...inlayHints(view, stretch, settings).map(({ label }) => String(label)));
      expect(shown.length).toBeGreaterThan(50);
      expect([...new Set(shown.flatMap((text) => strangers(text, unit)))]).toEqual([]);
    },
  );

  it("examples, snippets and their explanations are written in it", () => {
    const counts = new Set([
      "count",
      "dowels",
      "make",
      "times",
      "sitter",
      "stability",
      "note",
      "price",
      "limit",
      "timber",
      "peg",
      "sawn",
    ]);
    const same: string[] = [];
    for (const { word, owner } of vocabulary.rows) {
      if (counts.has(word)) continue;
      const opener = vocabulary.rows.find(({ opens }) => opens === owner);
      const of = (asked: Unit) => {
        const head = opener ? `${opener.example.replace(/\s*\{$/, "")} {\n  ` : "";
        const text = `units ${asked}\n${head}\n}\n`;
        const view = plainView(text, address);
        const found = completion(view, text.indexOf(`${head}\n`) + head.length, { snippets: true }).filter(
          ({ label }) => label === word,
        );
        return found.map(({ documentation, textEdit }) => {
          const words = typeof documentation === "object" ? documentation.value : (documentation ?? "");
          return `${words}\n\`${textEdit?.newText.replace(/\$\{\d+:([^}]*)\}/g, "$1")}\``;
        });
      };
      const [own, mm] = [of(unit), of("mm")].map((texts) => new Set(texts.flatMap(bareIn)));
      same.push(
        ...[...own!].filter(
          (figure) => mm!.has(figure) && !/^(0|1\/[234]) of|^2 of count 2$|^3 of boards 3$/.test(figure),
        ),
      );
    }
    expect(same).toEqual([]);
  });

  it("findings of samples with a number moved, and their mends", () => {
    const said: string[] = [];
    for (const name of ["mess-armchair", "joined-stool"]) {
      for (const [from, to] of [
        [/(post back pair \{\s+section) \S+ x \S+/, "$1 8mm x 8mm"],
        [/(tenon thick) [^,\n]+/, "$1 1mm"],
        [/(rail seat-front \{[^}]*up) [^\n]+/, "$1 900mm"],
      ] as const) {
        const view = viewIn(name, unit, (text) => text.replace(from, to));
        mend(view.study, view.files, { each: 2, all: 4 });
        for (const problem of view.study.problems)
          said.push(messageOf(problem), problem.found ?? "", problem.allowed ?? "");
      }
    }
    expect(said.length).toBeGreaterThan(20);
    expect([...new Set(said.flatMap((text) => strangers(text, unit)))]).toEqual([]);
  });

  it("findings of reading and of each rule's own example", () => {
    const said: string[] = [];
    for (const { example } of examples) {
      const text = inUnit(example, unit);
      if (parse(text, vocabulary).problems.length > parse(example, vocabulary).problems.length) continue;
      const { problems } = plainView(text, address, { ...samples }).study;
      for (const { message, found = "", allowed = "", otherwise = "" } of problems)
        said.push(message, found, allowed, otherwise);
    }
    expect(said.length).toBeGreaterThan(100);
    expect([...new Set(said.flatMap((text) => strangers(text, unit)))]).toEqual([]);
  });

  it("the drawing and the marking-out pages", () => {
    const { chair } = viewIn("mess-armchair", unit).study;
    const words = [JSON.stringify(drawSheet(chair, ["loads", "sitter"] as never))];
    const pages = markoutPages(chair, { paper: "a4" } as never);
    words.push(...pages.map((page) => JSON.stringify(page)));
    const texts = words.flatMap((json) =>
      [...json.matchAll(/"(?:text|words|label|value|says)":"([^"]+)"/g)].map(([, text]) => text!),
    );
    expect(texts.length).toBeGreaterThan(30);
    expect([
      ...new Set(texts.filter((text) => !/100 mm/.test(text)).flatMap((text) => strangers(text, unit))),
    ]).toEqual([]);
  });
});

describe("reports", () => {
  const at = chairs({
    ...samples,
    ...Object.fromEntries(
      (["in", "cm"] as const).flatMap((unit) =>
        ["mess-armchair", "bench-from-a-yard"].map((name) => [
          `${name}-${unit}.chair`,
          inUnit(samples[`${name}.chair`]!, unit),
        ]),
      ),
    ),
  });
  for (const unit of ["in", "cm"] as const) {
    it.each(["check", "reckon", "stand", "fit", "assemble", "boards", "strength"])(
      `%s in ${unit}`,
      (command) => {
        for (const name of command === "boards" ? ["bench-from-a-yard"] : ["mess-armchair"]) {
          const { out, code } = seatwright(command, at(`${name}-${unit}.chair`));
          expect(code).not.toBe(2);
          expect(out.length).toBeGreaterThan(50);
          expect(strangers(out.replace(/\n\s+/g, " "), unit)).toEqual([]);
        }
      },
    );
  }

  it("print one figure for one length, whoever prints it", () => {
    const name = "mess-armchair-in.chair";
    const [reckon, stand] = [seatwright("reckon", at(name)).out, seatwright("stand", at(name)).out];
    const height = /seat\.height +(.+)/.exec(reckon)?.[1];
    expect(stand).toContain(height);
    const strict = viewIn(
      "mess-armchair",
      "in",
      (text) => `${text}
require seat.height at most 10in
`,
    );
    const messages = strict.study.problems.map(({ message }) => message);
    expect(messages).toContain(`seat.height is ${height}, and must be at most 10 in.`);
  });
});
