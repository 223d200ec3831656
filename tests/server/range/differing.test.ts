import { describe, expect, it } from "vitest";
import { finish } from "../../../grammar/steps.ts";
import { foundBetween, rulesThatDiffer } from "../../../server/range/differing.ts";
import { type Known, knownBy } from "../../../server/range/findings.ts";
import { studySteps } from "../../../server/study.ts";
import { plain, samples, studied, subjectOf } from "./files.ts";

const foundIn = (text: string) => knownBy(studied(text).problems);
const known = (code: string): Known => ({ code, subject: "seat", severity: "warning", message: "" });

describe("rules asked between two places", () => {
  const mess = samples["boathouse-mess-chair.chair"]!;
  const asked = `${plain()}require seat.height <= 450\n`;
  it.each([
    ["a sample", (height: number) => mess.replace("= 440 within", `= ${height} within`), 459, 462, 461],
    ["a requirement", (height: number) => asked.replace("= 440 within", `= ${height} within`), 420, 455, 452],
  ])("find in %s what all of them find", (_, at, low, high, between) => {
    const [a, b] = [foundIn(at(low)), foundIn(at(high))];
    const some = rulesThatDiffer(a, b);
    expect(some?.length).toBeLessThan(3);
    const judged = finish(studySteps({ ...subjectOf(at(between)), rules: some! }));
    const found = foundBetween(a, b, some!, knownBy(judged.problems));
    expect([...found.keys()].sort()).toEqual([...foundIn(at(between)).keys()].sort());
  });

  it("are all of them where a finding silences the others, or is of no rule by itself", () => {
    const of = (...codes: string[]) => new Map(codes.map((code) => [code, known(code)]));
    expect(rulesThatDiffer(of("chair-too-large"), of("seat-too-high"))).toBeUndefined();
    expect(rulesThatDiffer(of("accept-accepts-nothing"), of())).toBeUndefined();
    expect(rulesThatDiffer(of("seat-too-high"), of())?.map(({ code }) => code)).toEqual(["seat-too-high"]);
  });
});
