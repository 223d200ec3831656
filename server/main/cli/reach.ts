import { basename } from "node:path";
import { finish } from "../../../grammar/steps.ts";
import { workedValue } from "../../chair/values/values.ts";
import type { LengthUnit } from "../../design/design.ts";
import { goalSteps } from "../../range/ask.ts";
import { type Goal, goalInWords, shortOf } from "../../range/goal.ts";
import { movableChoices, reachSteps, type Way } from "../../range/reach.ts";
import { type Together, togetherSteps } from "../../range/together.ts";
import { printFine, printPlace } from "../../range/words.ts";
import type { Study } from "../../study.ts";
import {
  type Bench,
  type Command,
  ENDED,
  eachFile,
  lateFor,
  misuse,
  type Options,
  otherFiles,
  placed,
  studyOf,
} from "./command.ts";
import { forJson, jsonUnit } from "./json-units.ts";
import { formatOption, outOption } from "./options.ts";
import { finishWatched } from "./progress.ts";
import type { Input } from "./read-input.ts";
import type { ReachAllOutput, ReachOutput } from "./schema-range.ts";
import { brush, harmless, wrapped } from "./terminal.ts";
import { written } from "./writing.ts";

const isFaulty = ({ tree }: Study): boolean => tree.problems.some(({ severity }) => severity === "error");

type Read = Extract<Input, { text: string }>;

export const reach: Command = {
  name: "reach",
  usage: "reach FILE VALUE=FIGURE [--by NAME] | reach FILE --all [--format text|json]",
  summary: "say which single choice, moved how far, gives a figure, or what meets every require",
  options: {
    by: { type: "string", values: "NAME", does: "move only this choice" },
    all: { type: "boolean", does: "find what meets every require at once" },
    format: formatOption,
    out: outOption,
  },
  takes: { least: 1, most: 2 },
  run(bench, [file = "", asked], options) {
    if (options.all === true && asked !== undefined)
      return misuse(bench, "--all meets the file's own requirements; leave the figure out.");
    if (options.all !== true && asked === undefined)
      return misuse(
        bench,
        'name a figure, such as "seat.slope=2deg", or --all for every require of the file.',
      );
    return eachFile(bench, [file], (input) =>
      asked === undefined ? reachAll(bench, input, options) : reachOne(bench, input, asked, options),
    );
  },
};

function reachOne(bench: Bench, input: Read, asked: string, options: Options): number {
  const late = lateFor(asked.split(/[<>=\s]/)[0] ?? "");
  const subject = { text: input.text, address: input.address, files: otherFiles, ...late };
  const goal = finish(goalSteps(subject, asked));
  if ("refused" in goal) return misuse(bench, `${goal.refused}.`);
  const by = typeof options.by === "string" ? options.by : undefined;
  const own = studyOf(bench, input, late);
  if (by !== undefined && movableChoices(own, by).length === 0)
    return misuse(
      bench,
      `"${by}" is not a figure of this file that stands by itself; "seatwright range" lists some.`,
    );
  const ways = finishWatched(
    reachSteps({ subject, study: own, goal, ...(by !== undefined && { by }) }),
    "choices tried",
    movableChoices(own, by).length,
  );
  const title = own.design.title?.value ?? basename(input.file);
  const now = workedValue(own.chair, goal.value)?.number ?? Number.NaN;
  const text =
    options.format === "json"
      ? `${JSON.stringify(outputOf(input, title, goal, now, ways, own.design.units), null, 2)}\n`
      : oneInWords(bench, title, isFaulty(own), goal, now, ways, own.design.units, options);
  const ended = written(bench, text, options.out);
  return ended !== ENDED.well || ways.some(({ met }) => met) ? ended : ENDED.faults;
}

/** Where the file has errors, what is found may be of a chair that is not whole. */
const faultyWords = (faulty: boolean): string[] =>
  faulty
    ? ['The file has errors, so it is worked out as far as it goes; "seatwright check" lists them.']
    : [];

function oneInWords(
  bench: Bench,
  title: string,
  faulty: boolean,
  goal: Goal,
  now: number,
  ways: readonly Way[],
  unit: LengthUnit,
  options: Options,
): string {
  const paint = brush(bench.terminal.colour.out && typeof options.out !== "string");
  const print = (number: number) => printFine(number, goal.dimension, unit);
  const lines = [
    paint("bold", harmless(title)),
    `${goal.value} is ${print(now)}; asked is ${goalInWords(goal, unit)}.`,
    ...faultyWords(faulty),
    "",
  ];
  const met = ways.filter((way) => way.met);
  const near = met.length > 0 ? met : nearest(ways, goal, now, unit);
  if (near.length === 0) lines.push("No single choice of this file moves it.");
  else if (met.length === 0) lines.push("No single choice reaches it within its range. The nearest:");
  for (const way of near) {
    lines.push(
      `  ${paint("bold", way.choice.name)} ${printPlace(way.choice, way.choice.now)} to ${way.written}: ${goal.value} is then ${print(way.got)}`,
    );
    for (const known of way.comes)
      lines.push(
        wrapped(`${known.severity} that comes: ${known.code}: ${harmless(known.message)}`, "      "),
      );
    for (const known of way.goes)
      lines.push(
        wrapped(`goes: ${known.code}${known.subject ? ` of ${harmless(known.subject)}` : ""}`, "      "),
      );
  }
  return `${lines.join("\n")}\n`;
}

