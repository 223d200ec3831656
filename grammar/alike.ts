import type { Problem } from "./problem.ts";
import { fix, replaceFix, say } from "./say.ts";
import { sentence } from "./sentences/sentence.ts";
import type { Part, Statement, Value } from "./tree.ts";

const lengths = new Set(["mm", "cm", "m", "in", "ft"]);

/**
 * `5 to 7deg`, `2 x 2in`: a unit stands on one of two numbers only, and does not reach the other. An error where a bare number
 * can be nothing else; a warning for lengths, which may mean the file's own unit.
 */
export function checkUnits({ parts }: Statement, fileUnit: string, problems: Problem[]): void {
  for (let at = 1; at + 1 < parts.length; at++) {
    const link = parts[at]!;
    if (link.is !== "times" && !(link.is === "word" && (link.text === "to" || link.text === "x"))) continue;
    compare(parts[at - 1]!, parts[at + 1]!, fileUnit, problems);
    compare(parts[at + 1]!, parts[at - 1]!, fileUnit, problems);
  }
}

function compare(bare: Part, given: Part, fileUnit: string, problems: Problem[]): void {
  if (bare.is !== "value" || given.is !== "value" || !isBare(bare.value)) return;
  const unit = unitOf(given.value);
  if (unit === undefined || unit === fileUnit) return;
  const end = { start: bare.end, end: bare.end };
  if (!lengths.has(unit)) {
    problems.push(
      say("unit-spelling", bare, sentence("mixed-units.both"), [
        { ...replaceFix(end, unit, true), title: sentence("fix.write-unit-here-too", { unit }) },
      ]),
    );
    return;
  }
  const add = (wanted: string) =>
    fix(sentence("fix.write-unit-here", { unit: wanted }), [{ ...end, text: wanted }]);
  problems.push(
    say(
      "mixed-units",
      bare,
      sentence("mixed-units", { file: fileUnit, unit }),
      [add(unit), add(fileUnit)],
      "warning",
    ),
  );
}

function isBare(value: Value): boolean {
  return value.is === "number" || (value.is === "negate" && value.of.is === "number");
}

function unitOf(value: Value): string | undefined {
  if (value.is === "negate") return unitOf(value.of);
  return value.is === "quantity" ? value.unit : undefined;
}
