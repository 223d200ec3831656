import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { codes } from "../../grammar/codes.ts";
import { exampleOf } from "../rule-examples.ts";
import { read } from "./fixtures/reading.ts";

test.each(codes.filter(({ code }) => exampleOf(code)).map((code) => [code.code, code] as const))(
  "the example of %s has it, with its severity",
  (_, { code, severity }) => {
    const found = read(exampleOf(code) ?? "").problems.filter((problem) => problem.code === code);
    expect(found.length).toBeGreaterThan(0);
    for (const problem of found) expect(problem.severity).toBe(severity);
  },
);

test("every code that the sources name is in the table, and once", () => {
  const folder = new URL("../../grammar/", import.meta.url);
  const sources = readdirSync(folder)
    .filter((file) => file.endsWith(".ts"))
    .map((file) => readFileSync(new URL(file, folder), "utf8"));
  const named = sources.flatMap((source) =>
    [...source.matchAll(/\bsay\(\s*"([a-z-]+)"/g)].map(([, code]) => code),
  );
  const told = sources.flatMap((source) =>
    [...source.matchAll(/\btell\(\s*at,\s*"([a-z-]+)"/g)].map(([, code]) => code),
  );
  const known = codes.map(({ code }) => code);
  expect(new Set(known).size).toBe(known.length);
  expect(named.length).toBeGreaterThan(30);
  for (const code of [...named, ...told]) expect(known).toContain(code);
});
