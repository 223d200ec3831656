import { basename } from "node:path";
import { workedValue } from "../../chair/values/values.ts";
import type { Dimension } from "../../design/design.ts";
import { PLACES, type Range, rangeSteps } from "../../range/bands.ts";
import { type Choice, choicesOf, sizeOf } from "../../range/choice.ts";
import { MAP_PLACES, mapSteps, type RangeMap } from "../../range/map.ts";
import { letterOf, mapToSvg, rangesToSvg } from "../../range/picture.ts";
import { printBarePlace, printFine, printPlace } from "../../range/words.ts";
import type { Study } from "../../study.ts";
import {
  type Bench,
  type Command,
  eachFile,
  lateFor,
  misuse,
  type Options,
  otherFiles,
  studyOf,
} from "./command.ts";
import { forJson, jsonUnit } from "./json-units.ts";
import { formatOption, outOption } from "./options.ts";
import { finishWatched } from "./progress.ts";
import { quantityIn } from "./quantity.ts";
import type { Input } from "./read-input.ts";
import type { OneRange, RangeMapOutput, RangeOutput } from "./schema-range.ts";
import { type Brush, brush, columns, harmless, wrapped } from "./terminal.ts";
import { written } from "./writing.ts";

type Read = Extract<Input, { text: string }>;

export const range: Command = {
  name: "range",
  usage: "range FILE [--value NAME | --value A,B] [--of VALUES] [--low X --high Y] [--format text|json|svg]",
  summary: "say how far a choice may go before something is found, or map two of them",
  options: {
    value: { type: "string", values: "NAME[,NAME]", does: "the choice to move, or two of them to map" },
    of: { type: "string", values: "VALUE,…", does: "follow these worked-out values along the way" },
    low: { type: "string", values: "FIGURE", does: "the lowest figure to try" },
    high: { type: "string", values: "FIGURE", does: "the highest figure to try" },
    places: { type: "string", values: "COUNT", does: "how many places to try" },
    format: formatOption,
    out: outOption,
  },
  formats: ["text", "json", "svg"],
  takes: { least: 1, most: 1 },
  run(bench, files, options) {
    return eachFile(bench, files, (input) => rangeOf(bench, input, options));
  },
};

/** Most places one value may be tried at, so that a slip of the finger does not run for hours. */
const MOST_PLACES = 1000;
const MOST_MAP_PLACES = 60;

function rangeOf(bench: Bench, input: Read, options: Options): number {
  const of = listed(options.of);
  const late = lateFor(...of);
  const study = studyOf(bench, input, late);
  const all = choicesOf(study.tree, study.design);
  const names = listed(options.value);
  const chosen = names.map((name) => all.find((choice) => choice.name === name));
  const missing = names.find((_, k) => chosen[k] === undefined);
  if (missing !== undefined) return misuse(bench, notAChoice(missing, all));
  if (names.length > 2) return misuse(bench, "--value takes one name, or two for a map.");
  const unknown = of.find((name) => !workedValue(study.chair, name));
  if (unknown !== undefined)
    return misuse(bench, `"${unknown}" is not a value of this chair; "seatwright reckon" lists them.`);
  const places = placesOf(options.places, names.length === 2 ? MOST_MAP_PLACES : MOST_PLACES);
  if (typeof places === "string") return misuse(bench, places);
  const choices =
    names.length > 0
      ? chosen.flatMap((each) => each ?? [])
      : all.filter(({ kind, bounded }) => kind === "let" && bounded);
  if (choices.length === 0)
    return misuse(
      bench,
      `${input.file} has no value with "within"; name a figure with --value, such as ${all[0]?.name ?? "seat-height"}.`,
    );
  const ends = endsOf(bench, input, options, choices);
  if (typeof ends === "string") return misuse(bench, ends);
  const title = study.design.title?.value ?? basename(input.file);
  const subject = { text: input.text, address: input.address, files: otherFiles, ...late };
  const [across, up] = choices;
  if (names.length === 2 && across && up) {
    if (across.name === up.name) return misuse(bench, "--value needs two different names for a map.");
    const count = places ?? MAP_PLACES;
    const map = finishWatched(
      mapSteps({ subject, across: { choice: across }, up: { choice: up }, places: count }),
      "places tried",
      undefined,
    );
    return written(bench, mapText(title, map, options, bench), options.out);
  }
  const ranges = choices.map((choice) =>
    finishWatched(rangeSteps({ subject, choice, places: places ?? PLACES, of, ...ends }), choice.name),
  );
  return written(bench, rangeText(title, ranges, study, options, bench), options.out);
}

