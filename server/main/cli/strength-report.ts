/**
 * What `strength` prints: load cases, joints and members by how hard they work, how the wood moves.
 */
import type { LengthUnit } from "../../design/design.ts";
import { inUnitsOf } from "../../design/prose-units.ts";
import { printBareLength, printLength } from "../../design/units.ts";
import { caution } from "../../floor/editions.ts";
import type { CaseResult } from "../../strength/case-result.ts";
import { endingOf } from "../../strength/ending.ts";
import { type Lasting, MOST_SITTINGS } from "../../strength/lasting.ts";
import loads from "../../strength/loads.json" with { type: "json" };
import type { Ruling, Strength } from "../../strength/strength.ts";
import wood from "../../strength/wood.json" with { type: "json" };
import type { WoodMoves } from "../../timber/movement.ts";
import { type Brush, columns, harmless, wrapped } from "./terminal.ts";

/** The whole report. */
export function report(
  title: string,
  { found, moves }: { found: Strength; moves: WoodMoves },
  unit: LengthUnit,
  paint: Brush,
): string {
  const { cases, joints, members, margin, unknown, level } = found;
  const middle = cases.filter(({ stiffness }) => stiffness === "middle");
  const own = cases.some(({ load }) => load.own);
  const lines = [
    paint("bold", harmless(title)),
    "",
    paint(
      "bold",
      `Loaded as in ${loads.levels[level].edition}${own ? " and by its own loads" : ""}; load over what it bears`,
    ),
    columns(
      middle.map((one) => [harmless(one.load.title), ...outcome(one, unit)]),
      "  ",
    ),
    "",
    paint("bold", "Joints"),
    table(joints),
    "",
    paint("bold", "Members"),
    table(members),
    "",
  ];
  if (margin !== undefined)
    lines.push(`The weakest bears ${margin.toFixed(2)} times what is asked of it.`, "");
  lines.push(...lasts(found.lasting, unit));
  if (unknown.length > 0)
    lines.push(wrapped(`No strength is known for the timber of ${unknown.join(", ")}.`), "");
  lines.push(paint("bold", movesTitle(moves)), movesTable(moves, unit), "");
  const memory = middle.some(({ load }) => load.fromMemory);
  lines.push(
    wrapped(
      `The span is between joints taken limp and stiff: ${inUnitsOf(wood.joints.stiffnessSource, unit)}${memory ? " Some loads were not seen in print but are from memory: compare the edition in force." : ""}`,
    ),
    "",
    wrapped(`A standard's test is made by a competent laboratory. ${caution}`),
    "",
  );
  return lines.join("\n");
}

function outcome(one: CaseResult, unit: LengthUnit): string[] {
  const { joints, members, share } = one;
  const ending = endingOf(one, unit);
  if (ending !== undefined) return ["", ending];
  const [name, demand] = [...joints, ...members].reduce(
    (a, b) => (b[1] > a[1] ? b : a),
    ["nothing known", 0],
  );
  const pushed = share < 1 ? `, at ${Math.round(share * 100)}% of the push: more would tip it over` : "";
  return [demand.toFixed(2), `${name}${pushed}`];
}

function table(rulings: readonly Ruling[]): string {
  const shown = rulings.slice(0, 12);
  const rows = shown.map(({ name, demand, low, high, ruledBy }) => [
    name,
    demand.toFixed(2),
    `${low.toFixed(2)} to ${high.toFixed(2)}`,
    ruledBy,
    low < 1 && high >= 1 ? "overworked or not, by the joints' stiffness" : demand >= 1 ? "overworked" : "",
  ]);
  const more = rulings.length - shown.length;
  return `${rows.length > 0 ? columns(rows, "  ") : "  Nothing could be judged."}${more > 0 ? `\n  and ${more} that work less` : ""}`;
}

/** Sittings a day that years are told by. */
const A_DAY = 12;

