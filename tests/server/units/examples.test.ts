import { expect, it } from "vitest";
import { bareLengthsOf } from "../../../grammar/bare-lengths.ts";
import { exampleIn } from "../../../grammar/example.ts";
import { parse } from "../../../grammar/parser.ts";
import { vocabulary } from "../../../grammar/vocabulary/index.ts";
import { everyStatement } from "../../../grammar/walk.ts";

/** The bare lengths of a row's example in a unit, mm, read where such a line stands. */
function lengthsOf(row: (typeof vocabulary.rows)[number], unit: "mm" | "cm" | "in") {
  const line = exampleIn(row, unit);
  let text = line.endsWith("{") ? `${line}\n}\n` : `${line}\n`;
  for (let { owner } = row; owner !== "file"; ) {
    const opener = vocabulary.rows.find(({ opens }) => opens === owner)!;
    text = `${opener.example.replace(/\s*\{$/, "")} {\n${text}}\n`;
    owner = opener.owner;
  }
  const tree = parse(`units ${unit}\n${text}`, vocabulary);
  const statement = [...everyStatement(tree.statements)].find((each) => each.row === row);
  const size = { mm: 1, cm: 10, in: 25.4 }[unit];
  return { statement, lengths: statement ? bareLengthsOf(statement).map(({ number }) => number * size) : [] };
}

it.each(["cm", "in"] as const)("every example in %s reads as its row and is nearly the same size", (unit) => {
  let seen = 0;
  for (const row of vocabulary.rows) {
    if (row.word === "units") continue;
    const [own, mm] = [lengthsOf(row, unit), lengthsOf(row, "mm")];
    expect([row.example, own.statement?.match?.complete]).toEqual([row.example, true]);
    // What is finer than a rule reads keeps its millimetres.
    if (/\dmm\b/.test(exampleIn(row, unit))) continue;
    expect(own.lengths.length, row.example).toBe(mm.lengths.length);
    own.lengths.forEach((length, at) => {
      seen++;
      // Small sizes are rounded to sixteenths, so by a thirty-second of an inch at most.
      expect(Math.abs(length - mm.lengths[at]!), `${row.example} in ${unit}`).toBeLessThan(
        Math.max(0.8, mm.lengths[at]! / 12),
      );
    });
  }
  expect(seen).toBeGreaterThan(60);
});
