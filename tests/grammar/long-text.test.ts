import { expect, test } from "vitest";
import { errorsOf, meanings, read } from "./fixtures/reading.ts";
import { messChair } from "./fixtures/texts.ts";

test("a text read in several goes has the meaning of its pieces", () => {
  // Long enough for some rests, with blocks, semicolons and comments over every place where one may fall.
  const blocks = Array.from(
    { length: 400 },
    (_, at) =>
      `post p${at} pair { # one of many\n  section 40 x 40; height 400\n\n  foot out ${at}, back 20 }\nlet a${at} = (${at} + 1) * 2\n`,
  );
  const whole = read(messChair + blocks.join(""));
  expect(errorsOf(whole)).toEqual([]);
  expect(meanings(whole)).toEqual([messChair, ...blocks].flatMap((text) => meanings(read(text))));
  expect(whole.comments.filter(({ start }) => whole.text[start] === "#")).toHaveLength(whole.comments.length);
  expect(whole.comments.length).toBeGreaterThan(400);
});

test("braces that balance are believed, wherever the lines and braces stand", () => {
  const block = (indents: readonly string[]) =>
    [
      "slat spindle {",
      "from seat-back to crest",
      "end crest {",
      "joined spindle-head",
      "}",
      "timber white-ash",
      "}",
    ]
      .map((line, at) => indents[at % indents.length] + line)
      .join("\n");
  expect(meanings(read(block(["  ", "", "       ", "  ", "  "])))).toEqual(meanings(read(block([""]))));
});
