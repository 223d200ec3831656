/**
 * The files that break each rule, as they stand beside the rules.
 */
import { pathToFileURL } from "node:url";
import { examplesIn } from "../server/main/cli/examples.ts";
import { rules } from "../server/rules/index.ts";
import { projectFile } from "./proofs/project-file.ts";

const rooms = ["grammar", "server/design", "server/rules"];

/** A file that breaks a rule, by the rule's code; nothing for a rule that no text breaks. */
export const exampleOf = examplesIn(rooms.map((room) => pathToFileURL(`${projectFile(room)}/`)));

/** Every rule that text can break, with its example. */
export const examples = rules.flatMap((rule) => {
  const example = exampleOf(rule.code);
  return example === undefined ? [] : [{ rule, code: rule.code, example }];
});
