/**
 * A finding in words: what is wrong, and, once it has been tried, what puts it right.
 */

import type { Problem } from "../../grammar/problem.ts";
import { editorSentence } from "../../grammar/sentences/editor-sentence.ts";
import { aboutRules } from "../rules/file/about-rules.ts";
import { isOfReading } from "../rules/file/language.ts";

/** The whole message. A finding of reading, or of a line about rules, says itself what to do. */
export function messageOf(problem: Problem): string {
  const { message, mends, otherwise } = problem;
  if (!mends || isOfReading(problem) || aboutRules.has(problem.code)) return message;
  if (mends.length > 0)
    return editorSentence("mend.works", {
      message,
      mends: mends
        .map(({ title }) => lower(title))
        .reduce((one, other) => editorSentence("mend.or", { one, other })),
    });
  return `${message} ${otherwise ?? editorSentence("mend.none")}`;
}

const lower = (title: string): string => title.charAt(0).toLowerCase() + title.slice(1);
