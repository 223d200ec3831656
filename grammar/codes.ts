import type { Severity } from "./problem.ts";

/** A kind of problem that reading can find; the rule table takes these rows over. */
interface Code {
  /** Kebab case, as `Problem.code` has it. */
  code: string;
  severity: Severity;
  /** A few words for lists and settings. */
  title: string;
  /** Plain sentences: what is wrong and what to do. */
  explanation: string;
  /** The text cannot be read for sure where this stands, so the formatter leaves the whole file alone. */
  syntax?: true;
}

const syntax = true;
const error: Severity = "error";

const words: Code[] = [
  {
    code: "unknown-word",
    severity: error,
    title: "Unknown word",
    explanation:
      "The language does not know this word at this place. Each kind of block has its own words; the message offers the nearest one. The rest of the file is read as if the line were not there.",
    syntax,
  },
  {
    code: "misplaced-word",
    severity: error,
    title: "Word in the wrong place",
    explanation:
      "The word is one of the language's, but it belongs in another kind of block. Move the line there, or use the word that this block has for it.",
    syntax,
  },
  {
    code: "missing-word",
    severity: error,
    title: "Missing word",
    explanation:
      "One word between two others was left out, such as the `to` of `from front to back`. The line is read as if it stood there; put it in.",
    syntax,
  },
  {
    code: "missing-name",
    severity: error,
    title: "Missing name",
    explanation:
      "What a line declares must have a name, so that other lines, reports and drawings can speak of it.",
    syntax,
  },
  {
    code: "missing-value",
    severity: error,
    title: "Missing value",
    explanation:
      "The line ends, or a sign stands, where a value or a word must follow. The message says which.",
    syntax,
  },
  {
    code: "left-over",
    severity: error,
    title: "Something left over",
    explanation:
      "The line was complete before this, or something else should stand here. Take it out or begin a new line.",
    syntax,
  },
  {
    code: "unreadable",
    severity: error,
    title: "Unreadable",
    explanation:
      "Characters that mean nothing in the language at this place. The rest of the file is read all the same.",
    syntax,
  },
];

const blocks: Code[] = [
  {
    code: "missing-brace",
    severity: error,
    title: "Missing brace",
    explanation:
      "A block begins with `{` behind its header and ends with `}`. The lines are read as the block they plainly belong to.",
    syntax,
  },
  {
    code: "stray-brace",
    severity: error,
    title: "Stray brace",
    explanation:
      "A brace that opens or closes nothing, or that ends a block whose lines go on below. Take it out.",
    syntax,
  },
  {
    code: "missing-property",
    severity: error,
    title: "Missing property",
    explanation:
      "Without this line the part cannot be worked out. In a file that begins with `like`, the other file may give it.",
  },
  {
    code: "given-twice",
    severity: error,
    title: "Given twice",
    explanation:
      "Two lines of one block answer the same question, such as a tenon's size or where a post stands. Keep one of them.",
  },
  {
    code: "missing-line-end",
    severity: error,
    title: "Missing line end",
    explanation: "Two statements stand on one line. Begin a new line, or part them with a semicolon.",
    syntax,
  },
  {
    code: "too-deep",
    severity: error,
    title: "Too deep",
    explanation:
      "Parentheses or blocks stand deeper in one another, or an expression is longer, than a chair can need. Give inner values names with `let`.",
    syntax,
  },
  {
    code: "conflict-marker",
    severity: error,
    title: "Mark of a merge",
    explanation: "A merge left both versions of some lines in the file. Keep one and take the marks out.",
    syntax,
  },
];

const spellings: Code[] = [
  {
    code: "missing-comma",
    severity: error,
    title: "Missing comma",
    explanation: "Phrases of one line are separated by commas, as in `foot out 205mm, back 20mm`.",
    syntax,
  },
  {
    code: "missing-space",
    severity: error,
    title: "Missing space",
    explanation:
      "The `x` of a size is a word and stands between spaces, `40mm x 40mm`, since letters and digits that touch are one name. Each number takes its own unit.",
    syntax,
  },
  {
    code: "missing-parenthesis",
    severity: error,
    title: "Missing parenthesis",
    explanation: "Parentheses pair up within a line.",
    syntax,
  },
  {
    code: "minus-spacing",
    severity: error,
    title: "Minus without spaces",
    explanation:
      "A minus that subtracts has a space on both sides. Names may hold hyphens, so `a-b` is one name and `a -b` leaves doubt.",
    syntax,
  },
  {
    code: "sign-spelling",
    severity: error,
    title: "Foreign sign",
    explanation:
      "The language writes `-`, `x`, `*`, `/`, `<=` and `>=`; long dashes and crosses come from word processors.",
    syntax,
  },
  {
    code: "number-spelling",
    severity: error,
    title: "Number spelt otherwise",
    explanation:
      "The decimal sign is a point with a digit on both sides: `6.5`, `0.5`. A comma parts two values.",
    syntax,
  },
  {
    code: "fraction-spelling",
    severity: error,
    title: "Fraction spelt otherwise",
    explanation:
      "Fractions are written with a stroke, `1/2`, and a whole number before them with a space, `1 1/2`.",
    syntax,
  },
  {
    code: "unit-spelling",
    severity: error,
    title: "Unit spelt otherwise",
    explanation:
      "The units are mm, cm, m, in, ft, deg, kg, g, lb, N, kN, lbf and %. Each number takes its own: `5deg to 7deg`.",
    syntax,
  },
  {
    code: "mixed-units",
    severity: "warning",
    title: "A unit on one of two numbers",
    explanation:
      "A bare length takes the file's unit, so of two lengths of which one has another unit, the other may not mean what was thought. Write the unit on both.",
  },
  {
    code: "date-spelling",
    severity: error,
    title: "Date spelt otherwise",
    explanation: "A date is year, month and day with two digits each for month and day: `2026-03-14`.",
    syntax,
  },
  {
    code: "quote-spelling",
    severity: error,
    title: "Curly quotes",
    explanation: 'Text stands in straight quotes, `"…"`; curly ones come from word processors.',
    syntax,
  },
  {
    code: "unclosed-quote",
    severity: error,
    title: "Unclosed quote",
    explanation: 'Text ends with `"` on the line it begins; `\\"` is a quote inside it.',
    syntax,
  },
];

/** Every code that reading gives, with its meaning. */
export const codes: readonly Code[] = [
  ...words,
  ...blocks,
  ...spellings,
  {
    code: "not-yet-worked-out",
    severity: "information",
    title: "Not yet worked out",
    explanation: "The line is part of the language and is kept, but nothing follows from it yet.",
  },
];
