/**
 * A comparison that somebody asks of a file, such as `seat.slope = 2deg`, read as the language reads a `require` line.
 */
import { editorSentence } from "../../grammar/sentences/editor-sentence.ts";
import type { Steps } from "../../grammar/steps.ts";
import { workedValue } from "../chair/values/values.ts";
import { studySteps } from "../study.ts";
import type { Subject } from "./attempt.ts";
import { type Goal, goalOf } from "./goal.ts";

/** What is asked, or why it cannot be, one plain sentence without its full stop. */
export function* goalSteps(subject: Subject, asked: string): Steps<Goal | { refused: string }> {
  if (/[\n\r;{}#]/.test(asked)) return { refused: editorSentence("reach.not-one", { asked }) };
  const spaced = asked.replace(/\s*(<=|>=|<|>|=)\s*/, " $1 ");
  const from = subject.text.length + 1;
  const study = yield* studySteps({ ...subject, text: `${subject.text}\nrequire ${spaced}\n` });
  const wrong = study.problems.find(
    ({ severity, start, code }) => severity === "error" && start >= from && code !== "requirement-not-met",
  );
  if (wrong) return { refused: wrong.message.replace(/\.$/, "") };
  const line = study.design.requires.find(
    ({ subjectAt, file }) => file === undefined && subjectAt.start >= from,
  );
  if (!line?.bound) return { refused: editorSentence("reach.not-a-comparison", { asked }) };
  if (!line.computed && !workedValue(study.chair, line.subject))
    return { refused: editorSentence("reach.not-worked-out", { value: line.subject }) };
  return goalOf(line) ?? { refused: editorSentence("reach.sum", { asked }) };
}
