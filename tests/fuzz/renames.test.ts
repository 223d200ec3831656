/**
 * Renaming keeps the meaning: whatever is renamed, to whatever name that is not refused, every file that changes, or reads one that does,
 * has the same values and findings as before.
 */

import { expect, test } from "vitest";
import { rename } from "../../server/editor/rename.ts";
import { plainView } from "../server/editor/view.ts";
import { addressOf, codesOf, edited, sampleTexts, studyAmong, valuesOf } from "./samples.ts";
import { fuzz, oneOf } from "./tried.ts";

const files = Object.keys(sampleTexts);
const views = files.map((file) => plainView(sampleTexts[file]!, addressOf(file), sampleTexts));
const before = new Map(files.map((file) => [file, studyAmong(sampleTexts, file)]));

/** Names that mean nothing yet, and such as mean something already, somewhere or everywhere. */
const fresh = ["fresh", "räil-1", "a-b-c", "front-leg"];
const taken = ["front", "back", "seat", "left", "pair", "rail-tenon", "height", "x"];

let renamed = 0;
fuzz("renames keep every value", 25, (random) => {
  const view = oneOf(random, views);
  const text = view.document.getText();
  const words = [
    ...text.replace(/#.*/g, (comment) => " ".repeat(comment.length)).matchAll(/[\p{L}][\p{L}\d-]*/gu),
  ];
  const names = words.filter(([each]) => view.study.design.names.has(each));
  const word = oneOf(random, names.length === 0 || random() < 0.1 ? words : names);
  const name = random() < 0.6 ? oneOf(random, fresh) : oneOf(random, [...taken, oneOf(random, words)[0]]);
  const others = views.filter((other) => other !== view);
  const answer = rename(view, word.index, name, others);
  if ("refused" in answer) return undefined;
  const changes = answer.changes ?? {};
  const after: Record<string, string> = { ...sampleTexts };
  for (const [at, file] of files.entries()) {
    const edits = changes[addressOf(file)];
    if (edits) after[file] = edited(views[at]!, edits);
  }
  renamed++;
  for (const [file, { study, reads }] of before) {
    if (![...reads].some((read) => after[read] !== sampleTexts[read])) continue;
    const { study: now } = studyAmong(after, file);
    const [was, is] = [study, now].map((one) => [...codesOf(one), ...valuesOf(one)]);
    if (was!.join() === is!.join()) continue;
    const different = is!.filter((value, at) => value !== was![at]).slice(0, 4);
    return { in: view.uri, word: word[0], at: word.index, name, file, different };
  }
  return undefined;
});

test("some of them were not refused", () => expect(renamed).toBeGreaterThan(3));
