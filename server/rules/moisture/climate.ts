import type { Climate } from "../../timber/movement.ts";

/** Where the movement of wood comes from. */
export const movementSource =
  "Movement: Wood Handbook, FPL-GTR-190 (2010), table 13-5, and equilibrium moisture by its equation 4-5 (both seen in print).";

/** The two ends of a climate as a sentence has them: `35 %` and `65 % humidity (taken for granted)`; `dry` names what it is of too. */
export function climateInWords({ given, assumed }: Climate): { low: string; dry: string; damp: string } {
  const percent = (share: number) => `${Number((share * 100).toFixed(1))} %`;
  const of = `${given.of === "humidity" ? "humidity" : "wood moisture"}${assumed ? " (taken for granted)" : ""}`;
  return {
    low: percent(given.low),
    dry: `${percent(given.low)} ${of}`,
    damp: `${percent(given.high)} ${of}`,
  };
}
