import { basename } from "node:path";
import type { Worked } from "../../chair/chair.ts";
import { printWorked } from "../../chair/values/print.ts";
import { caution } from "../../floor/editions.ts";
import { lateSteps } from "../../strength/late.ts";
import { type Command, eachFile, studyOf, toldOfErrors } from "./command.ts";
import { amountForJson } from "./json-units.ts";
import { formatOption } from "./options.ts";
import type { ReckonOutput } from "./schema.ts";
import { brush, columns, harmless, wrapped } from "./terminal.ts";

export const reckon: Command = {
  name: "reckon",
  usage: "reckon FILE [--format text|json]",
  summary: "list every value that follows from the text, by its dotted name",
  options: { format: formatOption },
  takes: { least: 1, most: 1 },
  run(bench, files, options) {
    const { terminal } = bench;
    return eachFile(bench, files, (input) => {
      const { design, chair, problems } = studyOf(bench, input, { late: lateSteps });
      const title = design.title?.value ?? basename(input.file);
      const values = [...chair.values.values()];
      if (options.format === "json") terminal.out(`${JSON.stringify(outputOf(title, values), null, 2)}\n`);
      else {
        const paint = brush(terminal.colour.out);
        const rows = values.map((worked) => [worked.name, printWorked(worked, design.units)]);
        const stability = values.some(({ name }) => /^(tip|strength)\./.test(name));
        const ending = stability ? `\n${wrapped(caution)}\n` : "";
        terminal.out(`${paint("bold", harmless(title))}\n${columns(rows, "  ")}\n${ending}`);
      }
      if (chair.endless.length > 0)
        terminal.error(
          `${harmless(input.file)}: not finite, so left out: ${chair.endless.map(harmless).join(", ")}.\n`,
        );
      return toldOfErrors(bench, input.file, problems, "values may be missing");
    });
  },
};

function outputOf(title: string, values: readonly Worked[]): ReckonOutput {
  const output: ReckonOutput = { chair: title, values: {} };
  for (const { name, number, dimension } of values) {
    output.values[name] = amountForJson(number, dimension);
  }
  return output;
}