const listed = (option: Options[string]): string[] =>
  typeof option === "string"
    ? option
        .split(",")
        .map((each) => each.trim())
        .filter(Boolean)
    : [];

function notAChoice(name: string, all: readonly Choice[]): string {
  const part = name.split(".")[0] ?? "";
  const near = all.filter((each) => each.name.split(".").includes(part) || each.name.includes(name));
  const offered = (near.length > 0 ? near : all).slice(0, 8).map((each) => each.name);
  return `"${name}" is not a figure of this file that stands by itself; there are ${offered.join(", ")}${all.length > offered.length ? ", …" : ""}.`;
}

function placesOf(option: Options[string], most: number): number | string | undefined {
  if (typeof option !== "string") return undefined;
  const count = Number(option);
  return Number.isInteger(count) && count >= 2 && count <= most
    ? count
    : `"--places ${option}" is not a whole number from 2 to ${most}.`;
}

/** `--low` and `--high` in the choice's unit, or why they cannot be used. */
function endsOf(
  bench: Bench,
  input: Read,
  options: Options,
  choices: readonly Choice[],
): { low?: number; high?: number } | string {
  const ends: { low?: number; high?: number } = {};
  const [choice] = choices;
  for (const end of ["low", "high"] as const) {
    const written = options[end];
    if (typeof written !== "string") continue;
    if (choices.length !== 1 || !choice) return `--${end} goes with one --value.`;
    const quantity = quantityIn(bench, input, written);
    const fits = quantity && (quantity.dimension === "number" || unitFits(quantity.dimension, choice.unit));
    if (!quantity || !fits)
      return `"--${end} ${written}" is not a figure for ${choice.name}, which is ${printPlace(choice, choice.now)}.`;
    ends[end] = quantity.dimension === "number" ? quantity.number : quantity.number / sizeOf(choice.unit);
  }
  const low = ends.low ?? choice?.low ?? 0;
  const high = ends.high ?? choice?.high ?? 0;
  if (choices.length === 1 && !(high > low)) return `--low (${low}) has to be less than --high (${high}).`;
  return ends;
}

const unitFits = (dimension: string, unit: Choice["unit"]): boolean =>
  unit === "deg" ? dimension === "angle" : unit !== "" && dimension === "length";

function rangeText(
  title: string,
  ranges: readonly Range[],
  { design, chair }: Study,
  options: Options,
  bench: Bench,
): string {
  const dimensionOf = (name: string) => workedValue(chair, name)?.dimension ?? "number";
  if (options.format === "json") {
    const outputs = ranges.map((each) => outputOf(each, dimensionOf));
    const [only] = outputs;
    const output: RangeOutput =
      typeof options.value === "string" && only ? only : { chair: title, ranges: outputs };
    return `${JSON.stringify(output, null, 2)}\n`;
  }
  const print = (name: string, number: number) => printFine(number, dimensionOf(name), design.units);
  if (options.format === "svg") return rangesToSvg(title, ranges, print);
  const paint = brush(bench.terminal.colour.out && typeof options.out !== "string");
  return `${[paint("bold", harmless(title)), ...ranges.flatMap((each) => ["", ...linesOf(each, paint, print)])].join("\n")}\n`;
}

