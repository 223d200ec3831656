import { describe, expect, test } from "vitest";
import { designCodes } from "../../../server/design/codes.ts";
import { exampleOf } from "../../rule-examples.ts";
import { read } from "./read.ts";

describe("every code", () => {
  test.each(designCodes.map((row) => [row.code, row] as const))(
    "%s is set off by its example, as severe as it says",
    (code, row) => {
      const design = read(exampleOf(code) ?? "", {
        "faulty.chair": "let a = nothing\n",
        "empty.chair": "# Nothing yet.\n",
        "vast.chair": "let a = 1\n".repeat(30_000),
      });
      const found = design.problems.filter((problem) => problem.code === code);
      expect(found.length).toBeGreaterThan(0);
      for (const problem of found) expect(problem.severity).toBe(row.severity);
      expect(new Set(design.problems.map((problem) => problem.code))).toEqual(new Set([code]));
    },
  );

  test("has a name of its own and plain words", () => {
    expect(new Set(designCodes.map(({ code }) => code)).size).toBe(designCodes.length);
    for (const { code, title, explanation } of designCodes) {
      expect(code).toMatch(/^[a-z]+(-[a-z]+)*$/);
      expect(title).toMatch(/^[A-Z]/);
      expect(explanation).toMatch(/\.$/);
    }
  });
});
