/**
 * Plain English of today, in messages, comments, documents and commits' neighbours alike. What is forbidden here is archaic, or a word
 * with another everyday meaning; names of commands, values and JSON keys keep theirs (`reckon`, `loins`).
 */
import { describe, expect, it } from "vitest";
import { projectFiles, read } from "./project-files.ts";

const here = "tests/house/wording.test.ts";
const texts = projectFiles().filter(
  (path) => /\.(ts|mjs|md|json|chair|css)$/.test(path) && path !== "package-lock.json" && path !== here,
);

/** What to say instead, by what is not said. */
const forbidden: Readonly<Record<string, RegExp>> = {
  "say needed, asked for or chosen": /\b(?:is|are|was|were|be) wanted\b/i,
  "say is enough, is allowed or fits": /\bwould do\b(?! harm)/i,
  "say reported or said": /\b(?:is|are|was|were|be) told of\b|\bnot told of\b/i,
  "say depends on": /\bhangs? on (?!the|a|its|back\b)|\blines? it hangs on\b/i,
  "say calculated or taken": /\breckon(?:ed|s|ing)\b/i,
  "say zero": /\bnoughts?\b/i,
  "say separated": /\bparted\b/i,
  "say small of the back": /\bthe loins\b/i,
  "say under a sitter": /\bunder its sitter\b/i,
  "say after": /\bbehind `because`/i,
  "say is not a":
    /\b(?:is|are) no (?:unit|function|rule|chair|address|mend|file|day|figure|word|share|length|part of)\b(?<!there (?:is|are) no \w+)/i,
  "say with words of today":
    /\b(?:thereof|whereof|hitherto|forthwith|whilst|amongst|thou|unto|betwixt|nigh|lest|amiss)\b/i,
  "say with a sitter on it": /\bsat upon\b/i,
};

describe("wording", () => {
  for (const [instead, pattern] of Object.entries(forbidden)) {
    it(instead, () => {
      const found = texts.flatMap((path) =>
        read(path)
          .split("\n")
          .flatMap((line, at) =>
            pattern.test(line) ? [`${path}:${at + 1}: ${line.trim().slice(0, 120)}`] : [],
          ),
      );
      expect(found).toEqual([]);
    });
  }

  it("is still caught: the test knows its words", () => {
    const old = [
      "a number is wanted here",
      "6 mm would do",
      "`x` is no unit",
      "the part is told of",
      "it is reckoned",
      "nought",
      "parted",
    ];
    for (const line of old)
      expect(
        Object.values(forbidden).some((pattern) => pattern.test(line)),
        line,
      ).toBe(true);
    for (const line of ["there is no rule of that name", "seatwright reckon", "what hangs on the wall"])
      expect(
        Object.values(forbidden).some((pattern) => pattern.test(line)),
        line,
      ).toBe(false);
  });
});
