/**
 * What the design stage finds wrong: rows for the rule table, for `explain` and the reference.
 */
import type { Severity } from "../../grammar/problem.ts";

interface CodeRow {
  code: string;
  title: string;
  explanation: string;
  severity: Severity;
}

const names: CodeRow[] = [
  {
    code: "unknown-name",
    title: "Unknown name",
    explanation:
      "The line speaks of a part, joint, value or function that nothing in this file, or in a file that it uses, is called. The nearest name is offered. Only a pair has a left and a right.",
    severity: "error",
  },
  {
    code: "wrong-kind",
    title: "Name of another kind of thing",
    explanation:
      "The name exists, but it is of a thing that cannot stand here: a joint where a post belongs, or a part where a value belongs. A value of a part is written with a point, such as `front.length`.",
    severity: "error",
  },
  {
    code: "not-a-pair",
    title: "Across one post only",
    explanation:
      "A rail goes `across` or `over` a pair, from its left one to its right one. Between two single posts it goes `from … to …`.",
    severity: "error",
  },
  {
    code: "which-side",
    title: "Which of a pair",
    explanation:
      "A part that stands once and meets a pair must say which of the two it means, as in `front.left`; a pair meets each side's own. A rail that goes `across` or `over` takes both, so no side is said there.",
    severity: "error",
  },
  {
    code: "duplicate-name",
    title: "Name given twice",
    explanation:
      "Lets, parts, joints, angles and boards share one set of names, so that a name means one thing everywhere. The first keeps it; the second is not read.",
    severity: "error",
  },
  {
    code: "reserved-name",
    title: "Name of a worked-out value",
    explanation:
      "The names of the whole chair's worked-out values (`height`, `width`, `depth`, `weight`, `joints`, `seat`, `backrest`, `tip`) cannot be given to a let: `require height` must mean the chair's.",
    severity: "error",
  },
  {
    code: "shadows-word",
    title: "Name that is also a word",
    explanation:
      "Words of the language are special only where they can stand, so a let may share one's name; but there the word wins, as in `from 250mm to foot`, and the let is not reached. Another name is safer.",
    severity: "warning",
  },
  {
    code: "eaten-minus",
    title: "Minus read as part of a name",
    explanation:
      "A hyphen between letters and digits makes one name, as in `seat-front`. To subtract, put a space on both sides of the minus: `seat-height - 12mm`.",
    severity: "error",
  },
];

const figures: CodeRow[] = [
  {
    code: "wrong-unit",
    title: "Wrong kind of quantity",
    explanation:
      "Every number has a unit: a bare length takes the file's, angles carry `deg` or are a slope such as `1:8`, shares carry `%`, weights `kg`. Quantities of different kinds cannot be added, and each property takes one kind.",
    severity: "error",
  },
  {
    code: "unreadable-number",
    title: "Number that cannot be calculated",
    explanation:
      "The expression divides by nothing, grows beyond all bounds, or gives a function more or fewer values than it takes.",
    severity: "error",
  },
  {
    code: "impossible-size",
    title: "Size that cannot be",
    explanation:
      "A section, length or count that is nothing or less, a length over 10 m, a lean of 85° or more, or a range that ends before it begins. Often the unit is not the one meant.",
    severity: "error",
  },
  {
    code: "which-end",
    title: "Rake of a leg without its end",
    explanation:
      "Legs in a solid seat lean either way: front legs put the foot forward, back legs put it back. So a leg's `rake` always says which end goes where, as in `rake 12deg foot back`.",
    severity: "error",
  },
  {
    code: "sign-beside-words",
    title: "Negative angle beside words",
    explanation:
      "The words beside a rake or a splay say which end of the post goes which way, so the angle beside them is positive. A minus would say the opposite of the words.",
    severity: "error",
  },
  {
    code: "circular-value",
    title: "Values that depend on each other",
    explanation:
      "A value is calculated from itself, by way of other values or of a part that it shapes; the message names the members of the circle. One of them must be given by itself.",
    severity: "error",
  },
  {
    code: "let-out-of-range",
    title: "Adjustable value out of its range",
    explanation:
      "`within` says how far a value may be moved. The value given lies outside, or the range is the wrong way round.",
    severity: "error",
  },
  {
    code: "needs-two",
    title: "An angle needs two things",
    explanation: "An angle lies between two things, separated by a comma: `between seat, back above 530mm`.",
    severity: "error",
  },
  {
    code: "nothing-to-curve",
    title: "No change of direction to curve",
    explanation:
      "`over` makes a change of direction a fair curve. A rake of the whole post has none; `above` says at which height it starts.",
    severity: "warning",
  },
  {
    code: "needs-over",
    title: "End that does not lie over its post",
    explanation:
      "An end with a line `over` lies over its post's top, and an overhang is how far it runs past it. A post that goes up into a rail and has no height is as high as that rail lets it be: the rail cannot be let into it.",
    severity: "error",
  },
];

const files: CodeRow[] = [
  {
    code: "missing-file",
    title: "File not found",
    explanation:
      "`use` and `like` name a file by its path from this file's folder. There is none to be read there.",
    severity: "error",
  },
  {
    code: "empty-file",
    title: "Empty file",
    explanation:
      "A file named by `use` or `like` is there, but says nothing: it was emptied, or has not been saved yet. Nothing comes from it.",
    severity: "warning",
  },
  {
    code: "refused-file",
    title: "File that must not be named",
    explanation:
      "A chair may come from anybody, so the files that it names are read only where that can do no harm: files that end in `.chair`, on the same machine as the chair itself. A link is followed, and what it leads to must be such a file too.",
    severity: "error",
  },
  {
    code: "too-many-files",
    title: "More files than are read",
    explanation:
      "A chair is put together from at most 500 other files, at most 64 of them in a row that each name the next, with at most 8 MB of text and 100,000 words and signs in all of them together. What goes beyond that is not read, so that no file can take the machine's time or memory.",
    severity: "error",
  },
  {
    code: "circular-file",
    title: "Files that start from each other",
    explanation:
      "A chair that is `like` another, or uses its joints, cannot be started from by that other in turn.",
    severity: "error",
  },
  {
    code: "faulty-file",
    title: "Errors in a file that this one starts from",
    explanation:
      "The other file has errors of its own, or what this file says makes some of it impossible. They are said once here; open that file to mend them.",
    severity: "error",
  },
];

/** Every code that the design stage reports and no other stage does. */
export const designCodes: readonly CodeRow[] = [...names, ...figures, ...files];
