import { millimetresIn } from "../design/units.ts";
import type { Size } from "./parts.ts";

const INCH = millimetresIn("in");

/**
 * Board feet of a piece or a board: thickness in inches by width in inches by length in feet, over 12; a thickness under 1 in counts as
 * 1 in (NHLA Rule Book, through summaries, not seen itself).
 */
export const boardFeet = ({ thick, wide, long }: Size): number =>
  (Math.max(1, thick / INCH) * (wide / INCH) * (long / (12 * INCH))) / 12;
