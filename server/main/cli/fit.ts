import { basename } from "node:path";
import type { Chair } from "../../chair/chair.ts";
import type { LengthUnit } from "../../design/design.ts";
import { printLength } from "../../design/units.ts";
import { caution } from "../../floor/editions.ts";
import { bodySizeSource } from "../../sitter/body-sizes.ts";
import { assumedOf, fitAdults, fitNamed, type GroupFit } from "../../sitter/fit.ts";
import { loinsOf } from "../../sitter/loins.ts";
import { marksForAges, type SchoolMark, schoolMark, schoolMarkSource } from "../../sitter/school-marks.ts";
import { sizesOf } from "../../sitter/sizes.ts";
import { type Command, eachFile, studyOf, toldOfErrors } from "./command.ts";
import { formatOption } from "./options.ts";
import type { FitOutput } from "./schema.ts";
import { type Brush, brush, columns, harmless, wrapped } from "./terminal.ts";

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
      const found = fitOf(title, chair);
      if (options.format === "json") terminal.out(`${JSON.stringify(found, null, 2)}\n`);
      else terminal.out(report(found, design.units, brush(terminal.colour.out)));
      return toldOfErrors(bench, input.file, problems, "parts may be missing");
    });
  },
};

/** Whom a chair suits, as the JSON output has it: mm, and shares from 0 to 1. */
function fitOf(title: string, chair: Chair): FitOutput {
  const sitter = chair.design.sitter.value;
  const sizes = sizesOf(chair);
  const round = (value: number, places = 1) => Number(value.toFixed(places));
  const output: FitOutput = {
    chair: title,
    sizes: Object.fromEntries(
      Object.entries(sizes).flatMap(([name, size]) =>
        typeof size === "number" ? [[name, round(size)]] : [],
      ),
    ),
    leans: leansOf(chair),
    loins: loinsOf(chair)?.meets ?? null,
    groups: [],
    together: null,
    assumed: [],
    schoolMarks: [],
    sitter: [],
    caution: `Sit in a prototype before the set is built. ${caution}`,
  };
  if (sitter.is === "adult") {
    const { groups, share } = fitAdults(sizes, sitter.group);
    output.groups = groups.map(groupOf);
    output.together = round(share, 4);
    output.assumed = assumedOf(sizes, chair.design.seat?.sag?.value ?? 0, sitter.group).map((each) => ({
      ...each,
      shareWithout: round(each.shareWithout, 4),
    }));
    output.caution = `Shares are of the people measured, soldiers, with the shoes and clothing assumed; the public differs. ${output.caution}`;
  } else if (sitter.is === "named") {
    output.sitter = fitNamed(sizes, sitter).map(({ check, own: value, low, high, fits }) => ({
      check: check.name,
      meaning: check.meaning,
      own: round(value),
      ...(low !== undefined && { low: round(low) }),
      ...(high !== undefined && { high: round(high) }),
      fits,
    }));
  } else {
    const marks = sitter.is === "child" ? marksForAges(sitter.from, sitter.to) : [schoolMark(sitter.mark)];
    output.schoolMarks = marks
      .filter((mark): mark is SchoolMark => mark !== undefined)
      .map(({ mark, seatHeight, popliteal, stature }) => ({ mark, seatHeight, popliteal, stature }));
  }
  return output;
}

/** What of a chair leans to its sitter, degrees. */
function leansOf({ values }: Chair): FitOutput["leans"] {
  const degrees = (name: string) => {
    const worked = values.get(name);
    return worked && Number(((worked.number * 180) / Math.PI).toFixed(1));
  };
  const [seat, back] = [degrees("seat.slope"), degrees("backrest.rake")];
  return { ...(seat !== undefined && { seat }), ...(back !== undefined && { back }) };
}

function groupOf({ group, share, each, excludesMost }: GroupFit): FitOutput["groups"][number] {
  const round = (value: number) => Number(value.toFixed(4));
  return {
    group,
    share: round(share),
    checks: each.map(({ check, share: alone }) => ({
      check: check.name,
      meaning: check.meaning,
      share: round(alone),
    })),
    ...(excludesMost && {
      excludesMost: { check: excludesMost.check.name, without: round(excludesMost.shareWithout) },
    }),
  };
}

