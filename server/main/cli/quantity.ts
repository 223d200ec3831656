import { workedValue } from "../../chair/values/values.ts";
import type { Quantity, RequireDesign } from "../../design/design.ts";
import type { Study } from "../../study.ts";
import { type Bench, studyOf } from "./command.ts";
import type { Input } from "./read-input.ts";

type Read = Extract<Input, { text: string }>;

/** A name for figures of the command line that no chair has. */
const NAME = "figure-of-the-command-line";

/** A figure as the language reads it in this file, such as `900`, `17 1/2`, `5deg`; nothing when it is none. */
export function quantityIn(bench: Bench, input: Read, text: string): Quantity | undefined {
  if (/[\n;{}#"]/.test(text)) return undefined;
  const { design } = studyOf(bench, { ...input, text: `${input.text}\nlet ${NAME} = ${text}\n` });
  return design.lets.get(NAME)?.value?.value;
}

/** A file with one requirement more, such as `seat.slope = 2deg`, and how the language reads it. */
export function requirementIn(
  bench: Bench,
  input: Read,
  asked: string,
): { line: RequireDesign; study: Study; text: string } | { refused: string } {
  if (/[\n;{}#]/.test(asked)) return { refused: `"${asked}" is not one comparison` };
  const spaced = asked.replace(/\s*(<=|>=|<|>|=)\s*/, " $1 ");
  const text = `${input.text}\nrequire ${spaced}\n`;
  const study = studyOf(bench, { ...input, text });
  const from = input.text.length + 1;
  const wrong = study.problems.find(
    ({ severity, start, code }) => severity === "error" && start >= from && code !== "requirement-not-met",
  );
  if (wrong) return { refused: wrong.message.replace(/\.$/, "") };
  const line = study.design.requires.find(
    ({ subjectAt, file }) => file === undefined && subjectAt.start >= from,
  );
  if (!line?.bound) return { refused: `"${asked}" is not a comparison such as "seat.slope = 2deg"` };
  if (!line.computed && !workedValue(study.chair, line.subject))
    return { refused: `"${line.subject}" cannot be worked out for this chair` };
  return { line, study, text };
}