/** Where none reaches it: the ways that come nearer to it by more than shows, the nearest first. */
function nearest(ways: readonly Way[], goal: Goal, now: number, unit: LengthUnit): Way[] {
  const away = (figure: number) => Math.abs(shortOf(goal, figure, unit));
  const shown = (figure: number) => printFine(figure, goal.dimension, unit);
  return ways
    .filter(({ got }) => away(got) < away(now) && shown(got) !== shown(now))
    .sort((a, b) => away(a.got) - away(b.got))
    .slice(0, 5);
}

function outputOf(
  input: Read,
  title: string,
  goal: Goal,
  now: number,
  ways: readonly Way[],
  unit: LengthUnit,
): ReachOutput {
  return {
    chair: title,
    value: goal.value,
    asked: goalInWords(goal, unit),
    unit: jsonUnit(goal.dimension),
    now: Number.isFinite(now) ? forJson(now, goal.dimension) : null,
    ways: ways.map(({ choice, to, written, got, met, comes, goes, edits }) => ({
      name: choice.name,
      unit: choice.unit || "1",
      from: choice.now,
      to,
      written,
      got: forJson(got, goal.dimension),
      met,
      comes: comes.map(({ code, subject, severity, message }) => ({ code, subject, severity, message })),
      goes: goes.map(({ code, subject, severity, message }) => ({ code, subject, severity, message })),
      edits: edits.map((edit) => placed(input.text, edit)),
    })),
  };
}

function reachAll(bench: Bench, input: Read, options: Options): number {
  const late = lateFor();
  const study = studyOf(bench, input, late);
  const subject = { text: input.text, address: input.address, files: otherFiles, ...late };
  const together = finishWatched(togetherSteps({ subject, study }), "chairs tried");
  const title = study.design.title?.value ?? basename(input.file);
  const unit = study.design.units;
  const text =
    options.format === "json"
      ? `${JSON.stringify(allOutput(input, title, together, unit), null, 2)}\n`
      : allInWords(bench, title, isFaulty(study), together, unit, options);
  const ended = written(bench, text, options.out);
  return ended !== ENDED.well || together.met ? ended : ENDED.faults;
}

function allInWords(
  bench: Bench,
  title: string,
  faulty: boolean,
  { requirements, met, movable, changes, comes, goes, against }: Together,
  unit: LengthUnit,
  options: Options,
): string {
  const paint = brush(bench.terminal.colour.out && typeof options.out !== "string");
  const lines = [paint("bold", harmless(title)), ...faultyWords(faulty)];
  if (requirements.length === 0) lines.push("It has no require line about one value.");
  else if (met && changes.length === 0) lines.push("Every requirement is met as it is.");
  else if (met) {
    lines.push("Every requirement is met with:");
    for (const { choice, written } of changes)
      lines.push(`  ${paint("bold", choice.name)} ${printPlace(choice, choice.now)} to ${written}`);
  } else {
    lines.push(
      against.length > 1
        ? "These stand against each other: no figures within the ranges were found that meet them together."
        : "No figures within the ranges were found that meet this one.",
    );
    for (const words of againstInWords(requirements, against, unit)) lines.push(`  ${harmless(words)}`);
    if (movable === 0) lines.push("  No value has `within`, so none may move: add it to a let.");
  }
  for (const { goal, was, got, met: kept } of requirements) {
    const print = (number: number | undefined) =>
      number === undefined ? "?" : printFine(number, goal.dimension, unit);
    const moved = was !== got ? `${print(was)}, then ${print(got)}` : print(was);
    lines.push(`  ${kept ? "met" : "not met"}: ${goal.value} ${goalInWords(goal, unit)}: ${moved}`);
  }
  for (const known of comes)
    lines.push(wrapped(`${known.severity} that comes: ${known.code}: ${harmless(known.message)}`, "  "));
  for (const known of goes)
    lines.push(`  goes: ${known.code}${known.subject ? ` of ${harmless(known.subject)}` : ""}`);
  return `${lines.join("\n")}\n`;
}

/** The requirements that stand against each other: `front.left.length at most 430 mm`. */
function againstInWords(
  requirements: Together["requirements"],
  against: Together["against"],
  unit: LengthUnit,
): string[] {
  return against.flatMap((line) => {
    const goal = requirements.find((each) => each.line === line)?.goal;
    return goal ? [`${goal.value} ${goalInWords(goal, unit)}`] : [];
  });
}

function allOutput(
  input: Read,
  title: string,
  { requirements, met, changes, edits, comes, goes, against }: Together,
  unit: LengthUnit,
): ReachAllOutput {
  const plain = (known: Together["comes"][number]) => ({
    code: known.code,
    subject: known.subject,
    severity: known.severity,
    message: known.message,
  });
  return {
    chair: title,
    met,
    requirements: requirements.map(({ goal, was, got, met: kept }) => ({
      value: goal.value,
      asked: goalInWords(goal, unit),
      unit: jsonUnit(goal.dimension),
      was: was === undefined ? null : forJson(was, goal.dimension),
      got: got === undefined ? null : forJson(got, goal.dimension),
      met: kept,
    })),
    changes: changes.map(({ choice, to, written }) => ({
      name: choice.name,
      unit: choice.unit || "1",
      from: choice.now,
      to,
      written,
    })),
    edits: edits.map((edit) => placed(input.text, edit)),
    comes: comes.map(plain),
    goes: goes.map(plain),
    against: againstInWords(requirements, against, unit),
  };
}
