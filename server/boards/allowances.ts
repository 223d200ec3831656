import type { Design } from "../design/design.ts";
import data from "./allowances.json" with { type: "json" };

/** What working the wood takes, mm: the kerf; off each face and edge; off each end of a board; off each glued edge. */
export interface Allowances {
  saw: number;
  plane: number;
  ends: number;
  jointing: number;
}

/** What is taken where the file says nothing. */
export const usualAllowances: Allowances = {
  saw: data.saw.mm,
  plane: data.plane.mm,
  ends: data.ends.mm,
  jointing: data.jointing.mm,
};

/** The file's `waste`; what it leaves out is as usual. */
export function allowancesOf({ waste }: Pick<Design, "waste">): Allowances {
  return {
    saw: waste?.saw?.value ?? usualAllowances.saw,
    plane: waste?.plane?.value ?? usualAllowances.plane,
    ends: waste?.ends?.value ?? usualAllowances.ends,
    jointing: waste?.jointing?.value ?? usualAllowances.jointing,
  };
}
