import { basename } from "node:path";
import { fitReport } from "../../editor/pages/fit.ts";
import { fitOf } from "../../editor/pages/fit-found.ts";
import { type Command, eachFile, studyOf, toldOfErrors } from "./command.ts";
import { formatOption } from "./options.ts";
import { reportText } from "./report-text.ts";
import type { FitOutput } from "./schema.ts";
import { brush } from "./terminal.ts";

export const fit: Command = {
  name: "fit",
  usage: "fit FILE [--format text|json]",
  summary: "say whom a chair suits: its sitter, and which share of people",
  options: { format: formatOption },
  takes: { least: 1, most: 1 },
  run(bench, files, options) {
    const { terminal } = bench;
    return eachFile(bench, files, (input) => {
      const { design, chair, problems } = studyOf(bench, input);
      const title = design.title?.value ?? basename(input.file);
      if (options.format === "json") {
        const found: FitOutput = fitOf(title, chair);
        terminal.out(`${JSON.stringify(found, null, 2)}\n`);
      } else terminal.out(reportText(fitReport(title, chair), brush(terminal.colour.out)));
      return toldOfErrors(bench, input.file, problems, "parts may be missing");
    });
  },
};
