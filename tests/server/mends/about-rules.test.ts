import { describe, expect, it } from "vitest";
import { mend } from "../../../server/mends/mends.ts";
import { messageOf } from "../../../server/mends/words.ts";
import { studied } from "../../check.ts";
import { frame } from "../../plain-frame.ts";

const nowhere = { resolve: (_from: string, path: string) => path, read: () => undefined };

function found(line: string): { code: string; titles: string[]; message: string }[] {
  const study = studied(`${frame()}${line}\n`);
  mend(study, nowhere);
  return study.problems.map((problem) => ({
    code: problem.code,
    titles: (problem.mends ?? []).map(({ title }) => title),
    message: messageOf(problem),
  }));
}

describe("what is found in a line about rules", () => {
  it("is put right in that line; no figure is moved until there is something to accept", () => {
    expect(found('accept tenon-too-thin on back because "so"')).toEqual([
      {
        code: "accept-accepts-nothing",
        titles: ["Take the line out"],
        message: "tenon-too-thin finds nothing on back, so this line accepts nothing; take it out.",
      },
    ]);
  });

  it.each([
    ['accept tenon-too-thin because ""', "accept-without-reason"],
    ['accept no-such-rule because "so"', "unknown-rule"],
  ])("is not accepted in its turn: %s", (line, code) => {
    const [only, ...others] = found(line);
    expect([only?.code, others]).toEqual([code, []]);
    expect(only?.titles.join()).not.toMatch(/accept|from .* to /);
  });
});
