import { expect, test } from "vitest";
import { parse } from "../../grammar/parser.ts";
import { vocabulary } from "../../grammar/vocabulary/index.ts";

test("a row that is read but not yet worked out says so", () => {
  const rows = vocabulary.rows.map((row) => (row.word === "waste" ? { ...row, later: true } : row));
  const { problems } = parse("waste { saw 3 }", { ...vocabulary, rows });
  expect(problems.map(({ code, severity }) => [code, severity])).toEqual([
    ["not-yet-worked-out", "information"],
  ]);
});
