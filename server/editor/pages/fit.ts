/**
 * Whom a chair suits, in words.
 */
import type { Chair } from "../../chair/chair.ts";
import type { LengthUnit } from "../../design/design.ts";
import { printLength } from "../../design/units.ts";
import { bodySizeSource } from "../../sitter/body-sizes.ts";
import { schoolMarkSource } from "../../sitter/school-marks.ts";
import { type FitFound, fitOf } from "./fit-found.ts";
import type { Report, Section } from "./report.ts";

/** The report of a chair, in the file's units. */
export function fitReport(title: string, chair: Chair): Report {
  const found = fitOf(title, chair);
  const unit = chair.design.units;
  if (Object.keys(found.sizes).length === 0)
    return {
      title,
      sections: [{ heading: "What meets the sitter", items: ["There is no seat to sit on yet."] }],
      ending: [],
    };
  return {
    title,
    sections: [
      met(found, unit),
      ...found.groups.map(groupSection),
      ...(found.groups.length > 0 ? [assumed(found, unit)] : []),
      ...(found.sitter.length > 0 ? [sitter(found, unit)] : []),
      ...schoolMarks(found, unit),
    ],
    ending: [found.caution],
  };
}

const sizeNames: Record<string, string> = {
  seatHeight: "seat height with a sitter on it",
  seatDepth: "seat depth to where the back is leant on",
  seatWidth: "room for the hips",
  armHeight: "arms above the seat",
  backTop: "top of the back above the seat",
};

function met({ sizes, leans, loins }: FitFound, unit: LengthUnit): Section {
  const rows = Object.entries(sizes).map(([name, size]) => [
    sizeNames[name] ?? name,
    printLength(size, unit),
  ]);
  if (leans.seat !== undefined) rows.push(["seat, falling to the back", `${leans.seat}°`]);
  if (leans.back !== undefined) rows.push(["back, leaning from square to the seat", `${leans.back}°`]);
  if (loins !== null)
    rows.push(["the small of the back", loins ? "the back meets it" : "nothing of the back is there"]);
  return { heading: "What meets the sitter", items: [rows] };
}

const percent = (share: number) => `${Math.round(share * 100)}%`;

function groupSection({ group, share, checks, excludesMost }: FitFound["groups"][number]): Section {
  const rows = checks.map(({ meaning, share: own }) => [percent(own).padStart(4), meaning]);
  const most =
    excludesMost && (checks.find(({ check }) => check === excludesMost.check)?.meaning ?? excludesMost.check);
  return {
    heading: `Of ${group} it suits ${percent(share)}`,
    items: [
      rows,
      ...(excludesMost
        ? [
            `Most are excluded because it must be that ${most}; without that it would suit ${percent(excludesMost.without)}.`,
          ]
        : []),
    ],
  };
}

function assumed({ groups, together, assumed: some }: FitFound, unit: LengthUnit): Section {
  return {
    heading: "Taken for granted",
    items: [
      some.map(({ name, mm, seen, shareWithout }) => [
        name,
        mm.map((length) => printLength(length, unit)).join(" and "),
        `without it ${percent(shareWithout)}`,
        seen,
      ]),
      ...(groups.length > 1 && together !== null
        ? [`Of women and men, half and half: ${percent(together)}.`]
        : []),
      `Body sizes: ${bodySizeSource}`,
    ],
  };
}

function sitter({ sitter: some }: FitFound, unit: LengthUnit): Section {
  const mm = (length: number) => printLength(length, unit);
  const span = (low?: number, high?: number) =>
    [low !== undefined && `at least ${mm(low)}`, high !== undefined && `at most ${mm(high)}`]
      .filter(Boolean)
      .join(", ");
  return {
    heading: "Its sitter",
    items: [
      some.map((one) => [
        one.fits ? "yes" : "NO",
        one.meaning,
        `has ${mm(one.own)}`,
        `needs ${span(one.low, one.high)}`,
      ]),
    ],
  };
}

function schoolMarks({ schoolMarks: marks, sizes }: FitFound, unit: LengthUnit): Section[] {
  const seat = sizes.seatHeight;
  if (marks.length === 0 || seat === undefined) return [];
  const mm = (length: number) => printLength(length, unit);
  const suits = ([low, high]: number[]) =>
    seat > high! ? "this seat is too high" : seat < low! - 40 ? "this seat is low" : "this seat suits";
  const rows = marks.map(({ mark, seatHeight, popliteal }) => [
    `mark ${mark}`,
    `seat ${mm(seatHeight)}`,
    `for ${mm(popliteal[0]!)} to ${mm(popliteal[1]!)} behind the knee`,
    suits(popliteal),
  ]);
  return [{ heading: `Size marks of ${schoolMarkSource}`, items: [rows] }];
}
