/**
 * How a chair is laid out means nothing: with other blanks, indents, line ends, empty lines and comments it is the same chair, drawn by
 * the same strokes; laid out by the formatter it is the same again, and a second time changes nothing.
 */
import { applyEdits, formatTree } from "../../grammar/format.ts";
import { drawSheet } from "../../server/drawing/draw-sheet.ts";
import { sheetToSvg } from "../../server/drawing/svg.ts";
import { errorsOf, meanings, read } from "../grammar/fixtures/reading.ts";
import { codesOf, sampleTexts, studyAmong, valuesOf } from "./samples.ts";
import { below, fuzz, oneOf } from "./tried.ts";

const files = Object.keys(sampleTexts);
const chairs = new Map(files.map((file) => [file, drawn(file, sampleTexts)]));

function drawn(file: string, texts: Readonly<Record<string, string>>): { told: string[]; svg: string } {
  const { study } = studyAmong(texts, file);
  return { told: [...codesOf(study), ...valuesOf(study)], svg: sheetToSvg(drawSheet(study.chair)) };
}

/** A text laid out anew: what is between words is drawn at random, comments and quoted words stay. */
function laidOut(text: string, random: () => number): string {
  const eol = oneOf(random, ["\n", "\r\n", "\r"]);
  const indents = oneOf(random, ["none", "kept", "any"]);
  const blank = () => oneOf(random, [" ", " ", "  ", "\t", " \t "]);
  const lines = text.split("\n").map((line) => {
    const [, lead = "", rest = ""] = /^([ \t]*)(.*)$/.exec(line) ?? [];
    const indent = indents === "kept" ? lead : indents === "none" ? "" : " ".repeat(below(random, 9));
    const pieces = rest.match(/#.*$|"(?:\\.|[^"\\])*"|[ \t]+|[^ \t"#]+/g) ?? [];
    const own = pieces.map((piece) => (/^[ \t]+$/.test(piece) ? blank() : piece)).join("");
    const tail =
      own.includes("#") || random() < 0.8 ? "" : oneOf(random, ["  ", "\t", "  # said aside", " #"]);
    return own === "" ? "" : indent + own + tail;
  });
  const spread = lines.flatMap((line) =>
    line === "" ? Array.from({ length: below(random, 3) }, () => "") : random() < 0.05 ? ["", line] : [line],
  );
  return spread.join(eol) + oneOf(random, ["", eol, eol + eol]);
}

const comments = (text: string): number => read(text).comments.length;

fuzz("layouts keep the chair and its drawing", 24, (random) => {
  const file = oneOf(random, files);
  const text = sampleTexts[file]!;
  const other = laidOut(text, random);
  const tree = read(other);
  const [expected, found] = [text, other].map((each) => meanings(read(each)).join("\n"));
  if (errorsOf(tree).length > 0 || expected !== found)
    return {
      file,
      because: "it is read otherwise",
      errors: errorsOf(tree).map(({ code }) => code),
      text: JSON.stringify(other),
    };
  const once = applyEdits(other, formatTree(tree));
  const again = read(once);
  if (formatTree(again).length > 0)
    return { file, because: "not formatted at once", text: JSON.stringify(other) };
  if (meanings(again).join("\n") !== expected || comments(once) !== comments(other))
    return { file, because: "the formatter changed the meaning", text: JSON.stringify(other) };
  const was = chairs.get(file)!;
  const is = drawn(file, { ...sampleTexts, [file]: oneOf(random, [other, once]) });
  if (was.told.join() !== is.told.join())
    return { file, because: "other values or findings", text: JSON.stringify(other) };
  return was.svg === is.svg ? undefined : { file, because: "drawn otherwise", text: JSON.stringify(other) };
});
