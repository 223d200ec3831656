import type { Climate } from "../../timber/movement.ts";

/** Where the movement of wood comes from. */
export const movementSource =
  "Movement: Wood Handbook, FPL-GTR-190 (2010), table 13-5, and equilibrium moisture by its equation 4-5 (both seen in print).";

/** The two ends of a climate as a sentence has them: `35 % humidity` and `65 %`. */
export function climateInWords({ given, assumed }: Climate): [string, string] {
  const percent = (share: number) => `${Number((share * 100).toFixed(1))} %`;
  return [
    `${percent(given.low)} ${given.of === "humidity" ? "humidity" : "wood moisture"}`,
    `${percent(given.high)}${assumed ? " (taken for granted)" : ""}`,
  ];
}
