import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { vocabulary } from "../../../grammar/vocabulary/index.ts";
import { studied, studiedLate } from "../../check.ts";

const folder = new URL("../../../samples/", import.meta.url);
const names = readdirSync(folder).filter((name) => name.endsWith(".chair"));
const files = Object.fromEntries(names.map((name) => [name, readFileSync(new URL(name, folder), "utf8")]));

describe("the samples", () => {
  it.each(names)("%s is clean", (name) => {
    const { problems, design, chair } = studied(files[name] ?? "", files);
    expect(problems.map(({ code, message }) => `${code}: ${message}`)).toEqual([]);
    expect(chair.faults.filter(({ is }) => is !== "wind")).toEqual([]);
    if (design.posts.size > 0) expect(chair.seat).toBeDefined();
  });

  // Strength takes a while: a share by hand, with loads of its own, unglued, on a solid seat and with the widest tenons.
  it.each(["mess-armchair.chair", "ladder-back.chair", "slab-chair.chair", "landing-bench.chair"])(
    "%s is clean in what is worked out last",
    (name) => {
      const { problems, late } = studiedLate(files[name] ?? "", files);
      expect(problems.map(({ code, message }) => `${code}: ${message}`)).toEqual([]);
      expect(late?.strength.margin).toBeGreaterThan(1);
    },
  );

  it("are at least six chairs and a library, each with a title", () => {
    const titled = names.filter((name) => /^chair "/m.test(files[name] ?? ""));
    expect(titled.length).toBeGreaterThanOrEqual(6);
    expect(names.length).toBeGreaterThan(titled.length);
  });

  it("use every word of the language that is worked out", () => {
    const used = new Set<string>();
    const visit = (statements: readonly { row?: object; block?: { statements: never[] } }[]) => {
      for (const { row, block } of statements) {
        if (row) used.add(keyOf(row as Row));
        if (block) visit(block.statements);
      }
    };
    for (const text of Object.values(files)) visit(studied(text, files).tree.statements as never);
    const later = new Set(vocabulary.rows.flatMap((row) => (row.later && row.opens ? row.opens : [])));
    const missing = vocabulary.rows.filter(
      (row) => !row.later && !later.has(row.owner) && row.owner !== "end" && !used.has(keyOf(row)),
    );
    expect(missing.map(keyOf)).toEqual([]);
  });
});

type Row = (typeof vocabulary.rows)[number];
const keyOf = ({ owner, word, facet }: Row): string => `${owner} ${word}${facet ? ` (${facet})` : ""}`;
