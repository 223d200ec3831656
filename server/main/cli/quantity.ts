import type { Quantity } from "../../design/design.ts";
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
