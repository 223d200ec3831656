import { describe, expect, test } from "vitest";
import type { Kind } from "../../../grammar/kind.ts";
import { parse } from "../../../grammar/parser.ts";
import type { Row, Shape } from "../../../grammar/row.ts";
import type { Statement } from "../../../grammar/tree.ts";
import { vocabulary } from "../../../grammar/vocabulary/index.ts";

/** A header that opens a block of each kind. */
const headers: Partial<Record<Kind, string[]>> = {
  post: ["post p {"],
  rail: ["rail r {"],
  slat: ["slat s {"],
  stick: ["stick s {"],
  bow: ["bow b {"],
  block: ["block b {"],
  joint: ["joint j {"],
  end: ["rail r {", "end left {"],
  seat: ["seat board {"],
  "solid-seat": ["seat solid {"],
  angle: ["angle a {"],
  sitter: ["sitter {"],
  board: ["board b {"],
  yard: ["yard y {"],
  waste: ["waste {"],
  load: ["load l {"],
};

/** The example in a file of its own, with braces closed. */
function fileOf(row: Row, example = row.example): string {
  const around = row.owner === "file" ? [] : (headers[row.owner] ?? []);
  const lines = [...around, example];
  const open = lines.filter((line) => line.endsWith("{")).length;
  return `${lines.join("\n")}\n${"}\n".repeat(open)}`;
}

function find(statements: Statement[], row: Row): Statement | undefined {
  for (const statement of statements) {
    if (statement.row === row) return statement;
    const found = statement.block && find(statement.block.statements, row);
    if (found) return found;
  }
  return undefined;
}

function labels(shape: Shape): string[] {
  if (shape.is === "word") return shape.label === undefined ? [] : [shape.label];
  if (shape.is === "slot") return [shape.label];
  return Array.isArray(shape.of) ? shape.of.flatMap(labels) : labels(shape.of as Shape);
}

const title = (row: Row) => `${row.owner} ${row.word} (${row.facet ?? row.word})`;

describe("every row", () => {
  test.each(vocabulary.rows.map((row) => [title(row), row] as const))(
    "%s: its example is read whole",
    (_, row) => {
      for (const example of [row.example, ...(row.examples ?? [])]) {
        const tree = parse(fileOf(row, example), vocabulary);
        const statement = find(tree.statements, row);
        expect(statement, example).toBeDefined();
        expect(statement?.match).toMatchObject({ complete: true, stopped: statement?.parts.length });
        const ours = tree.problems.filter(
          ({ code }) => code !== "missing-property" && code !== "not-yet-worked-out",
        );
        expect(ours).toEqual([]);
      }
    },
  );

  test.each(vocabulary.rows.map((row) => [title(row), row] as const))("%s: has a plain meaning", (_, row) => {
    expect(row.meaning).toMatch(/^[A-Z].*\.$/s);
    expect(row.example.startsWith(row.word)).toBe(true);
    expect(row.opens !== undefined && !row.blockOptional).toBe(row.example.endsWith("{"));
  });
});

describe("the table", () => {
  test("rows of one owner and word have facets of their own", () => {
    // Two headers of one thing, such as a seat on rails and a solid one, open blocks of their own.
    const keys = vocabulary.rows.map(
      (row) => `${row.owner} ${row.word} ${row.facet ?? row.word} ${row.opens ?? ""}`,
    );
    expect(new Set(keys).size).toBe(keys.length);
  });

  test("an end takes every word of a joint", () => {
    const wordsOf = (owner: Kind) =>
      new Set(vocabulary.rows.filter((row) => row.owner === owner).map((row) => row.word));
    for (const word of wordsOf("joint")) expect(wordsOf("end")).toContain(word);
    for (const word of ["joined", "over", "overhang"]) expect(wordsOf("end")).toContain(word);
  });

  test("labels are plain words", () => {
    for (const row of vocabulary.rows) {
      for (const label of labels(row.shape)) expect(label).toMatch(/^[a-z][a-z-]*$/);
    }
  });

  test("every marker word, choice and unit has a meaning to show", () => {
    const explained = new Set(vocabulary.words.map(({ word }) => word));
    const starts = new Set(vocabulary.rows.map(({ word }) => word));
    const missing = new Set<string>();
    const look = (shape: Shape): void => {
      if (shape.is === "word") {
        if (/^[a-z]/.test(shape.word) && !explained.has(shape.word) && !starts.has(shape.word))
          missing.add(shape.word);
      } else if (shape.is === "slot") {
        for (const word of shape.words ?? [])
          if (!explained.has(word) && !starts.has(word)) missing.add(word);
      } else if (Array.isArray(shape.of)) shape.of.forEach(look);
      else look(shape.of as Shape);
    };
    for (const row of vocabulary.rows) look(row.shape);
    expect([...missing]).toEqual([]);
  });

  test("each word is explained once for each sort, and plainly", () => {
    const keys = vocabulary.words.map(({ word, sort }) => `${sort} ${word}`);
    expect(new Set(keys).size).toBe(keys.length);
    for (const { word, meaning } of vocabulary.words) expect(`${word}: ${meaning}`).toMatch(/: [A-Z].*\.$/);
  });

  test("kinds that open a block have rows to stand in it", () => {
    for (const row of vocabulary.rows) {
      if (row.opens) expect(vocabulary.rows.some((inner) => inner.owner === row.opens)).toBe(true);
    }
  });
});
