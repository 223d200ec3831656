import { describe, expect, test } from "vitest";
import { mended, problemsOf, read } from "./fixtures/reading.ts";

/** A text in which someone could stumble: what is said of it, on which words, and what the first fix makes of it. */
interface Trap {
  text: string;
  says: string[];
  becomes?: string;
}

const traps: Record<string, Trap> = {
  "a minus with one space": {
    text: "let low = seat-height -12",
    says: ['minus-spacing "-"'],
    becomes: "let low = seat-height - 12",
  },
  "a minus that touches the number after a unit": {
    text: "let low = 12mm-3",
    says: ['minus-spacing "-"'],
    becomes: "let low = 12mm - 3",
  },
  "a hyphen between a whole number and its fraction": {
    text: "let low = 17-3/4",
    says: ['minus-spacing "-"'],
    becomes: "let low = 17 3/4",
  },
  "a decimal comma": {
    text: "let lean = 6,5deg",
    says: ['number-spelling "6,5"'],
    becomes: "let lean = 6.5deg",
  },
  "a point without a zero": {
    text: "let gap = .5",
    says: ['number-spelling ".5"'],
    becomes: "let gap = 0.5",
  },
  "an inch mark": { text: 'let t = 1/4"', says: ['unit-spelling "1/4\\""'], becomes: "let t = 1/4in" },
  "an inch mark after a mixed number": {
    text: "let t = 1 1/4″",
    says: ['unit-spelling "1 1/4″"'],
    becomes: "let t = 1 1/4in",
  },
  "two inch marks on a line are not a text": {
    text: 'rail a { across front; section 1/2" x 2" }',
    says: ['unit-spelling "1/2\\""', 'unit-spelling "2\\""'],
    becomes: 'rail a { across front; section 1/2in x 2" }',
  },
  "a single character for a fraction": {
    text: "let t = 1½in",
    says: ['fraction-spelling "1½"'],
    becomes: "let t = 1 1/2in",
  },
  "two strokes that touch": {
    text: "let t = 1/2/3",
    says: ['fraction-spelling "1/2/3"'],
    becomes: "let t = 1/2 / 3",
  },
  "a degree sign": { text: "let lean = 6.5°", says: ['unit-spelling "°"'], becomes: "let lean = 6.5deg" },
  "a unit in full": { text: "let t = 12 inches", says: ['unit-spelling "inches"'], becomes: "let t = 12 in" },
  "a unit in capitals": { text: "let t = 12MM", says: ['unit-spelling "MM"'], becomes: "let t = 12mm" },
  "an unknown unit": { text: "let t = 12furlongs", says: ['unit-spelling "furlongs"'] },
  "a section without spaces": {
    text: "rail a { across front; section 22x70 }",
    says: ['missing-space "22x70"'],
    becomes: "rail a { across front; section 22 x 70 }",
  },
  "a section without spaces, with a unit": {
    text: "rail a { across front; section 40x40mm }",
    says: ['missing-space "40x40mm"'],
    becomes: "rail a { across front; section 40mm x 40mm }",
  },
  "a section with a space on one side of x": {
    text: "rail a { across front; section 22 x70 }",
    says: ['missing-space "x70"'],
    becomes: "rail a { across front; section 22 x 70 }",
  },
  "a printer's cross": {
    text: "rail a { across front; section 22 × 70 }",
    says: ['sign-spelling "×"'],
    becomes: "rail a { across front; section 22 x 70 }",
  },
  "a unit that should reach back": {
    text: "angle a { between seat, back; limit 5 to 7deg }",
    says: ['unit-spelling "5"'],
    becomes: "angle a { between seat, back; limit 5deg to 7deg }",
  },
  "an inch beside a bare millimetre": {
    text: "rail a { across front; section 2 x 2in }",
    says: ['mixed-units "2"'],
    becomes: "rail a { across front; section 2in x 2in }",
  },
  "a long dash": { text: "let low = 440 — 12", says: ['sign-spelling "—"'], becomes: "let low = 440 - 12" },
  "curly quotes": { text: "chair “Stool”", says: ['quote-spelling "“Stool”"'], becomes: 'chair "Stool"' },
  "an unclosed quote": {
    text: 'chair "Stool\nunits mm',
    says: ['unclosed-quote "\\""'],
    becomes: 'chair "Stool"\nunits mm',
  },
  "a date without its zeros": {
    text: 'note 2026-3-14 "Sat in."',
    says: ['date-spelling "2026-3-14"'],
    becomes: 'note 2026-03-14 "Sat in."',
  },
  "a date the other way round": { text: 'note 14/03/2026 "Sat in."', says: ['date-spelling "14/03/2026"'] },
  "a day that is not": { text: 'note 2026-02-30 "Sat in."', says: ['date-spelling "2026-02-30"'] },
  "a misspelt word at the start of a line": {
    text: "timbre white-ash",
    says: ['unknown-word "timbre"'],
    becomes: "timber white-ash",
  },
  "a misspelt word within a line": {
    text: "rail a { across front; section 22 x 70; face centered }",
    says: ['unknown-word "centered"'],
    becomes: "rail a { across front; section 22 x 70; face centred }",
  },
  "a unit in a word of its own": {
    text: "units inches",
    says: ['unknown-word "inches"'],
    becomes: "units in",
  },
  "a unit with a capital": {
    text: "units Millimeters",
    says: ['unknown-word "Millimeters"'],
    becomes: "units mm",
  },
  "a word of another block": {
    text: "post a { section 4 x 4; foot out 2, back 2; across back }",
    says: ['misplaced-word "across"'],
  },
  "a header without a name": { text: "joint {\n  glue pva\n}", says: ['missing-name "joint"'] },
  "a pair without a name": {
    text: "post pair { section 4 x 4; foot out 2, back 2 }",
    says: ['missing-name "pair"'],
  },
  "a name with a point": {
    text: "let seat.low = 3",
    says: ['unreadable "seat.low"'],
    becomes: "let seat-low = 3",
  },
  "a name with an underscore": {
    text: "let seat_low = 3",
    says: ['unreadable "seat_low"'],
    becomes: "let seat-low = 3",
  },
  "a missing comma": {
    text: "post a { section 4 x 4; foot out 2 back 3 }",
    says: ['missing-comma "back"'],
    becomes: "post a { section 4 x 4; foot out 2, back 3 }",
  },
  "a comma with nothing after it": {
    text: "trim back 10,",
    says: ['left-over ","'],
    becomes: "trim back 10",
  },
  "a comma too many": { text: "trim back, 10", says: ['left-over ","'], becomes: "trim back 10" },
  "a word left out": {
    text: "slat a { from lower crest; count 4 even; section 9 x 38 }",
    says: ['missing-word "crest"'],
    becomes: "slat a { from lower to crest; count 4 even; section 9 x 38 }",
  },
  "an equals sign left out": { text: "let a 3", says: ['missing-word "3"'], becomes: "let a = 3" },
  "a value left out": { text: "let a =", says: ['missing-value "="'] },
  "a value left out after a sign": { text: "let a = 3 +", says: ['missing-value "+"'] },
  "an empty parenthesis": { text: "let a = ()", says: ['missing-value "()"'] },
  "an open parenthesis": { text: "let a = (3 + 4", says: ['missing-parenthesis "("'] },
  "a lone parenthesis": { text: "let a = 3 + 4)", says: ['missing-parenthesis ")"'] },
  "an unknown function": {
    text: "let a = sine(3deg)",
    says: ['unknown-word "sine"'],
    becomes: "let a = sin(3deg)",
  },
  "one part begun from another, as only a chair is": {
    text: "rail b like a {\n  across front\n  section 4 x 4\n  up 430\n}",
    says: ['left-over "like a"'],
    becomes: "rail b {\n  across front\n  section 4 x 4\n  up 430\n}",
  },
  "two statements on one line": {
    text: "units mm sitter adult",
    says: ['missing-line-end "sitter"'],
    becomes: "units mm\nsitter adult",
  },
  "the same thing twice in a line": {
    text: "joint a { tenon thick 8, long 18, thick 9 }",
    says: ['given-twice "thick"'],
  },
  "the same word twice in a block": {
    text: "units mm\nunits in",
    says: ['given-twice "units"'],
  },
  "the same facet twice by other words": {
    text: "post a { section 4 x 4; round 38; foot out 2, back 2 }",
    says: ['given-twice "round"'],
  },
  "a property left out": {
    text: "post a {\n  section 4 x 4\n}",
    says: ['missing-property "post"'],
    becomes: "post a {\n  foot out 205, back 20\n  section 4 x 4\n}",
  },
  "inwards read as inches": {
    text: "rail a { across front; section 22 x 70; bow 22 in }",
    says: ['missing-value "22 in"'],
    becomes: "rail a { across front; section 22 x 70; bow 22mm in }",
  },
  "a division by zero": { text: "let a = 1/0", says: ['unreadable "1/0"'] },
  "marks of a merge": {
    text: "<<<<<<< mine\nunits mm\n=======\nunits in\n>>>>>>> theirs",
    says: [
      'conflict-marker "<<<<<<< mine"',
      'conflict-marker "======="',
      'given-twice "units"',
      'conflict-marker ">>>>>>> theirs"',
    ],
  },
  "a stray character": { text: "units mm @", says: ['unreadable "@"'], becomes: "units mm " },
};

