import { writeFileSync } from "node:fs";
import { TextDocument } from "vscode-languageserver-textdocument";
import { applyEdits, formatTree, isSyntax } from "../../../grammar/format.ts";
import { shortWords } from "../../../grammar/problem.ts";
import { finish } from "../../../grammar/steps.ts";
import { type Bench, type Command, ENDED, eachFile } from "./command.ts";
import { type Input, PIPED } from "./read-input.ts";
import { harmless } from "./terminal.ts";
import { stored } from "./writing.ts";

export const format: Command = {
  name: "format",
  usage: "format FILES… [--check]",
  summary:
    "indent and space the text; with --check only say which files would change; - goes to standard output",
  options: {
    check: {
      type: "boolean",
      does: "change nothing; say which files would change, and end with 1 if any would",
    },
  },
  takes: { least: 1, most: Number.POSITIVE_INFINITY },
  run: (bench, files, { check }) =>
    eachFile(bench, files, (input) => formatOne(bench, input, check === true)),
};

function formatOne(bench: Bench, { file, text }: Extract<Input, { text: string }>, check: boolean): number {
  const { terminal, services } = bench;
  const tree = finish(services.parse(text));
  const fault = tree.problems.find(({ code }) => isSyntax(code));
  if (fault) {
    const line = TextDocument.create("", "", 0, text).positionAt(fault.start).line + 1;
    terminal.error(
      `${harmless(file)}: left as it is, because line ${line} cannot be read: ${harmless(shortWords(fault.message))}\n`,
    );
    return ENDED.faults;
  }
  const laidOut = applyEdits(text, formatTree(tree));
  if (file === PIPED && !check) {
    terminal.out(laidOut);
    return ENDED.well;
  }
  if (laidOut === text) return ENDED.well;
  if (check) {
    terminal.out(`${harmless(file)}: would be laid out anew.\n`);
    return ENDED.faults;
  }
  const ending = stored(bench, file, () => writeFileSync(file, laidOut));
  if (ending !== ENDED.well) return ending;
  terminal.out(`${harmless(file)}: laid out anew.\n`);
  return ENDED.well;
}
