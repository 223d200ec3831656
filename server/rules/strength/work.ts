/**
 * What the rules of strength have in common: how they tell a demand, and the stretcher that they offer.
 */

import type { Fix } from "../../../grammar/problem.ts";
import { sentence } from "../../../grammar/sentences/sentence.ts";
import type { Chair, Rail } from "../../chair/chair.ts";
import { printBareLength, printMargin } from "../../design/units.ts";
import { caution } from "../../floor/editions.ts";
import type { Ruling } from "../../strength/strength.ts";

/** What leaves a part without the hold that the text gives it. */
const unheld: ReadonlySet<Chair["faults"][number]["is"]> = new Set([
  "end-reaches-nothing",
  "rail-misses-post",
  "not-halved",
  "no-room",
  "not-buildable",
] as const);

/** Whether every part is held as the text says: where one is not, what works too hard only follows from that, and it has its own finding. */
export const isHeldTogether = ({ faults }: Chair): boolean => !faults.some(({ is }) => unheld.has(is));

/** Demands nearer than this are the same: figures are told to a hundredth. */
const SAME = 5e-4;

/** What every explanation of a rule of strength ends with. */
export const strengthCaution = `The figures are means of tests and common practice, and how stiff a joint is nobody has measured at the size of chairs: each case is worked out with limp, middling and stiff joints. A standard's test is made by a competent laboratory. ${caution}`;

/** Whether something works harder than it may, and whether that depends on how stiff the joints are. */
export function overworked(
  { demand, low, high }: Ruling,
  most: number,
): { is: false } | { is: true; unsure: boolean } {
  if (high <= most + SAME) return { is: false };
  return { is: true, unsure: demand <= most + SAME || low <= most + SAME };
}

/** What the stiffness of the joints makes of a demand: a sentence after the first, or nothing where it changes no verdict. */
export const spanOf = ({ low, high }: Ruling, unsure: boolean): string =>
  unsure ? sentence("overworked.span", { low: printMargin(low), high: printMargin(high) }) : "";

/** Share of the seat rail's height at which a stretcher is offered, and its size beside the rail's (common practice). */
const STRETCHER = { up: 0.42, wide: 0.6, least: 30 };

/** A stretcher below a rail that joins two posts, where there is none yet; made as a copy of the rail, lower and narrower. */
export function stretcherBelow(chair: Chair, text: string, rail: Rail): Fix[] {
  const { design } = rail;
  if (design.is !== "rail" || design.file !== undefined || design.round || rail.flat) return [];
  const [one, other] = rail.ends.map(({ entered }) => entered);
  if (one?.kind !== "post" || other?.kind !== "post" || !design.ups[0]) return [];
  const between = [one.name, other.name].sort().join();
  const below = [...chair.rails.values()].some(
    (each) =>
      each.start[2] < rail.start[2] - 50 &&
      each.ends
        .map(({ entered }) => entered?.name)
        .sort()
        .join() === between,
  );
  if (below) return [];
  const course = design.course?.at;
  const joint = design.joined?.value;
  if (!course || joint === undefined) return [];
  const { units } = chair.design;
  const bare = (mm: number) => printBareLength(mm, units, 8);
  const up = rail.start[2] * STRETCHER.up;
  const name = freeName(chair, `${design.name}-stretcher`);
  const header = text.slice(design.statement.start, design.at.start);
  const line = design.statement.block?.statements.find(
    ({ start, end }) => start <= course.start && course.end <= end,
  );
  if (!line) return [];
  const wide = Math.max(STRETCHER.least, rail.wide * STRETCHER.wide);
  const block = [
    `${header}${name}${design.pair ? " pair" : ""} {`,
    `  ${text.slice(line.start, line.end).trim()}`,
    `  section ${bare(rail.thick)} x ${bare(wide)}`,
    `  up ${bare(up)}`,
    `  joined ${joint}`,
    "}",
  ].join("\n");
  const at = design.statement.end;
  return [
    {
      title: sentence("joint-overworked.add-stretcher", { rail: design.name, up: `${bare(up)} ${units}` }),
      edits: [{ start: at, end: at, text: `\n\n${block}` }],
    },
  ];
}

function freeName({ design }: Chair, name: string): string {
  if (!design.names.has(name)) return name;
  for (let n = 2; ; n++) if (!design.names.has(`${name}-${n}`)) return `${name}-${n}`;
}
