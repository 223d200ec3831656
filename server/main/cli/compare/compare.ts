import { type Command, ENDED, misuse } from "../command.ts";
import { formatOption, outOption } from "../options.ts";
import { brush, harmless } from "../terminal.ts";
import { written } from "../writing.ts";
import { comparedOf, outputOf } from "./compared.ts";
import { gitHandsOver } from "./from-git.ts";
import { type Version, versionNamed } from "./sides.ts";

export const compare: Command = {
  name: "compare",
  usage: "compare OLD NEW [--format text|markdown|json|svg] [--all] [-o FILE]",
  summary:
    "say what was changed between two chairs and what follows; each a file, REVISION:FILE of git, or -",
  options: {
    format: formatOption,
    all: { type: "boolean", does: "also name what is only worked out differently" },
    out: outOption,
    git: { type: "boolean", does: "as git calls it, with its own arguments" },
  },
  formats: ["text", "markdown", "json", "svg"],
  takes: { least: 1, most: 9 },
  run(bench, given, options) {
    if (options.git) return gitHandsOver(bench, given, options);
    const [one, other, ...rest] = given;
    if (one === undefined || other === undefined || rest.length > 0)
      return misuse(bench, '"compare" takes two chairs: an old one and a new one.');
    if (one === "-" && other === "-")
      return misuse(bench, "only one of the two can come over standard input.");
    const versions = [one, other].map(versionNamed);
    const paint = brush(bench.terminal.colour.error);
    for (const version of versions) {
      if ("refused" in version)
        bench.terminal.error(`${paint("bold", harmless(version.file))}: ${harmless(version.refused)}.\n`);
    }
    const [old, now] = versions.filter((version): version is Version => "text" in version);
    if (old === undefined || now === undefined) return ENDED.misuse;
    const compared = comparedOf(bench, old, now);
    const ending = written(bench, outputOf(bench, compared, options), options.out);
    if (ending !== ENDED.well) return ending;
    return compared.comparison.same ? ENDED.well : ENDED.faults;
  },
};
