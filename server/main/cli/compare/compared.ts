import { finish } from "../../../../grammar/steps.ts";
import { compare, type Side } from "../../../compare/compare.ts";
import { sheetToSvg } from "../../../drawing/svg.ts";
import { deepenSteps } from "../../../study.ts";
import type { Bench, Options } from "../command.ts";
import { brush } from "../terminal.ts";
import { asJson, asMarkdown, asText, type Compared } from "./output.ts";
import { sideOf, type Version } from "./sides.ts";

/** Two versions worked out and compared. */
export function comparedOf(bench: Bench, old: Version, now: Version): Compared {
  const [was, is] = bothLate(sideOf(bench, old), sideOf(bench, now));
  return { comparison: compare(was, is), old: was, now: is, names: { old: old.file, new: now.file } };
}

/** What one side requires late is worked out of the other too. */
function bothLate(...sides: [Side, Side]): [Side, Side] {
  const work = sides.map(({ study }) => study.lateWork).find(Boolean);
  if (!work) return sides;
  const deepened = (side: Side): Side =>
    side.study.late ? side : { ...side, study: finish(deepenSteps(side.study, work)) };
  return [deepened(sides[0]), deepened(sides[1])];
}

/** The answer in the form asked for. */
export function outputOf(bench: Bench, compared: Compared, { format, all }: Options): string {
  if (format === "json") {
    const { comparison, now } = compared;
    const { found } = comparison;
    const standing = [...found.new, ...found.changed.map((each) => each.new)];
    finish(bench.services.mend(now.study, now.files, standing));
  }
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
