/**
 * What the seasons do to a seat in grooves and to parts glued damp, as its maker meets it: broken, mended and whole.
 */
import { describe, expect, it } from "vitest";
import { finish } from "../../../grammar/steps.ts";
import { mendSteps } from "../../../server/mends/mends.ts";
import { messageOf } from "../../../server/mends/words.ts";
import { here, studiedLate } from "../../check.ts";
import { examples } from "../../rule-examples.ts";

const exampleOf = (code: string): string => examples.find((each) => each.code === code)?.example ?? "";
const files = { resolve: () => undefined, read: () => undefined };

/** What a text's findings of one rule say, and the texts that their mends make. */
function told(code: string, text: string) {
  const study = studiedLate(text);
  expect(study.address).toBe(here);
  const found = study.problems.filter((each) => each.code === code);
  finish(mendSteps(study, files, found, { each: 8, all: 8 }));
  return found.map((problem) => ({
    says: messageOf(problem),
    mended: (problem.mends ?? []).map(({ edits }) =>
      edits.reduceRight((all, { start, end, text: put }) => all.slice(0, start) + put + all.slice(end), text),
    ),
  }));
}

describe("a seat in grooves", () => {
  const panel = exampleOf("panel-without-room");
  const code = "panel-without-room";

  it("needs half of what it swells as its gap, given anew or in place of another", () => {
    const [first, ...others] = told(code, panel);
    expect(others).toEqual([]);
    expect(first?.says).toContain("at 65 % humidity (taken for granted), and has 2 mm of room");
    expect(first?.mended).toEqual([panel.replace("rests in grooves", "rests in grooves\n  gap 1.6mm")]);
    const narrow = panel.replace("rests in grooves", "rests in grooves\n  gap 0.5");
    expect(told(code, narrow)[0]?.mended).toContain(
      panel.replace("rests in grooves", "rests in grooves\n  gap 1.6mm"),
    );
    for (const text of first?.mended ?? []) expect(told(code, text)).toEqual([]);
  });

  it("is offered no gap that lets it slip out in dry air", () => {
    const [found] = told(code, `${panel}climate humidity 20% to 90%\n`);
    expect(found?.mended).toEqual([]);
    expect(found?.says).toMatch(/then slips at 20 % humidity out of what it lies in, which is 8 mm deep/);
  });

  it("slips out where its gap and what it shrinks are more than the grooves are deep", () => {
    const wet = panel.replace("moisture 9%", "moisture 14%").replace("in grooves", "in grooves\n  gap 7");
    const [found] = told(code, wet);
    expect(found?.says).toMatch(/^The seat shrinks .* 10\.7 mm is open at each edge: .* 8 mm deep/);
    expect(found?.mended.length).toBeGreaterThan(0);
    for (const text of found?.mended ?? []) expect(told(code, text)).toEqual([]);
  });

  it("has room when it was made in damp air, or lies in inches with a fraction of one", () => {
    expect(told(code, panel.replace("moisture 9%", "moisture 12%"))).toEqual([]);
    const inches = `units in\n${panel.replace(/(?<![\w.-])\d+(?![\d%])/g, (number) => `${number}mm`)}`;
    expect(told(code, inches)[0]?.says).toMatch(/swells 1\/8 in .* has 5\/64 in of room/);
  });
});

describe("parts at different moistures", () => {
  const apart = exampleOf("moistures-apart");
  const code = "moistures-apart";

  it("are told once a pair, with the moisture that brings them near enough", () => {
    const [found, ...others] = told(code, apart.replace("13%", "11.5%"));
    expect(others).toEqual([]);
    expect(found?.says).toContain("11.5 % moisture and back at 9 %: 2.5 % apart, and 2 % or less");
    expect(found?.mended).toEqual([apart.replace("13%", "11%")]);
  });

  it("may be as far apart as `limit` says, or not be glued", () => {
    expect(told(code, `${apart}limit moistures-apart to 5%\n`)).toEqual([]);
    expect(told(code, apart.replace("mitre", "mitre\n  glue none"))).toEqual([]);
  });

  it("are not guessed where a moisture is not given", () => {
    expect(told(code, apart.replace("timber white-ash moisture 9%", "timber white-ash"))).toEqual([]);
  });
});
