import { fibreSaturation, type Species, tableMoisture } from "./species.ts";

/**
 * Density in kg/m³ of a species at a moisture in percent, by the Wood Handbook's 1000 · G · (1 + M/100) with G the oven-dry
 * weight over the volume at that moisture. G is carried from the table's 12 % to M by the shrinkage of the table, taken as straight
 * between oven-dry and fibre saturation (common practice); where the table has no shrinkage G stays as at 12 %.
 */
export function density(species: Species, moisture: number): number {
  const volume = volumeAt(species, moisture) / volumeAt(species, tableMoisture);
  return ((1000 * species.specificGravity12) / volume) * (1 + moisture / 100);
}

/** Volume at a moisture as a share of the green volume. */
function volumeAt(species: Species, moisture: number): number {
  const dried = Math.max(0, fibreSaturation - moisture) / fibreSaturation;
  const radial = 1 - (dried * (species.shrinkRadial ?? 0)) / 100;
  const tangential = 1 - (dried * (species.shrinkTangential ?? 0)) / 100;
  return radial * tangential;
}