describe("what people stumble over", () => {
  test.each(Object.entries(traps))("%s", (_, { text, says, becomes }) => {
    expect(problemsOf(text)).toEqual(says);
    if (becomes !== undefined) expect(mended(text)).toBe(becomes);
  });

  test("every message is one plain sentence or two, and says something of its own", () => {
    const messages = Object.values(traps).flatMap(({ text }) =>
      read(text).problems.map(({ message }) => message),
    );
    for (const message of messages) expect(message).toMatch(/^[\p{Lu}`2].{10,200}[.?]$/su);
    expect(messages.sort()).toMatchSnapshot();
  });
});

/** Texts that look like traps and are not. */
const fine: Record<string, string> = {
  "a let called m, and metres": "let m = 3 m",
  "a number and its unit apart": "let a = 12 mm",
  "negative, touching": "rail a { across front; section 22 x 70; up -12 }",
  "negative, apart": "rail a { across front; section 22 x 70; up - 12 }",
  "a marker before a minus": "post a { section 4 x 4; foot out - 20, back 3 }",
  "a first word before parentheses": "rail a { across front; round (28 / 2) }",
  "a marker before parentheses": "joint a { tenon thick (8), long (2 * 9) }",
  "clauses in another order": "joint a { tenon long 18, wide 40, thick 8 }",
  "a tenon's size beside its line": "joint a { tenon thick 8, long 18; tenon square }",
  "the foot as a word": "post a { section 4 x 4; foot out 2, back 3; taper 3 x 3 from 250 to foot }",
  "an end called by any word": "rail a { from front to back; section 4 x 4; end back { tenon square } }",
  "a modifier within its phrase": "angle a { between seat, back above 500 }",
  "a list ended by a length": "trim front, back 8",
  "a brace on the next line": "joint a\n{\n  glue pva\n}",
  "a part as a share": "joint a { tenon thick 1/3 of rail, long 2/3 of post }",
  "a mixed number": "let a = 2 1/2",
  "two values, not a mixed number": "slat a { from b to c; at 2, 1/2; section 9 x 38 }",
  "a slope": "rail a { across front; section 4 x 4; slope 1:8 }",
  "quotes inside text": 'chair "The \\"low\\" one"',
  "a comment with quotes": 'units mm # 3/4" stock',
  "a joint's own name": 'accept tenon-too-thin on seat-side.left to front.left because "it holds"',
  "a let called like a function": "let round = 3\nlet b = round(4.4)",
  nothing: "",
  "only a comment": "# nothing yet",
};

test.each(Object.entries(fine))("nothing is said of %s", (_, text) => {
  expect(problemsOf(text)).toEqual([]);
});

test("a file that begins with `like` may leave properties to the other file", () => {
  expect(problemsOf('like "other.chair"\npost front pair {\n  height 300\n}')).toEqual([]);
});
