import { describe, expect, test } from "vitest";
import { applyEdits, format, formatText } from "../../grammar/format.ts";
import { endOf, lex } from "../../grammar/tokens.ts";
import { vocabulary } from "../../grammar/vocabulary/index.ts";
import { shareName, shareOf, time } from "../share.ts";
import { lost, meanings, read } from "./fixtures/reading.ts";
import { messChair, wholeChairs } from "./fixtures/texts.ts";

const formatted = (text: string) => formatText(text, vocabulary);

const cases: Record<string, [string, string]> = {
  "blocks are indented": [
    "rail a {\nacross front\n    section 2 x 3\n}",
    "rail a {\n  across front\n  section 2 x 3\n}\n",
  ],
  "blocks in blocks too": [
    "rail a {\nacross front; section 2 x 3\nend left {\ntenon square\n}\n}\n",
    "rail a {\n  across front; section 2 x 3\n  end left {\n    tenon square\n  }\n}\n",
  ],
  "one space between words": ["let   a\t=  3", "let a = 3\n"],
  "a unit touches its number": ["let a = 3 mm", "let a = 3mm\n"],
  "a per cent too": ["timber white-ash moisture 9 %", "timber white-ash moisture 9%\n"],
  "one space in a mixed number": ["let a = 1   1/4 in", "let a = 1 1/4in\n"],
  "signs stand between spaces": ["let a = 3+4*b/2", "let a = 3 + 4 * b / 2\n"],
  "a minus before one value touches it": ["joint a { fit - 0.1 }", "joint a { fit -0.1 }\n"],
  "also after a marker": ["shelf", "shelf"],
  "no spaces inside parentheses": ["let a = ( 3 + b )*2", "let a = (3 + b) * 2\n"],
  "a function touches its parentheses": ["let a = max ( 3 ,4 )", "let a = max(3, 4)\n"],
  "a comma touches what stands before it": ["trim front ,back 8", "trim front, back 8\n"],
  "a semicolon too": ["units mm ;sitter adult", "units mm; sitter adult\n"],
  "a brace of its own line joins its header": ["joint a\n{\nglue pva\n}", "joint a {\n  glue pva\n}\n"],
  "unless a comment stands between": ["joint a # why\n{\nglue pva\n}", "joint a  # why\n{\n  glue pva\n}\n"],
  "a block on one line stays there": ["joint a {glue pva}", "joint a { glue pva }\n"],
  "of many blank lines one is kept": ["units mm\n\n\n\nsitter adult\n", "units mm\n\nsitter adult\n"],
  "no blank lines at the start or the end": ["\n\nunits mm\n\n\n", "units mm\n"],
  "spaces at the end of a line go": ["units mm   \n# so   \n", "units mm\n# so\n"],
  "comments keep their words": ["#one\n#  two\nunits mm #three", "#one\n#  two\nunits mm  #three\n"],
  "columns of comments are kept": [
    "units mm      # a\nsitter adult  # b\n",
    "units mm      # a\nsitter adult  # b\n",
  ],
  "lines are not put in order nor broken": ["let b = 2\nlet a = 1\n", "let b = 2\nlet a = 1\n"],
  "line ends stay what they are": [
    "units  mm\r\n\r\n\r\nsitter adult\r\n",
    "units mm\r\n\r\nsitter adult\r\n",
  ],
  "a byte order mark stays": ["\uFEFF  units mm", "\uFEFFunits mm\n"],
  "nothing stays nothing": ["", ""],
  "blanks alone stay": ["  \n", "  \n"],
};

describe("the formatter", () => {
  test.each(Object.entries(cases))("%s", (_, [before, after]) => {
    expect(formatted(before)).toBe(after);
    expect(formatted(after)).toBe(after);
  });

  test("leaves a text with a mistake of reading alone", () => {
    for (const text of ["let   a = ", "post   a {", "let a  = 6,5deg", "unitz   mm"])
      expect(format(text, vocabulary)).toEqual([]);
  });

  test("lays out a text that only lacks something", () => {
    expect(formatted("post a {\nheight   3\n}\n")).toBe("post a {\n  height 3\n}\n");
  });

  test("takes the indentation asked for", () => {
    expect(formatText("joint a {\nglue pva\n}", vocabulary, { indent: "\t" })).toBe(
      "joint a {\n\tglue pva\n}\n",
    );
  });

  test.each(wholeChairs())("%s is laid out already", (_, text) => {
    expect(format(text, vocabulary)).toEqual([]);
  });

  test.each(wholeChairs())("brings %s back from blanks gone wild", (_, text) => {
    const wild = lex(text)
      .tokens.reduceRight((out, token) => {
        const end = endOf(token);
        return /[\r\n;{}]/.test(token.image)
          ? out
          : `${out.slice(0, end)}${/[ \t]/.test(out[end] ?? "") ? "   \t" : ""}${out.slice(end)}`;
      }, text)
      .replace(/^ +/gm, "");
    expect(formatted(wild).replace(/ +#/g, " #")).toBe(text.replace(/ +#/g, " #"));
  });

  test(`a comment put at any gap (${shareName(4)}) is kept, and a second time changes nothing`, {
    timeout: time,
  }, () => {
    const meant = meanings(read(messChair));
    for (const token of shareOf(lex(messChair).tokens, 4)) {
      const at = endOf(token);
      const text = `${messChair.slice(0, at)} # kept ${at}\n${messChair.slice(at)}`;
      const tree = read(text);
      const once = applyEdits(text, format(text, vocabulary));
      expect(once).toContain(`# kept ${at}\n`);
      expect(formatted(once)).toBe(once);
      expect(lost(meanings(tree), meanings(read(once)))).toEqual([]);
    }
    expect(meant.length).toBeGreaterThan(60);
  });
});
