import { describe, expect, test } from "vitest";
import { faults, read } from "./read.ts";

const row = (count: number, one: (at: number) => string) => Array.from({ length: count }, (_, at) => one(at));
const post = "post front pair {\n  section 40 x 40\n  foot out 200, back 20\n  height 430\n}\n";
const rail = (up: string, name = "r") => `rail ${name} {\n  across front\n  section 10 x 20\n  up ${up}\n}\n`;

describe("lists", () => {
  test("a rail's heights are sixty at most", () => {
    const of = (count: number) => post + rail(row(count, (at) => String(50 + at)).join(", "));
    expect(faults(of(60))).toEqual([]);
    expect(faults(of(62))).toEqual(["impossible-size: 110"]);
    expect(read(of(62)).rails.get("r")?.ups).toHaveLength(60);
  });

  test("a row's slats are two hundred at most", () => {
    const of = (count: number) =>
      `${post}${rail("100", "a")}${rail("300", "b")}slat s {\n  from a to b\n  at ${row(count, String).join(", ")}\n  section 5 x 10\n}\n`;
    expect(faults(of(200))).toEqual([]);
    expect(faults(of(201))).toEqual(["impossible-size: 200"]);
  });

  test("a chair's posts, rails and slats are four hundred at most", () => {
    const of = (count: number) => post + row(count, (at) => rail("100", `r${at}`)).join("");
    expect(faults(of(398))).toEqual([]);
    expect(faults(of(400))).toEqual(["impossible-size: r398"]);
    expect(read(of(1400)).problems.map(({ message }) => message)).toEqual([
      "A chair has at most 400 posts, rails, slats and sticks; this one would have 1402, so r398 and 1001 more are left out.",
    ]);
  });
});

describe("values named in a row", () => {
  const chain = (order: (lines: string[]) => string[]) =>
    order(row(10_000, (at) => `let a${at} = ${at === 0 ? "1" : `a${at - 1} + 1`}\n`)).join("");

  test.each([
    ["first to last", (lines: string[]) => lines],
    ["last to first", (lines: string[]) => [...lines].reverse()],
    [
      "odd ones first",
      (lines: string[]) => [...lines.filter((_, at) => at % 2), ...lines.filter((_, at) => at % 2 === 0)],
    ],
  ])("ten thousand, %s, are all worked out", (_, order) => {
    const { lets, problems } = read(chain(order));
    expect(problems).toEqual([]);
    expect(lets.get("a9999")?.value?.value.number).toBe(10_000);
  });
});

test("an emptied file is reported", () => {
  const messages = (text: string) =>
    read('use "a.chair"\n', { "a.chair": text }).problems.map(({ message }) => message);
  expect(messages("")).toEqual(["a.chair is empty: nothing comes from it."]);
  expect(messages("# To be filled.\n")).toHaveLength(1);
  expect(messages("let a = 1\n")).toEqual([]);
});
