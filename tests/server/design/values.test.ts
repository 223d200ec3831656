import { describe, expect, test } from "vitest";
import { deg, faults, mended, read } from "./read.ts";

/** What `let v = …` comes to. */
function comesTo(expression: string, before = ""): { number: number; dimension: string } | undefined {
  return read(`${before}\nlet v = ${expression}\n`).lets.get("v")?.value?.value;
}

describe("what an expression comes to", () => {
  test.each([
    ["12", 12, "number"],
    ["12mm", 12, "length"],
    ["3/8in", 9.525, "length"],
    ["1 1/4in", 31.75, "length"],
    ["2ft", 609.6, "length"],
    ["4.5cm + 2mm", 47, "length"],
    ["1m - 1mm", 999, "length"],
    ["6.5deg", deg(6.5), "angle"],
    ["1:8", Math.atan(1 / 8), "angle"],
    ["1:8 + 1deg", Math.atan(1 / 8) + deg(1), "angle"],
    ["20mm * 30mm", 600, "area"],
    ["20mm * 30mm * 10mm", 6000, "volume"],
    ["600mm / 20mm", 30, "number"],
    ["20mm * 30mm / 10mm", 60, "length"],
    ["50% * 30mm", 15, "length"],
    ["5.5kg", 5.5, "mass"],
    ["500g", 0.5, "mass"],
    ["2lb", 0.90718474, "mass"],
    ["1.5kN", 1500, "force"],
    ["10lbf", 44.482216152605, "force"],
    ["9%", 0.09, "share"],
    ["(2 + 3) * 4", 20, "number"],
    ["2 + 3 * 4", 14, "number"],
    ["20 - 6 - 4", 10, "number"],
    ["-12mm", -12, "length"],
    ["2 1/2 * 2", 5, "number"],
    ["min(3mm, 2mm, 5mm)", 2, "length"],
    ["max(3mm, 1in)", 25.4, "length"],
    ["max(3, 5mm)", 5, "length"],
    ["abs(-3deg)", deg(3), "angle"],
    ["round(12.6mm)", 13, "length"],
    ["round(12.6mm, 5mm)", 15, "length"],
    ["round(6.4deg)", deg(6), "angle"],
    ["100mm * sin(30deg)", 50, "length"],
    ["cos(60deg)", 0.5, "number"],
    ["tan(1:8)", 0.125, "number"],
    ["atan(1/8)", Math.atan(1 / 8), "angle"],
    ["(round(28 / 2))", 14, "number"],
  ] as const)("%s", (expression, number, dimension) => {
    const value = comesTo(expression);
    expect(value?.dimension).toBe(dimension);
    expect(value?.number).toBeCloseTo(number, 9);
    expect(faults(`let v = ${expression}\n`)).toEqual([]);
  });

  test("a bare length is of the file's unit, and a let taken for a length is one", () => {
    const design = read("units in\nlet top = 17 1/4\nlet seat = top\nlet clear = top - 12mm\n");
    expect(design.lets.get("clear")?.value?.value).toEqual({
      number: 17.25 * 25.4 - 12,
      dimension: "length",
    });
    const post = read(
      "units cm\nlet tall = 2 * half\nlet half = 21\npost p {\n  section 4 x 4\n  height tall\n}\n",
    );
    expect(post.posts.get("p")?.height?.value).toBe(420);
    expect(post.posts.get("p")?.section?.value).toEqual({ first: 40, second: 40 });
    expect(post.lets.get("tall")?.value?.value).toEqual({ number: 420, dimension: "length" });
    expect(post.lets.get("half")?.value?.value).toEqual({ number: 210, dimension: "length" });
  });
});

describe("quantities that do not go together", () => {
  test.each([
    ["12mm + 3deg", "wrong-unit: 12mm + 3deg"],
    ["12 + 3deg", "wrong-unit: 12 + 3deg"],
    ["2deg * 3deg", "wrong-unit: 2deg * 3deg"],
    ["2kg / 3mm", "wrong-unit: 2kg / 3mm"],
    ["min(3mm, 2deg)", "wrong-unit: min(3mm, 2deg)"],
    ["sin(30)", "wrong-unit: sin(30)"],
    ["1/3 of rail", "wrong-unit: 1/3 of rail"],
    ["4 / 0", "unreadable-number: 4 / 0"],
    ["4 / (2 - 2)", "unreadable-number: 4 / (2 - 2)"],
    ["round(12, 0)", "unreadable-number: round(12, 0)"],
    ["tan(90deg)", "unreadable-number: tan(90deg)"],
    ["abs(1, 2)", "unreadable-number: abs(1, 2)"],
  ])("%s", (expression, fault) => {
    expect(faults(`let v = ${expression}\nlet w = 3mm\n`)).toEqual([fault]);
  });

  test("a number beyond all bounds", () => {
    const big = `1${"0".repeat(200)}`;
    expect(faults(`let v = ${big} * ${big}\n`)).toEqual([`unreadable-number: ${big} * ${big}`]);
  });

  test("an angle without deg, with the mend", () => {
    const text = "post p {\n  rake 3\n}\n";
    expect(faults(text)).toContain("wrong-unit: 3");
    expect(mended(text, "wrong-unit")).toEqual(["post p {\n  rake 3deg\n}\n"]);
  });

  test("each property takes one kind", () => {
    const text = (line: string) => `joint j {\n  ${line}\n}\n`;
    expect(faults(text("fit 2deg"))).toEqual(["wrong-unit: 2deg"]);
    expect(faults(text("peg 8 draw 1.5kg"))).toEqual(["wrong-unit: 1.5kg"]);
    expect(faults("timber oak moisture 9\n")).toEqual(["wrong-unit: 9"]);
    expect(faults("timber oak density 640kg\n")).toEqual(["wrong-unit: 640kg"]);
    expect(faults("sitter {\n  weight 74\n}\n")).toEqual(["wrong-unit: 74"]);
    expect(faults("slat s {\n  count 4mm even\n}\n")).toContain("wrong-unit: 4mm");
  });
});

