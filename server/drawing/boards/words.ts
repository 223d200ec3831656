/**
 * What is said of a plan of the boards, the same on the terminal, on paper and in the panel.
 */

import { boardFeet } from "../../boards/measure.ts";
import type { Hiding, Plan, PlannedPiece, Stock } from "../../boards/plan.ts";
import { volumeOf } from "../../boards/stock.ts";
import type { LengthUnit } from "../../design/design.ts";
import { printBareLength, printLength, printQuantity, printTimber } from "../../design/units.ts";
import { densityOf } from "../../timber/weight.ts";

/** What a blank becomes, where that is not plain. */
export function kindOf({ is, outline, glued }: Stock["lines"][number]): string {
  if (glued > 0) return "a stave, glued";
  if (is === "turned") return "the square it is turned from";
  if (outline) return "sawn to its outline";
  return is === "curved" ? "curve sawn through its width" : "";
}

/** Volume of some blanks: m³, or board feet where the file has inches. */
export function volumeText(lines: Stock["lines"], unit: LengthUnit): string {
  if (unit !== "in") return printTimber(sum(lines, volumeOf), unit);
  return `${sum(lines, ({ blank, number }) => boardFeet(blank) * number).toFixed(1)} board feet`;
}

/** Volume, mass where the density of every timber is known, and price where boards have one. */
function totals(lines: Stock["lines"], unit: LengthUnit): string {
  const known = lines.every((line) => densityOf(line.timber) !== undefined);
  const mass = sum(lines, (line) => (volumeOf(line) / 1e9) * (densityOf(line.timber) ?? 0));
  const priced = lines.filter(({ price }) => price !== undefined);
  const least = priced.length < lines.length ? "at least " : "";
  return [
    volumeText(lines, unit),
    ...(known ? [printQuantity({ number: mass, dimension: "mass" }, unit)] : []),
    ...(priced.length > 0 ? [`cost ${least}${sum(priced, ({ price }) => price!).toFixed(2)}`] : []),
  ].join(", ");
}

/** The sums of the stock list: of each thickness and timber, then of all. */
export function stockSums({ lines }: Stock, unit: LengthUnit): string[] {
  const keyOf = ({ sawn, timber }: Stock["lines"][number]) => `${sawn ?? ""} ${timber?.species ?? ""}`;
  const each = [...new Set(lines.map(keyOf))].map((key) => {
    const some = lines.filter((line) => keyOf(line) === key);
    const { sawn, timber } = some[0]!;
    const thick = sawn === undefined ? "From no board there is" : `From ${printLength(sawn, unit)}`;
    return `${thick}${timber ? ` ${spaced(timber.species)}` : ""}: ${totals(some, unit)}.`;
  });
  const priced = lines.some(({ price }) => price !== undefined);
  return [
    ...(each.length > 1 ? each : []),
    `In all ${totals(lines, unit)} as blanks${priced ? "; what is wasted around them costs money too" : ""}.`,
  ];
}

const spaced = (species: string): string => species.replaceAll("-", " ");

/** The stock list as a table, a price in it where boards have one. */
export function stockTable({ lines }: Stock, unit: LengthUnit): { headings: string[]; rows: string[][] } {
  const size = ({ thick, wide, long }: { thick: number; wide: number; long: number }) =>
    `${[thick, wide].map((mm) => printBareLength(mm, unit)).join(" × ")} × ${printLength(long, unit)}`;
  const priced = lines.some(({ price }) => price !== undefined);
  const rows = lines.map((line) => [
    line.sawn === undefined ? "no board" : printLength(line.sawn, unit),
    line.name,
    String(line.number),
    line.timber ? spaced(line.timber.species) : "no timber",
    size(line.finished),
    size(line.blank),
    volumeText([line], unit),
    ...(priced ? [line.price === undefined ? "" : line.price.toFixed(2)] : []),
    kindOf(line),
  ]);
  const price = priced ? ["price"] : [];
  return {
    headings: ["sawn", "part", "number", "timber", "finished", "blank", "volume", ...price, ""],
    rows,
  };
}

const sum = <T>(all: readonly T[], of: (one: T) => number): number =>
  all.reduce((total, one) => total + of(one), 0);

/** That a defect stays in a piece, where, and what to look at before it is sawn. */
export function hidingText({ part }: PlannedPiece, hiding: Hiding, unit: LengthUnit): string {
  const { what, x, y, face, deepest, firstEnd } = hiding;
  const mm = (number: number) => printLength(number, unit);
  const where = `the ${what ?? "defect"} at ${mm(x)}, ${mm(y)} from the edge, stays in ${part}`;
  const turn = `turn its ${face === "below" ? "lower" : face} face to it${firstEnd === undefined ? "" : `, its ${firstEnd} towards the board's first end`}`;
  const look =
    deepest === undefined
      ? ""
      : `; first look that it goes no deeper than ${mm(deepest)} into the finished part and does not show on the other side`;
  return `hidden: ${where}: ${turn}${look}`;
}

/** How good the plan is, what is lacking, what it costs, what was allowed for: one sentence each. */
export function planFigures(stock: Stock, plan: Plan, unit: LengthUnit): string[] {
  const mm = (number: number) => printLength(number, unit);
  const share = plan.bound > 0 ? ` (${((plan.used / plan.bound - 1) * 100).toFixed(1)} % over it)` : "";
  const { saw, plane, ends, jointing } = stock.allowances;
  return [
    ...plan.lacking.map(
      ({ part, number }) => `${number} of ${part} ${number === 1 ? "has" : "have"} no room on any board.`,
    ),
    `Used ${printTimber(plan.used, unit)}, offcuts left out; no plan of this kind can use less than ${printTimber(plan.bound, unit)}${share}.`,
    ...(plan.price
      ? [`The boards cost ${plan.price.atLeast ? "at least " : ""}${plan.price.sum.toFixed(2)}.`]
      : []),
    ...(stock.assumed.length > 0
      ? [
          `No board or yard is given for ${stock.assumed.map((each) => each || "timber without a name").join(", ")}: usual sawn thicknesses are taken.`,
        ]
      : []),
    `Allowed for: saw ${mm(saw)}, plane ${mm(plane)} off each face and edge, ends ${mm(ends)}, jointing ${mm(jointing)}.`,
  ];
}
