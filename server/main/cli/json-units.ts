import type { Dimension } from "../../design/design.ts";

/** The units of worked-out values in JSON. */
type JsonUnit = "mm" | "mm²" | "mm³" | "deg" | "kg" | "N" | "%" | "1";

/** JSON is for programs: always the same units, whatever the file is written in. */
const units: Record<Dimension, { unit: JsonUnit; times: number; places: number }> = {
  number: { unit: "1", times: 1, places: 4 },
  length: { unit: "mm", times: 1, places: 3 },
  area: { unit: "mm²", times: 1, places: 1 },
  volume: { unit: "mm³", times: 1, places: 0 },
  angle: { unit: "deg", times: 180 / Math.PI, places: 2 },
  mass: { unit: "kg", times: 1, places: 3 },
  force: { unit: "N", times: 1, places: 1 },
  share: { unit: "%", times: 100, places: 2 },
};

/** The unit a dimension has in JSON. */
export const jsonUnit = (dimension: Dimension): JsonUnit => units[dimension].unit;

/** A figure as JSON gives it: in its unit, rounded, without a minus before zero. */
export function forJson(number: number, dimension: Dimension): number {
  const { times, places } = units[dimension];
  const near = Number((number * times).toFixed(places));
  return near === 0 ? 0 : near;
}

/** A quantity in the unit and to the places of JSON output. */
export const amountForJson = (number: number, dimension: Dimension): { value: number; unit: JsonUnit } => ({
  value: forJson(number, dimension),
  unit: jsonUnit(dimension),
});