describe("sizes that cannot be", () => {
  test.each([
    ["section 40 x -40", "-40"],
    ["section 0 x 40", "0"],
    ["height -5", "-5"],
    ["height 25m", "25m"],
    ["rake 88deg", "88deg"],
    ["taper 30 x 30 from 200 to 200", "200 to 200"],
  ])("post: %s", (line, at) => {
    expect(faults(`post p {\n  ${line}\n  height 400\n}\n`)).toContain(`impossible-size: ${at}`);
  });

  test.each([
    ["slat s {\n  count 2.5 even\n}\n", "2.5"],
    ["slat s {\n  count 0 even\n}\n", "0"],
    ["sitter child 7 to 5\n", "7 to 5"],
    ["angle a {\n  limit 7deg to 5deg\n}\n", "7deg to 5deg"],
    ["require seat.slope from 4deg to 1deg\n", "4deg to 1deg"],
    ["joint j {\n  tenon thick 4/3 of rail\n}\n", "4/3"],
    ["timber oak moisture 900%\n", "900%"],
  ])("%s", (text, at) => expect(faults(text)).toContain(`impossible-size: ${at}`));

  test("found and allowed are told in the file's unit", () => {
    const [problem] = read("units in\njoint j {\n  tenon long -1\n}\n").problems;
    expect(problem).toMatchObject({ found: "-1 in", allowed: "more than 0" });
    expect(problem?.message).toBe("This comes to -1 in; it must be more than 0.");
  });
});

describe("lets", () => {
  test("a range and the value in it", () => {
    const design = read("let seat-height = 440 within 420 to 470\nlet lean = 6deg within 4deg to 8deg\n");
    expect(design.lets.get("seat-height")).toMatchObject({
      value: { value: { number: 440, dimension: "number" } },
      within: { value: { low: 420, high: 470 } },
    });
    expect(design.lets.get("lean")?.within?.value.high).toBeCloseTo(deg(8), 12);
  });

  test("out of its range", () => {
    const text = "let seat-height = 480 within 420mm to 470mm\n";
    expect(faults(text)).toEqual(["let-out-of-range: 480"]);
    expect(read(text).problems[0]).toMatchObject({
      found: "480 mm",
      allowed: "420 mm to 470 mm",
      subject: "seat-height",
    });
    expect(mended(text, "let-out-of-range")).toEqual(["let seat-height = 470mm within 420mm to 470mm\n"]);
    expect(faults("let h = 440 within 470 to 420\n")).toEqual(["let-out-of-range: 470 to 420"]);
    expect(faults("let h = 440 within 4deg to 8deg\n")).toEqual(["wrong-unit: 4deg to 8deg"]);
  });

  test("a circle is told once, with its members", () => {
    const text = "let a = b + 1\nlet b = c * 2\nlet c = a - 1\n";
    expect(faults(text)).toEqual(["circular-value: a"]);
    expect(read(text).problems[0]?.message).toContain("a → b → c → a");
    expect(faults("let a = a + 1\n")).toEqual(["circular-value: a"]);
  });

  test("an unknown name, with the nearest", () => {
    const text = "let seat-height = 440\npost p {\n  height seat-heigt\n}\n";
    expect(faults(text)).toContain("unknown-name: seat-heigt");
    expect(mended(text, "unknown-name")).toEqual([text.replace("seat-heigt", "seat-height")]);
  });

  test("a minus eaten by a name", () => {
    const text = "let seat-height = 440\nlet rail = 70\npost p {\n  height seat-height-12\n}\n";
    expect(faults(text)).toEqual(["eaten-minus: seat-height-12"]);
    expect(mended(text, "eaten-minus")).toEqual([text.replace("seat-height-12", "seat-height - 12")]);
    const two = text.replace("seat-height-12", "seat-height-rail-12");
    expect(mended(two, "eaten-minus")).toEqual([text.replace("seat-height-12", "seat-height - rail - 12")]);
  });

  test("names of the whole chair are refused, words are warned of", () => {
    expect(faults("let height = 900\n")).toEqual(["reserved-name: height"]);
    expect(faults("let seat = 900\n")).toEqual(["reserved-name: seat"]);
    expect(faults("let foot = 250\n")).toEqual(["shadows-word: foot"]);
    expect(read("let foot = 250\n").problems[0]?.severity).toBe("warning");
    expect(faults("let over = 250\n")).toEqual(["shadows-word: over"]);
    expect(faults("let m = 3\nlet knee = 250\n")).toEqual([]);
  });

  test("one set of names", () => {
    const text = "let leg = 20\npost leg {\n  height 400\n}\njoint leg {\n}\n";
    expect(faults(text)).toEqual(["duplicate-name: leg", "duplicate-name: leg"]);
    const [problem] = read(text).problems;
    expect(problem?.related?.[0]).toMatchObject({ start: 4, end: 7 });
    expect(read(text).posts.size).toBe(0);
  });
});
