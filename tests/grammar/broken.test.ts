import { afterAll, expect, test } from "vitest";
import { endOf, lex, T } from "../../grammar/tokens.ts";
import { errorsOf, lost, meanings, read } from "./fixtures/reading.ts";
import { messChair, wholeChairs } from "./fixtures/texts.ts";
import { holds } from "./fixtures/whole-tree.ts";

const chairs = wholeChairs();

const tally = { damages: 0, harmful: 0 };
afterAll(() => {
  console.info(`${tally.damages} damages, ${tally.harmful} of which cost a line other than the damaged one`);
});

test.each(chairs)("%s is read without a word of complaint", (_, text) => {
  expect(errorsOf(read(text))).toEqual([]);
});

test.each(chairs)("every beginning of %s gives a whole tree", (_, text) => {
  for (let end = 0; end <= text.length; end++) holds(read(text.slice(0, end)));
});

test.each(chairs)("taking any one token out of %s gives a whole tree", (_, text) => {
  for (const token of lex(text).tokens) holds(read(without(text, token.startOffset, endOf(token))));
});

/**
 * How many damages take the meaning from more lines than the damaged one. A line end taken out damages two lines: what stood
 * on either side of it is one line then, or a comment.
 */
function harm(text: string, cuts: readonly { start: number; end: number; lines: number }[]): string[] {
  const before = meanings(read(text));
  const harmful: string[] = [];
  for (const { start, end, lines } of cuts) {
    const gone = lost(before, meanings(read(without(text, start, end))));
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
const unavoidable = (text: string) =>
  (/^like /m.test(text) ? 6 : 0) +
  // `seat board {` without its first word is the header of a board to hand.
  (/^seat board \{/m.test(text) ? 1 : 0);

test.each(chairs)("one token less in %s costs no line but the damaged one", (_, text) => {
  const cuts = lex(text).tokens.map((token) => ({
    start: token.startOffset,
    end: endOf(token),
    lines: token.tokenType === T.Newline ? 2 : 1,
  }));
  const harmful = harm(text, cuts);
  if (harmful.length > unavoidable(text)) expect(harmful).toEqual([]);
});

test("one character less costs no line but the damaged one", () => {
  const cuts = Array.from(messChair, (sign, start) => ({
    start,
    end: start + 1,
    lines: sign === "\n" ? 2 : 1,
  }));
  expect(harm(messChair, cuts)).toEqual([]);
});

test("one token less is reported once", () => {
  const many: string[] = [];
  for (const token of lex(messChair).tokens) {
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
