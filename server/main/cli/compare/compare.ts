import { finish } from "../../../../grammar/steps.ts";
import { compare as compareChairs } from "../../../compare/compare.ts";
import { sheetToSvg } from "../../../drawing/svg.ts";
import { type Bench, type Command, ENDED, misuse, type Options, written } from "../command.ts";
import { brush, harmless } from "../terminal.ts";
import { gitHandsOver } from "./from-git.ts";
import { asJson, asMarkdown, asText, type Compared } from "./output.ts";
import { sideOf, type Version, versionNamed } from "./sides.ts";

export const compare: Command = {
  name: "compare",
  usage: "compare OLD NEW [--format text|markdown|json|svg] [--all] [-o OUT]",
  summary:
    "say what was changed between two chairs and what follows; each a file, REVISION:FILE of git, or -",
  options: {
    format: { type: "string" },
    all: { type: "boolean" },
    out: { type: "string", short: "o" },
    git: { type: "boolean" },
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

/** Two versions worked out and compared. */
export function comparedOf(bench: Bench, old: Version, now: Version): Compared {
  const [was, is] = [sideOf(bench, old), sideOf(bench, now)];
  return { comparison: compareChairs(was, is), old: was, now: is, names: { old: old.file, new: now.file } };
}

/** The answer in the form asked for. */
export function outputOf(bench: Bench, compared: Compared, { format, all }: Options): string {
  if (format === "json") return `${JSON.stringify(asJson(compared), null, 2)}\n`;
  if (format === "svg") return drawn(bench, compared);
  if (format === "markdown") return asMarkdown(compared, all === true);
  return asText(compared, all === true, brush(bench.terminal.colour.out));
}

/** The new chair with the old one dashed behind it. */
function drawn(bench: Bench, { comparison, old, now }: Compared): string {
  const changed = new Set(
    comparison.anew.filter(({ is }) => is === "changed" || is === "added").map(({ part }) => part),
  );
  const behind = { chair: old.study.chair, changed };
  return sheetToSvg(finish(bench.services.draw(now.study.chair, [], behind)));
}
