/**
 * Parts that work too hard, and which of them do so where an arch has taken their wood away.
 */
import type { Chair } from "../../chair/chair.ts";
import type { Late } from "../../strength/late.ts";
import type { Ruling } from "../../strength/strength.ts";
import { isHeldTogether, overworked } from "./work.ts";

/** Most parts that are told one by one; the others work less. */
const MOST_TOLD = 4;
/** An arch is why where it leaves less than this share of the section's depth at the place that works hardest. */
const ARCHED = 0.92;

interface Overworked {
  ruling: Ruling;
  unsure: boolean;
}

/** Parts that work harder than they may: those at an arch, or all the others. */
export function overworkedMembers(
  chair: Chair,
  late: Late | undefined,
  allowed: number,
  atArch: boolean,
): Overworked[] {
  if (!isHeldTogether(chair)) return [];
  return (late?.strength.members ?? [])
    .flatMap((ruling) => {
      const verdict = overworked(ruling, allowed);
      return verdict.is && archLeaves(chair, ruling) < ARCHED === atArch
        ? [{ ruling, unsure: verdict.unsure }]
        : [];
    })
    .slice(0, MOST_TOLD);
}

/** What an arch leaves of a rail's depth where it works hardest; 1 for one without. */
export function archLeaves(chair: Chair, { name, piece }: Ruling): number {
  const rail = chair.rails.get(name);
  if (!rail?.arch || !piece) return 1;
  const depth = Math.max(2 * piece.section.farY, 2 * piece.section.farZ);
  return depth / Math.max(rail.wide, rail.thick);
}
