import { describe, expect, test } from "vitest";
import { parse } from "../../../grammar/parser.ts";
import { vocabulary } from "../../../grammar/vocabulary/index.ts";
import type { Design } from "../../../server/design/design.ts";
import { deg, read } from "./read.ts";

/** Everything that is reported a text, reading included. */
const told = (text: string): string[] => [
  ...parse(text, vocabulary).problems.map(({ code, start, end }) => `${code}: ${text.slice(start, end)}`),
  ...read(text).problems.map(({ code, start, end }) => `${code}: ${text.slice(start, end)}`),
];

const post = (lines: string): string =>
  `post p {\n  section 40 x 40\n  foot out 0, back 0\n  height 400\n  ${lines}\n}\n`;
const ofPost = (lines: string) => read(post(lines)).posts.get("p");

describe("words before names", () => {
  test("from 250 to foot means the foot, even when a let is called so", () => {
    const text = `let foot = 100\n${post("taper 30 x 30 from 250 to foot")}`;
    expect(told(text)).toEqual(["shadows-word: foot"]);
    expect(read(text).posts.get("p")?.tapers[0]?.value.to).toBe("foot");
  });

  test("a marker word is never an operand", () => {
    const place = (line: string) => read(`post p {\n  ${line}\n}\n`).posts.get("p")?.place?.value;
    expect(place("foot out - 20, back 10")).toEqual({ station: "foot", out: -20, back: 10 });
    expect(place("foot out -20, back -10")).toEqual({ station: "foot", out: -20, back: -10 });
  });

  test("a post may be called back", () => {
    const text = `post back pair {\n  section 40 x 40\n  foot back 20, out 150\n  height 400\n}\nrail r {\n  across back\n  round 20\n  up 300\n  bow 12 back\n}\ntrim back 8\n`;
    expect(told(text)).toEqual([]);
    expect(read(text).rails.get("r")?.bow?.value.towards).toBe("back");
  });

  test("round, over, from and end are words of several blocks", () => {
    const text = `post round pair {\n  round 40\n  foot out 150, back 0\n  height 400\n}\nrail over {\n  over round\n  round 30\n}\njoint end {\n  round 20, long 30\n}\n`;
    expect(told(text)).toEqual([]);
    expect(read(text).rails.get("over")?.course?.value).toEqual({
      is: "over",
      of: { name: "round" },
      overhang: 0,
    });
  });
});

describe("minus", () => {
  const text = (expression: string) =>
    `let seat = 1\nlet seat-height = 440\n${post("").replace("height 400", `height ${expression}`)}`;
  test("with spaces on both sides it subtracts", () => {
    expect(read(text("seat-height - 12")).posts.get("p")?.height?.value).toBe(428);
  });
  test("with a space before it only, it is reported and still subtracts", () => {
    expect(told(text("seat-height -12"))).toContain("minus-spacing: -");
    expect(read(text("seat-height -12")).posts.get("p")?.height?.value).toBe(428);
  });
  test("without spaces it is part of a name", () => {
    expect(told(text("seat-height-12"))).toContain("eaten-minus: seat-height-12");
  });
});

describe("clauses and lists", () => {
  test("clauses after commas come in any order", () => {
    expect(read("joint j {\n  tenon long 28, thick 8\n}\n").joints.get("j")).toMatchObject({
      tenonThick: { value: { mm: 8 } },
      tenonLong: { value: { mm: 28 } },
    });
  });

  test("modifiers bind within their comma phrase", () => {
    const angle = (between: string): Design["angles"] =>
      read(`${post("").replaceAll(" p ", " p ")}angle a {\n  between ${between}\n}\n`).angles;
    expect(angle("p above 500, floor").get("a")?.between?.value).toEqual([
      { is: "part", part: { name: "p" }, above: 500 },
      { is: "floor" },
    ]);
  });

  test("a list ends where a length stands", () => {
    const text = `${post("")}${post("").replace("post p", "post q")}trim p, q 8\n`;
    expect(told(text)).toEqual([]);
    const [trim] = read(text).trims;
    expect(trim?.posts.map(({ value }) => value.name)).toEqual(["p", "q"]);
    expect(trim?.length.value).toBe(8);
  });

  test("a tenon's size beside its line is not twice", () => {
    expect(told("joint j {\n  tenon thick 8\n  tenon square\n}\n")).toEqual([]);
  });
});

describe("numbers and units", () => {
  test("units stand right after a number only", () => {
    expect(read("let m = 3 m\nlet k = m + 12 mm\n").lets.get("k")?.value?.value).toEqual({
      number: 3012,
      dimension: "length",
    });
  });

  test("a mixed number is one, a fraction and a list are not", () => {
    const ups = (line: string) =>
      read(`post p pair {\n  foot out 100, back 0\n}\nrail r {\n  across p\n  ${line}\n}\n`)
        .rails.get("r")
        ?.ups.map(({ value }) => value);
    expect(ups("up 2 1/2")).toEqual([2.5]);
    expect(ups("up 1/2, 2")).toEqual([0.5, 2]);
  });

  test("1:8 is an angle", () => {
    expect(ofPost("rake 1:8")?.rake?.value).toBeCloseTo(Math.atan(1 / 8), 12);
    expect(ofPost("rake 5deg + 1:8")?.rake?.value).toBeCloseTo(deg(5) + Math.atan(1 / 8), 12);
  });

  test("40x40mm is reported and still read as the nearest thing", () => {
    const text = "post p {\n  section 40x40mm\n}\n";
    expect(told(text)).toContain("missing-space: 40x40mm");
    expect(read(text).posts.get("p")?.section?.value).toEqual({ first: 40, second: 40 });
  });

  test("a mistake that reading has reported is not told again", () => {
    expect(told("angle a {\n  between seat, floor\n  limit 5 to 7deg\n}\n")).toEqual(["unit-spelling: 5"]);
    expect(told("angle a {\n  between seat and floor\n}\n")).toEqual(["left-over: and floor"]);
  });

  test("counts, ages and marks are bare", () => {
    expect(told("sitter child 3mm to 5\n")).toEqual(["wrong-unit: 3mm"]);
    expect(told("sitter school-mark 4mm\n")).toEqual(["wrong-unit: 4mm"]);
  });

  test("adding a length to an angle costs that line alone", () => {
    const text = post("rake 3deg + 12mm\n  splay 2deg");
    expect(told(text)).toEqual(["wrong-unit: 3deg + 12mm"]);
    expect(read(text).posts.get("p")?.rake).toBeUndefined();
    expect(read(text).posts.get("p")?.splay?.value).toBeCloseTo(deg(2), 12);
  });
});
