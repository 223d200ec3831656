import { afterAll, expect, test } from "vitest";
import { endOf, lex, T } from "../../grammar/tokens.ts";
import { shareName, shareOf, time } from "../share.ts";
import { errorsOf, lost, meanings, read } from "./fixtures/reading.ts";
import { messChair, wholeChairs } from "./fixtures/texts.ts";
import { holds } from "./fixtures/whole-tree.ts";

const chairs = wholeChairs();

/** Of the beginnings of each chair, of its tokens and of the characters of one, one in so many is tried in `npm test`. */
const [BEGINNINGS, TOKENS, CHARACTERS] = [29, 8, 15];

const tally = { damages: 0, harmful: 0 };
afterAll(() => {
  console.info(`${tally.damages} damages, ${tally.harmful} of which cost a line other than the damaged one`);
});

test.each(chairs)("%s is read without a word of complaint", (_, text) => {
  expect(errorsOf(read(text))).toEqual([]);
});

test.each(chairs)(
  `a beginning of %s gives a whole tree, ${shareName(BEGINNINGS)}`,
  { timeout: time },
  (_, text) => {
    const ends = Array.from({ length: text.length + 1 }, (_none, end) => end);
    for (const end of shareOf(ends, BEGINNINGS)) holds(read(text.slice(0, end)));
  },
);

interface Cut {
  start: number;
  end: number;
  /** How many lines it damages: two when it takes a line end out, since what stood on either side is one line then. */
  lines: number;
}

/** The cuts that take the meaning from more lines than the damaged one. Each gives a whole tree. */
function harm(text: string, cuts: readonly Cut[]): string[] {
  const before = meanings(read(text));
  const harmful: string[] = [];
  for (const { start, end, lines } of cuts) {
    const tree = read(without(text, start, end));
    holds(tree);
    const gone = lost(before, meanings(tree));
    if (gone.length > lines)
      harmful.push(`${lineOf(text, start)}: ${JSON.stringify(text.slice(start, end))} ${gone.length}`);
  }
  tally.damages += cuts.length;
  tally.harmful += harmful.length;
  return harmful;
}

const without = (text: string, start: number, end: number) => text.slice(0, start) + text.slice(end);
const lineOf = (text: string, place: number) => text.slice(0, place).split("\n").length;

/**
 * A block of a chair that is `like` another may hold one line that posts, rails and slats all have; with its header's word gone
 * there is no telling which it was.
 */
const unavoidable = (text: string, { start }: Cut) =>
  /^like /m.test(text) &&
  /^[a-z-]+ [^{\n]*\{\n[^}\n]*\n\}/.test(text.slice(start)) &&
  text[start - 1] === "\n";

test.each(chairs)(
  `a token less in %s costs no line but the damaged one, ${shareName(TOKENS)}`,
  { timeout: time },
  (_, text) => {
    const cuts = lex(text).tokens.map((token) => ({
      start: token.startOffset,
      end: endOf(token),
      lines: token.tokenType === T.Newline ? 2 : 1,
    }));
    expect(
      harm(
        text,
        shareOf(cuts, TOKENS).filter((cut) => !unavoidable(text, cut)),
      ),
    ).toEqual([]);
  },
);

test(`a character less costs no line but the damaged one, ${shareName(CHARACTERS)}`, {
  timeout: time,
}, () => {
  const cuts = Array.from(messChair, (sign, start) => ({
    start,
    end: start + 1,
    lines: sign === "\n" ? 2 : 1,
  }));
  expect(harm(messChair, shareOf(cuts, CHARACTERS))).toEqual([]);
});

test(`a token less is reported once, ${shareName(TOKENS)}`, { timeout: time }, () => {
  const many: string[] = [];
  for (const token of shareOf(lex(messChair).tokens, TOKENS)) {
    const text = without(messChair, token.startOffset, endOf(token));
    const errors = errorsOf(read(text));
    if (errors.length > 1)
      many.push(`${lineOf(messChair, token.startOffset)}: ${errors.map(({ code }) => code).join(", ")}`);
  }
  expect(many).toEqual([]);
});

test("an unindented chair is read as the indented ones are", () => {
  const flat = messChair.replace(/^ +/gm, "");
  expect(meanings(read(flat))).toEqual(meanings(read(messChair)));
});

test("in unindented text a brace less costs no line its meaning", () => {
  const flat = messChair.replace(/^ +/gm, "");
  const before = meanings(read(flat));
  const braces = [...flat.matchAll(/[{}]/g)].map(({ index }) => index);
  const harmed = braces.filter((at) => lost(before, meanings(read(without(flat, at, at + 1)))).length > 1);
  expect(harmed.length).toBeLessThanOrEqual(braces.length / 4);
});
