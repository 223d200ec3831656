import { describe, expect, it } from "vitest";
import { check, fixed, messagesOf, studied } from "../../check.ts";
import { frame } from "../../plain-frame.ts";

const codes = (text: string) => studied(text).problems.map(({ code }) => code);
const raised = (by: number) =>
  frame()
    .replace(/up 420/g, `up ${420 + by}`)
    .replace(/height 430/g, `height ${430 + by}`);

describe("the seat's sizes for grown sitters", () => {
  it("are quiet within the printed ranges and tell of what is past them, with the share left out", () => {
    check(frame());
    expect(messagesOf(raised(60), "seat-too-high")[0]).toMatch(
      /^The seat stands at 500 mm; 460 mm or less is recommended\. So it leaves out \d+% of women and \d+% of men of those measured\.$/,
    );
    expect(codes(raised(-100))).toEqual(["seat-too-low"]);
    expect(codes(frame().replace(/out 200/g, "out 160"))).toEqual(["seat-too-narrow"]);
    expect(codes(frame({ more: "trim back 45\n" }))).toEqual(["seat-slope-outside"]);
    expect(codes(frame({ more: "trim front 20\n" }))).toEqual(["seat-falls-forward"]);
  });

  it("speak of one group when the file names one", () => {
    const [message] = messagesOf(`sitter adult women\n${raised(60)}`, "seat-too-high");
    expect(message).toMatch(/leaves out \d+% of women of those measured/);
    expect(message).not.toContain("of men");
  });

  it("follow the file's limit", () => {
    expect(codes(`${raised(60)}limit seat-too-high to 510\n`)).toEqual([]);
    expect(codes(`${frame()}limit seat-too-high to 400\n`)).toEqual(["seat-too-high"]);
  });
});

describe("the seat's height for others", () => {
  // EN 1729-1, size mark 2: 280 to 315 mm behind the knee; mark 6: 435 to 485 mm (seen).
  it("is judged by the size marks for children", () => {
    expect(messagesOf(`sitter school-mark 2\n${frame()}`, "seat-too-high")).toEqual([
      "The seat stands at 440 mm for size mark 2; 315 mm or less is recommended.",
    ]);
    expect(codes(`sitter school-mark 6\n${frame()}`)).toEqual([]);
    expect(codes(`sitter school-mark 6\n${raised(-100)}`)).toEqual(["seat-too-low"]);
  });

  it("is judged by a named sitter's own measure, shoes on", () => {
    const sitter = (knee: number, shoes: number) =>
      `sitter {\n  popliteal-height ${knee}\n  shoes ${shoes}\n}\n${frame()}`;
    expect(codes(sitter(415, 25))).toEqual([]);
    expect(messagesOf(sitter(400, 25), "seat-too-high")).toEqual([
      "The seat stands at 440 mm for the sitter named; 425 mm or less is recommended.",
    ]);
    expect(codes(sitter(400, 40))).toEqual([]);
  });
});

describe("unknown-species", () => {
  it("offers the nearest, and takes a maker's own density", () => {
    const text = `timber wite-ash\n${frame()}`;
    check(text.replace("timber wite-ash\n", "timber wite-ash\n#      ^^^^^^^^ unknown-species\n"));
    expect(fixed(text, "unknown-species", "Make it white-ash")).toBe(text.replace("wite", "white"));
    check(text.replace("wite-ash", "bog-oak density 750"));
  });

  it("asks which wood an everyday name means, and offers each", () => {
    const text = `timber ash\n${frame()}`;
    expect(messagesOf(text, "unknown-species")).toEqual([
      "ash may be white-ash or european-ash; which one is meant?",
    ]);
    expect(fixed(text, "unknown-species", "Make it european-ash")).toBe(
      text.replace("ash\n", "european-ash\n"),
    );
    expect(fixed(`timber black-walnut\n${frame()}`, "unknown-species", "Make it walnut")).toContain(
      "timber walnut\n",
    );
  });
});
