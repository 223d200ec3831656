import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { printBareLength } from "../../../server/design/units.ts";
import { read } from "./read.ts";

/** How many random cases of each kind; a thorough look takes 100 times as many. */
const runs = 200;

/** A random sum of plain numbers, spaced as the language wants it; JavaScript reads the same text by the same rules. */
const sum: fc.Arbitrary<string> = fc.letrec<{ sum: string; operand: string }>((tie) => ({
  sum: fc
    .tuple(
      tie("operand"),
      fc.array(fc.tuple(fc.constantFrom("+", "-", "*", "/"), tie("operand")), { maxLength: 4 }),
    )
    .map(([first, rest]) => first + rest.map(([sign, operand]) => ` ${sign} ${operand}`).join("")),
  operand: fc.oneof(
    { depthSize: "small", withCrossShrink: true },
    fc.integer({ min: 1, max: 999 }).map(String),
    fc.integer({ min: 1, max: 9999 }).map((n) => String(n / 10)),
    tie("sum").map((inner) => `(${inner})`),
  ),
})).sum;

/** What another reader of the same arithmetic makes of it. */
const elsewhere = (text: string): number => Number(new Function(`"use strict"; return (${text});`)());

describe("random expressions", () => {
  test("come to what JavaScript makes of them", () => {
    fc.assert(
      fc.property(sum, (text) => {
        const expected = elsewhere(text);
        fc.pre(Number.isFinite(expected) && Math.abs(expected) < 1e12);
        const found = read(`let v = ${text}\n`).lets.get("v")?.value?.value;
        expect(found?.dimension).toBe("number");
        expect(Math.abs((found?.number ?? Number.NaN) - expected)).toBeLessThanOrEqual(
          1e-9 * Math.max(1, Math.abs(expected)),
        );
      }),
      { numRuns: runs },
    );
  });

  test("of lengths are what they are of millimetres, whatever units they are written in", () => {
    const size = { mm: 1, cm: 10, m: 1000, in: 25.4, ft: 304.8 };
    const length = fc
      .tuple(fc.integer({ min: 1, max: 400 }), fc.constantFrom("mm", "cm", "m", "in", "ft"))
      .map(([n, unit]) => ({ text: `${n}${unit}`, mm: n * size[unit as keyof typeof size] }));
    fc.assert(
      fc.property(length, length, fc.integer({ min: 1, max: 20 }), (a, b, n) => {
        const value = (text: string) => read(`let v = ${text}\n`).lets.get("v")?.value?.value;
        expect(value(`${a.text} + ${b.text} * ${n}`)?.number).toBeCloseTo(a.mm + b.mm * n, 6);
        expect(value(`${a.text} / ${b.text}`)).toEqual({ number: a.mm / b.mm, dimension: "number" });
        expect(value(`max(${a.text}, ${b.text}) - min(${a.text}, ${b.text})`)?.number).toBeCloseTo(
          Math.abs(a.mm - b.mm),
          6,
        );
        expect(value(`${a.text} * ${b.text}`)?.dimension).toBe("area");
      }),
      { numRuns: runs },
    );
  });
});

test("a length printed in inches reads back within half a step", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.5, max: 3000, noNaN: true }),
      fc.constantFrom(8, 16, 32, 64),
      (mm, parts) => {
        const text = printBareLength(mm, "in", parts);
        const found = read(`let v = ${text}in\n`).lets.get("v")?.value?.value.number ?? Number.NaN;
        expect(Math.abs(found - mm)).toBeLessThanOrEqual(25.4 / parts / 2 + 1e-9);
      },
    ),
    { numRuns: runs },
  );
});
