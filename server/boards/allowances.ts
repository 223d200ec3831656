import type { Design, LengthUnit } from "../design/design.ts";
import { millimetresIn } from "../design/units.ts";
import data from "./allowances.json" with { type: "json" };

/** What working the wood takes, mm: the kerf; off each face and edge; off each end of a board; off each glued edge. */
export interface Allowances {
  saw: number;
  plane: number;
  ends: number;
  jointing: number;
}

type Taken = keyof Allowances;

/** What is taken where the file says nothing, by the unit that it is written in. */
export const usualIn = (units: LengthUnit): Allowances => {
  const usual = (name: Taken): number =>
    units === "in" ? data[name].in * millimetresIn("in") : data[name].mm;
  return { saw: usual("saw"), plane: usual("plane"), ends: usual("ends"), jointing: usual("jointing") };
};

/** The file's `waste`; what it leaves out is as usual. */
export function allowancesOf({ waste, units }: Pick<Design, "waste" | "units">): Allowances {
  const usual = usualIn(units);
  return {
    saw: waste?.saw?.value ?? usual.saw,
    plane: waste?.plane?.value ?? usual.plane,
    ends: waste?.ends?.value ?? usual.ends,
    jointing: waste?.jointing?.value ?? usual.jointing,
  };
}