/** How long it may last, as a wide range with its grounds. */
function lasts(lasting: Lasting | undefined, unit: LengthUnit): string[] {
  if (!lasting) return [];
  const { name, fewest, most, pushed } = lasting;
  const hard = `as hard as the standard's${pushed < 1 ? `, its back pushed at ${Math.round(pushed * 100)}% since more would tip it over` : ""}`;
  const grounds = `That is by ${inUnitsOf(wood.repeated.source.replace(/\.$/, ""), unit)}: a range with its grounds, no promise.`;
  if (fewest >= MOST_SITTINGS)
    return [
      wrapped(
        `Sat down on again and again, ${name} would give out first, after more than ten million sittings ${hard}, more than anybody has tested. ${grounds}`,
      ),
      "",
    ];
  const often = (times: number) =>
    times >= MOST_SITTINGS ? "more than ten million" : Number(times.toPrecision(2)).toLocaleString("en");
  const years = (times: number) =>
    times >= MOST_SITTINGS
      ? "more than anybody has tested"
      : `${Number((times / A_DAY / 365).toPrecision(1))} years`;
  return [
    wrapped(
      `Sat down on again and again, ${name} gives out first, after ${often(fewest)} to ${often(most)} sittings ${hard}; ${A_DAY} a day are ${years(fewest)} to ${years(most)}. ${grounds}`,
    ),
    "",
  ];
}

const percent = (share: number): string => `${Number((share * 100).toFixed(1))} %`;

/** Between what the wood lives, and what moisture that gives it. */
function movesTitle({ climate: { given, dry, damp, assumed } }: WoodMoves): string {
  const air = `${percent(given.low)} to ${percent(given.high)} ${given.of === "humidity" ? "humidity" : "wood moisture"}`;
  const moisture = given.of === "humidity" ? `, so ${percent(dry)} to ${percent(damp)} in the wood` : "";
  return `Across the grain, from ${air}${assumed ? " (taken for granted)" : ""}${moisture}`;
}

/** Most rows of each table. */
const ROWS = 8;

function movesTable({ parts, joints, panel }: WoodMoves, unit: LengthUnit): string {
  const change = (mm: number) => `${mm < 0 ? "-" : "+"}${printBareLength(Math.abs(mm), unit)}`;
  const length = (mm: number) => printLength(mm, unit);
  const twins = new Set<string>();
  const fresh = (key: string) => !twins.has(key) && Boolean(twins.add(key));
  const rows = parts
    .map(({ part, width, toDry, toDamp, sawn, made }) => [
      part.replace(/\.(left|right)$/, ""),
      `${length(width)} wide`,
      `${change(toDry)} to ${change(toDamp)}`,
      `${sawn} sawn, made at ${percent(made)}`,
    ])
    .filter((row) => fresh(row.join()))
    .slice(0, ROWS);
  const cut = joints
    .map(({ joint, across, shoulderGap, tightness }) => [
      joint.name.replace(/\.(left|right)\b/g, ""),
      `${length(across)} across`,
      length(shoulderGap) === length(0) ? "shoulder stays closed" : `shoulder open ${length(shoulderGap)}`,
      [tightness.dry, tightness.damp].every((each) => change(each) === change(0))
        ? "as tight as made"
        : `tighter by ${change(tightness.dry)} to ${change(tightness.damp)}`,
    ])
    .filter((row) => fresh(row.join()))
    .sort((a, b) => Number.parseFloat(b[1] ?? "") - Number.parseFloat(a[1] ?? ""))
    .slice(0, ROWS);
  const seat = panel
    ? [
        `  The seat has ${length(panel.room)} of room and swells ${length(panel.swells)}: ${length(panel.clearance.damp)} left at each edge when damp, ${length(panel.clearance.dry)} when dry.`,
      ]
    : [];
  const shown = [
    ...(rows.length > 0 ? [columns(rows, "  ")] : []),
    ...(cut.length > 0 ? [columns(cut, "  ")] : []),
  ];
  return [...(shown.length > 0 ? shown : ["  No movement is known for its timber."]), ...seat].join("\n");
}