function linesOf(
  { choice, low, high, tried, free, bands, values }: Range,
  paint: Brush,
  print: (name: string, number: number) => string,
): string[] {
  const stretch = (from: number, to: number) =>
    `${printBarePlace(choice, from)} to ${printPlace(choice, to)}`;
  const lines = [
    `${paint("bold", choice.name)}  ${stretch(low, high)}, now ${printPlace(choice, choice.now)}`,
  ];
  const rows: string[][] = [];
  for (const [from, to] of free) rows.push(["free", stretch(from, to)]);
  if (free.length === 0) rows.push(["free", "nowhere in this range"]);
  lines.push(columns(rows, "  "));
  for (const { severity, code, subject, from, to, message } of bands) {
    lines.push(
      `  ${paint(severity === "error" ? "red" : "yellow", severity)} ${stretch(from, to)}: ${code}${subject ? ` of ${harmless(subject)}` : ""}`,
    );
    lines.push(wrapped(harmless(message), "    "));
  }
  if (values.length > 0) {
    const place = (k: number) => printPlace(choice, low + ((high - low) * k) / Math.max(1, tried - 1));
    const cell = (name: string, number: number | undefined) =>
      number === undefined ? "-" : print(name, number);
    const table = [[choice.name, ...values.map(({ name }) => name)]];
    for (let k = 0; k < tried; k++)
      table.push([place(k), ...values.map(({ name, at }) => cell(name, at[k]))]);
    lines.push(columns(table, "  "));
  }
  lines.push(`  ${tried} places tried; something narrower than the gap between two of them can be missed.`);
  return lines;
}

function outputOf(
  { choice, low, high, tried, free, bands, values }: Range,
  dimensionOf: (name: string) => Dimension,
): OneRange {
  return {
    name: choice.name,
    unit: choice.unit || "1",
    low,
    high,
    now: choice.now,
    step: choice.step,
    tried,
    free,
    bands: bands.map(({ code, subject, severity, from, to, message }) => ({
      code,
      subject,
      severity,
      from,
      to,
      message,
    })),
    values: values.map(({ name, at }) => ({
      name,
      unit: jsonUnit(dimensionOf(name)),
      at: at.map((number) =>
        number === undefined || !Number.isFinite(number) ? null : forJson(number, dimensionOf(name)),
      ),
    })),
  };
}

function mapText(title: string, map: RangeMap, options: Options, bench: Bench): string {
  const { across, up, findings, rows } = map;
  if (options.format === "svg") return mapToSvg(title, map);
  if (options.format === "json") {
    const axis = ({ choice, low, high, places }: RangeMap["across"]): RangeMapOutput["up"] => ({
      name: choice.name,
      unit: choice.unit || "1",
      low,
      high,
      now: choice.now,
      step: choice.step,
      places,
    });
    const json: RangeMapOutput = {
      chair: title,
      across: axis(across),
      up: axis(up),
      findings: findings.map(({ code, subject, severity, message }) => ({
        code,
        subject,
        severity,
        message,
      })),
      rows,
    };
    return `${JSON.stringify(json, null, 2)}\n`;
  }
  const paint = brush(bench.terminal.colour.out && typeof options.out !== "string");
  const letters = (here: readonly number[]) => here.map(letterOf).join("") || ".";
  const table = [
    [
      `${up.choice.name} \\ ${across.choice.name}`,
      ...across.places.map((place) => printBarePlace(across.choice, place)),
    ],
    ...up.places.map((place, j) => [printPlace(up.choice, place), ...(rows[j] ?? []).map(letters)]).reverse(),
  ];
  const legend = findings.map(({ severity, code, subject }, k) => [
    letterOf(k),
    severity,
    `${code}${subject ? ` of ${harmless(subject)}` : ""}`,
  ]);
  return `${[paint("bold", harmless(title)), "", columns(table, "  "), "", legend.length > 0 ? columns(legend, "  ") : "  Nothing is found anywhere on it.", "  A point: nothing is found there."].join("\n")}\n`;
}
