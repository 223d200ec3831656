import data from "./loads.json" with { type: "json" };

/** The editions of the stability standards whose loads are on file. */
export type EditionName = keyof typeof data.editions;

/** Loads in N and distances in mm of one edition. */
export interface Edition {
  name: EditionName;
  title: string;
  seatLoad: number;
  outward: number;
  edgeDistance: number;
  armSeatLoad: number;
  armSeatDistance: number;
  armLoad: number;
  armDistance: number;
  rearSeatLoad: number;
  rearPoint: number;
  backHeight: number;
  /** What the height of the push on the back is measured from. */
  backHeightFrom: "loaded seat" | "unloaded seat";
  /** The push on the back for a loaded seat height in mm. */
  backForce: (seatHeight: number) => number;
  /** Figures of the edition that were not seen in print, by name; and whether any was. */
  fromMemory: string[];
  seen: boolean;
}

export const editionNames = Object.keys(data.editions) as EditionName[];
export const caution = data.caution;
/** The margin against tipping at which a chair just holds, and where it comes from. */
export const leastMargin = data.leastMargin;

/** Loads and distances of an edition. */
export function editionOf(name: EditionName): Edition {
  const row = data.editions[name];
  const figures = Object.entries(row).flatMap(([key, figure]) =>
    typeof figure === "object" ? [{ key, recalled: figure.seen.startsWith("from memory") }] : [],
  );
  const fromMemory = figures.filter(({ recalled }) => recalled).map(({ key }) => key);
  return {
    name,
    title: row.title,
    seatLoad: row.seatLoad.value,
    outward: row.outward.value,
    edgeDistance: row.edgeDistance.value,
    armSeatLoad: row.armSeatLoad.value,
    armSeatDistance: row.armSeatDistance.value,
    armLoad: row.armLoad.value,
    armDistance: row.armDistance.value,
    rearSeatLoad: row.rearSeatLoad.value,
    rearPoint: row.rearPoint.value,
    backHeight: row.backHeight.value,
    backHeightFrom: row.backHeightFrom as Edition["backHeightFrom"],
    backForce: (seatHeight) =>
      seatHeight >= row.backForceLimitHeight.value
        ? row.backForceAbove.value
        : row.backForceSlope.value * (row.backForceFrom.value - seatHeight),
    fromMemory,
    seen: fromMemory.length < figures.length,
  };
}
