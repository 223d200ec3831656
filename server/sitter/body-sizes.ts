import data from "./adult-body-sizes.json" with { type: "json" };
import { normalQuantile, normalShareBelow } from "./normal.ts";

/** The two groups of the adult body-size data. */
export type Group = "women" | "men";

/** Measures of a sitter that a chair must suit, by the data's names. Lengths mm, weight kg. */
export type Measure =
  | "stature"
  | "popliteal-height"
  | "buttock-popliteal-length"
  | "hip-breadth-sitting"
  | "thigh-clearance"
  | "elbow-rest-height"
  | "shoulder-height-sitting"
  | "sitting-height"
  | "forearm-forearm-breadth"
  | "bideltoid-breadth"
  | "weight";

export const groups: readonly Group[] = ["women", "men"];
export const measures = data.groups.women.order as readonly Measure[];
export const bodySizeSource = data.source;

/**
 * The share (0 to 1) of a group whose measure is at most `value`. Straight between the data's quantiles; beyond the first and
 * last a normal tail with the group's standard deviation joins on, so the result is continuous and rises throughout.
 */
export function shareBelow(group: Group, measure: Measure, value: number): number {
  const { sd, quantiles } = data.groups[group].measures[measure];
  const percents = data.quantilesPercent;
  const last = quantiles.length - 1;
  if (value < quantiles[0]!) return tail(percents[0]! / 100, (value - quantiles[0]!) / sd);
  if (value > quantiles[last]!) return tail(percents[last]! / 100, (value - quantiles[last]!) / sd);
  let i = 1;
  while (i < last && value > quantiles[i]!) i += 1;
  const low = quantiles[i - 1]!;
  const high = quantiles[i]!;
  const t = high > low ? (value - low) / (high - low) : 1;
  return (percents[i - 1]! + t * (percents[i]! - percents[i - 1]!)) / 100;
}

/** The value of a measure that a share (0 to 1, ends not included) of the group does not exceed; inverse of `shareBelow`. */
export function quantile(group: Group, measure: Measure, share: number): number {
  const { sd, quantiles } = data.groups[group].measures[measure];
  const percents = data.quantilesPercent;
  const last = quantiles.length - 1;
  const percent = share * 100;
  if (percent < percents[0]!)
    return quantiles[0]! + sd * (standardQuantile(share) - standardQuantile(percents[0]! / 100));
  if (percent > percents[last]!) {
    return quantiles[last]! + sd * (standardQuantile(share) - standardQuantile(percents[last]! / 100));
  }
  let i = 1;
  while (i < last && percent > percents[i]!) i += 1;
  const t = (percent - percents[i - 1]!) / (percents[i]! - percents[i - 1]!);
  return quantiles[i - 1]! + t * (quantiles[i]! - quantiles[i - 1]!);
}

/** Correlation of two measures within a group, −1 to 1. */
export function correlation(group: Group, a: Measure, b: Measure): number {
  return data.groups[group].correlation[measures.indexOf(a)]![measures.indexOf(b)]!;
}

/** Standard normal deviate below which a share (0 to 1) lies. */
export function standardQuantile(share: number): number {
  if (share <= 0) return Number.NEGATIVE_INFINITY;
  if (share >= 1) return Number.POSITIVE_INFINITY;
  return normalQuantile(share);
}

/** Share of a standard normal at most `z`. */
export function standardShare(z: number): number {
  if (z === Number.POSITIVE_INFINITY) return 1;
  if (z === Number.NEGATIVE_INFINITY) return 0;
  return normalShareBelow(z);
}

function tail(share: number, steps: number): number {
  return standardShare(standardQuantile(share) + steps);
}