const sizeNames: Record<string, string> = {
  seatHeight: "seat height with a sitter on it",
  seatDepth: "seat depth to where the back is leant on",
  seatWidth: "room for the hips",
  armHeight: "arms above the seat",
  backTop: "top of the back above the seat",
};

function report(found: FitOutput, unit: LengthUnit, paint: Brush): string {
  const mm = (number: number) => printLength(number, unit);
  const percent = (share: number) => `${Math.round(share * 100)}%`;
  const lines = [paint("bold", harmless(found.chair)), "", paint("bold", "What meets the sitter")];
  const sizes = Object.entries(found.sizes);
  if (sizes.length === 0) return `${lines[0]}\n\n  There is no seat to sit on yet.\n`;
  const rows = sizes.map(([name, size]) => [sizeNames[name] ?? name, mm(size)]);
  const { seat: slope, back: lean } = found.leans;
  if (slope !== undefined) rows.push(["seat, falling to the back", `${slope}°`]);
  if (lean !== undefined) rows.push(["back, leaning from square to the seat", `${lean}°`]);
  if (found.loins !== null)
    rows.push(["the small of the back", found.loins ? "the back meets it" : "nothing of the back is there"]);
  lines.push(columns(rows, "  "));
  for (const group of found.groups) {
    lines.push("", paint("bold", `Of ${group.group} it suits ${percent(group.share)}`));
    lines.push(
      columns(
        group.checks.map(({ meaning, share }) => [percent(share).padStart(4), meaning]),
        "  ",
      ),
    );
    const most = group.excludesMost;
    if (most) {
      const meaning = group.checks.find(({ check }) => check === most.check)?.meaning ?? most.check;
      lines.push(
        wrapped(
          `Most are excluded because it must be that ${meaning}; without that it would suit ${percent(most.without)}.`,
          "  ",
        ),
      );
    }
  }
  if (found.groups.length > 0) {
    if (found.groups.length > 1 && found.together !== null)
      lines.push("", `Of women and men, half and half: ${percent(found.together)}.`);
    lines.push("", paint("bold", "Taken for granted"));
    lines.push(
      columns(
        found.assumed.map(({ name, mm: lengths, seen, shareWithout }) => [
          name,
          lengths.map(mm).join(" and "),
          `without it ${percent(shareWithout)}`,
          seen,
        ]),
        "  ",
      ),
    );
    lines.push("", wrapped(`Body sizes: ${bodySizeSource}`));
  }
  if (found.sitter.length > 0) {
    lines.push("", paint("bold", "Its sitter"));
    const span = (low?: number, high?: number) =>
      [low !== undefined && `at least ${mm(low)}`, high !== undefined && `at most ${mm(high)}`]
        .filter(Boolean)
        .join(", ");
    lines.push(
      columns(
        found.sitter.map((one) => [
          one.fits ? "yes" : "NO",
          one.meaning,
          `has ${mm(one.own)}`,
          `needs ${span(one.low, one.high)}`,
        ]),
        "  ",
      ),
    );
  }
  const seat = found.sizes.seatHeight;
  if (found.schoolMarks.length > 0 && seat !== undefined) {
    lines.push("", paint("bold", `Size marks of ${schoolMarkSource}`));
    lines.push(
      columns(
        found.schoolMarks.map(({ mark, seatHeight, popliteal }) => [
          `mark ${mark}`,
          `seat ${mm(seatHeight)}`,
          `for ${mm(popliteal[0]!)} to ${mm(popliteal[1]!)} behind the knee`,
          seat > popliteal[1]!
            ? "this seat is too high"
            : seat < popliteal[0]! - 40
              ? "this seat is low"
              : "this seat suits",
        ]),
        "  ",
      ),
    );
  }
  lines.push("", wrapped(found.caution), "");
  return lines.join("\n");
}
