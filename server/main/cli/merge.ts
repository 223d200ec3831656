/**
 * `seatwright merge`: three versions of a chair put together by their facts, and the chair that comes of it judged.
 */

import { writeFileSync } from "node:fs";
import type { Problem } from "../../../grammar/problem.ts";
import { finish } from "../../../grammar/steps.ts";
import { compare } from "../../compare/compare.ts";
import { type Merged, mergeChairs } from "../../compare/merge/merge.ts";
import { mergedByLines } from "../git/merge-lines.ts";
import { type Bench, type Command, ENDED, misuse, otherFiles } from "./command.ts";
import { outOption } from "./options.ts";
import { addressOf, type Input, readInput } from "./read-input.ts";
import { harmless } from "./terminal.ts";
import { stored } from "./writing.ts";

/** How a merge ends: clean, with conflicts, or clean and with findings that neither side had. */
const MERGED = { clean: 0, conflicts: 1, unsound: 3 } as const;
/** How long marks are where nobody says otherwise, as git has it. */
const MARKS = 7;

export const merge: Command = {
  name: "merge",
  usage: "merge BASE OURS THEIRS [-o FILE]",
  summary:
    "put two changes of one chair together by their facts, into OURS; ends with 1 on conflicts, 3 when only together they bring findings",
  options: {
    git: { type: "boolean", does: "as git calls it, with its own arguments after the three files" },
    out: outOption,
  },
  takes: { least: 3, most: 8 },
  run(bench, given, { git, out }) {
    const [base, ours, theirs, size, path, ...labels] = given as [string, string, string, ...string[]];
    if (!git && size !== undefined)
      return misuse(bench, '"merge" takes three files: the base, ours and theirs.');
    const inputs = [base, ours, theirs].map(readInput);
    const refused = inputs.find((input) => "refused" in input);
    if (refused && "refused" in refused) return misuse(bench, `${refused.file}: ${refused.refused}.`);
    const [old, mine, other] = inputs.map((input) => (input as Extract<Input, { text: string }>).text) as [
      string,
      string,
      string,
    ];
    const marks = {
      ours: label(labels[1], git ? "ours" : ours),
      theirs: label(labels[2], git ? "theirs" : theirs),
      size: Number(size) > 0 ? Number(size) : MARKS,
    };
    const versions = { base: old, ours: mine, theirs: other };
    const name = path ?? ours;
    const merged = mergeChairs(versions, marks);
    const text = merged?.text ?? mergedByLines(versions, marks);
    if (text === undefined)
      return misuse(bench, `${name}: what does not read whole is merged by git, which cannot be run.`);
    const target = typeof out === "string" ? out : ours;
    const ending = stored(bench, target, () => writeFileSync(target, text));
    if (ending !== ENDED.well) return ending;
    return told(bench, name, merged, versions);
  },
};

/** A label that git fills in; older versions hand on the sign for it. */
const label = (given: string | undefined, otherwise: string): string =>
  given === undefined || given === "" || given.startsWith("%") ? otherwise : given;

function told(
  bench: Bench,
  name: string,
  merged: Merged | undefined,
  versions: Record<"ours" | "theirs", string>,
): number {
  const say = (sentence: string) => bench.terminal.error(`${harmless(`${name}: ${sentence}`)}\n`);
  if (merged === undefined) {
    say("a version does not read whole or is in another unit, so lines were merged; look it through.");
    return MERGED.conflicts;
  }
  if (merged.conflicts > 0) {
    say(
      `${merged.conflicts === 1 ? "1 fact was" : `${merged.conflicts} facts were`} changed by both sides; choose between the marks.`,
    );
    return MERGED.conflicts;
  }
  const fresh = foundOnlyTogether(bench, name, merged.text, versions);
  if (fresh.length === 0) return MERGED.clean;
  say("merged, but each change is sound only without the other:");
  for (const { severity, message, code } of fresh)
    bench.terminal.error(`  ${severity}: ${harmless(message)} [${code}]\n`);
  return MERGED.unsound;
}

/** Errors and warnings of the merged chair that neither side has. */
function foundOnlyTogether(
  bench: Bench,
  name: string,
  text: string,
  { ours, theirs }: Record<"ours" | "theirs", string>,
): Problem[] {
  const address = addressOf(name);
  const side = (of: string) => ({
    study: finish(bench.services.study({ text: of, address, files: otherFiles })),
    files: otherFiles,
  });
  const together = side(text);
  const [mine, other] = [ours, theirs].map((of) => new Set(compare(side(of), together).found.new));
  return together.study.problems.filter(
    (problem) =>
      (problem.severity === "error" || problem.severity === "warning") &&
      mine!.has(problem) &&
      other!.has(problem),
  );
}
