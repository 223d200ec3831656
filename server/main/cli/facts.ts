import { factLines } from "../../compare/fact-lines.ts";
import { type Command, ENDED, eachFile, studyOf } from "./command.ts";
import { harmless } from "./terminal.ts";

export const facts: Command = {
  name: "facts",
  usage: "facts FILE",
  summary: "list what the text says, one fact a line in a fixed order, for git to compare (textconv)",
  options: {},
  takes: { least: 1, most: 1 },
  run: (bench, files) =>
    eachFile(bench, files, (input) => {
      const lines = factLines(studyOf(bench, input)).map(harmless);
      bench.terminal.out(lines.map((line) => `${line}\n`).join(""));
      return ENDED.well;
    }),
};
