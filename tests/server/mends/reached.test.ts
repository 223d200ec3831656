import { describe, expect, it } from "vitest";
import { mend } from "../../../server/mends/mends.ts";
import { plain, studied, subjectOf } from "../range/files.ts";

describe("mends of a requirement", () => {
  it("move a choice to the figure asked for, and say what the chair then has", () => {
    const text = plain("trim back 10\nrequire seat.slope from 2deg to 3deg\n");
    const study = studied(text);
    const problem = study.problems.find(({ code }) => code === "requirement-not-met");
    mend(study, subjectOf(text).files);
    const titles = problem?.mends?.map(({ title }) => title) ?? [];
    expect(titles.join("\n")).toMatch(
      /^Change trim\.back from 10 mm to 14: seat\.slope is then 2(\.0\d?)?°$/m,
    );
  });
});
