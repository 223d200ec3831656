/**
 * How hard a part or joint works and how its wood moves, in a line each: only once it has been worked out.
 */

import { leftName } from "../../design/identity.ts";
import { printLength, printMargin } from "../../design/units.ts";
import { endingOf } from "../../strength/ending.ts";
import type { Ruling } from "../../strength/strength.ts";
import type { Study } from "../../study.ts";

/** The ruling of a part or joint; a right-hand twin has the left one's where it has none of its own. */
export function rulingOf(study: Study, of: "joints" | "members", name: string): Ruling | undefined {
  const rulings = study.late?.strength[of] ?? [];
  return rulings.find((each) => each.name === name) ?? rulings.find((each) => each.name === leftName(name));
}

/** `Works at 0.62: sitting down again and again (0.55 to 0.71 by how stiff joints are)`. */
export function demandLine(ruling: Ruling | undefined): string[] {
  if (!ruling) return [];
  const { demand, title, low, high } = ruling;
  const span =
    printMargin(low) === printMargin(high)
      ? ""
      : ` (${printMargin(low)} to ${printMargin(high)} by how stiff joints are)`;
  return [`Works at ${printMargin(demand)}${demand > 1 ? ", more than it bears" : ""}: ${title}${span}`];
}

/** What a load of the file's own asks most of, or why the chair does not stand it. */
export function loadLine({ late, design }: Study, name: string): string[] {
  const one = late?.strength.cases.find(
    ({ load, stiffness }) => load.own && load.name === name && stiffness === "middle",
  );
  if (!one) return [];
  const ending = endingOf(one, design.units);
  if (ending !== undefined) return [ending];
  const pushed =
    one.share < 1 ? [`At ${Math.round(one.share * 100)}% of its level push: more would tip it over`] : [];
  const [hardest] = [...one.joints, ...one.members].sort((a, b) => b[1] - a[1]);
  return hardest ? [`Works ${hardest[0]} hardest, at ${printMargin(hardest[1])}`, ...pushed] : pushed;
}

/** How a part's width moves with the seasons, where that is as much as prints. */
export function movesLine({ late, design }: Study, part: string): string[] {
  const moves = late?.wood.parts.find((each) => each.part === part);
  if (!late || !moves) return [];
  const change = (mm: number) => `${mm < 0 ? "−" : "+"}${printLength(Math.abs(mm), design.units)}`;
  const { given, assumed } = late.wood.climate;
  const percent = (share: number) => `${Number((share * 100).toFixed(1))} %`;
  const air = `${percent(given.low)} to ${percent(given.high)} ${given.of === "humidity" ? "humidity" : "moisture"}${assumed ? ", taken for granted" : ""}`;
  return [`Its width moves ${change(moves.toDry)} to ${change(moves.toDamp)} (${air})`];
}

/** What the climate does to a joint. */
export function jointMovesLine({ late, design }: Study, joint: string): string[] {
  const moves = late?.wood.joints.find((each) => each.joint.name === joint);
  if (!moves) return [];
  const length = (mm: number) => printLength(mm, design.units);
  return [
    `Across the grain its ${length(moves.wide)} move ${length(moves.across)}; the shoulder may open ${length(moves.shoulderGap)} when dry`,
  ];
}
