import type { Chair, Worked } from "../chair/chair.ts";
import { type ChairWeight, weigh } from "../timber/weight.ts";
import { beyondCases } from "./beyond.ts";
import { type Edition, type EditionName, editionNames, editionOf } from "./editions.ts";
import { type TipCase, tipCases } from "./load-cases.ts";
import { loadedOf } from "./loaded.ts";
import { type Standing, standingOf } from "./stand.ts";
import { tiltToGoOver } from "./support.ts";

/** How a chair stands and how it goes over. */
export interface Balance {
  weight: ChairWeight;
  standing: Standing;
  /** Smallest tilt in radians before the empty chair goes over, by way; absent when it cannot be weighed whole. */
  tilt: Partial<Record<"front" | "back" | "side", number>>;
  /** The worst standard load of each way; empty without a seat or with fewer than three feet. */
  cases: TipCase[];
  /** A child kneeling, somebody leaning back on the back legs; empty without a back. */
  beyond: TipCase[];
  edition: Edition;
}

export const usualEdition: EditionName = "en-1022-2018";

/** The edition that a chair's text chooses. */
export function editionFor({ design }: Pick<Chair, "design">): EditionName {
  const chosen = design.stability?.value.edition;
  return editionNames.find((name) => name === chosen) ?? usualEdition;
}

/** Weighs the chair, finds its feet and loads it by an edition of the standards. A calculation, not a test. */
export function balanceOf(chair: Chair, edition: EditionName = editionFor(chair)): Balance {
  const weight = weigh(chair);
  const standing = standingOf(chair);
  const loads = editionOf(edition);
  const loaded = loadedOf(chair, weight);
  const tilt: Balance["tilt"] = {};
  if (weight.unknown.length === 0 && weight.mass > 0) {
    for (const line of standing.lines) {
      const way = line.way === "front" || line.way === "back" ? line.way : "side";
      tilt[way] = Math.min(tilt[way] ?? Number.POSITIVE_INFINITY, tiltToGoOver(line, weight.centre));
    }
  }
  return {
    weight,
    standing,
    tilt,
    cases: loaded ? tipCases(standing.lines, loaded, loads) : [],
    beyond: loaded ? beyondCases(chair, standing.lines, loaded) : [],
    edition: loads,
  };
}

/** The values of a chair with its weight and how it tips put in after those of the whole chair. */
export function withBalance(values: ReadonlyMap<string, Worked>, balance: Balance): Map<string, Worked> {
  const all = new Map<string, Worked>();
  const late = balanceValues(balance);
  for (const [name, worked] of values) {
    all.set(name, worked);
    if (name === "joints") for (const value of late) all.set(value.name, value);
  }
  return all;
}

/** The chair's weight and how it tips as worked-out values, in the order to list them. */
export function balanceValues(balance: Balance): Worked[] {
  const values: Worked[] = [];
  const { weight, tilt, cases, beyond } = balance;
  if (weight.unknown.length === 0 && weight.mass > 0) {
    values.push({
      name: "weight",
      number: weight.mass,
      dimension: "mass",
      meaning: "Weight of the whole chair.",
    });
  }
  for (const way of ["back", "front", "side"] as const) {
    const angle = tilt[way];
    if (angle !== undefined) {
      values.push({
        name: `tip.${way}`,
        number: angle,
        dimension: "angle",
        meaning: `How far the empty chair can be tilted ${words[way]} before it goes over.`,
      });
    }
  }
  for (const one of cases) {
    if (!Number.isFinite(one.margin)) continue;
    values.push({
      name: `tip.${one.way}-margin`,
      number: one.margin,
      dimension: "number",
      meaning: `Margin against tipping ${words[one.way]} under the loads of ${balance.edition.title}; over at 1.`,
    });
  }
  for (const one of beyond) {
    if (one.tilt !== undefined) {
      values.push({
        name: `tip.${one.kind}`,
        number: one.tilt,
        dimension: "angle",
        meaning: "How far chair and sitter together can be tilted backwards before they go over.",
      });
    }
    if (!Number.isFinite(one.margin)) continue;
    values.push({
      name: `tip.${one.kind}-margin`,
      number: one.margin,
      dimension: "number",
      meaning: `Margin with ${one.name}; over at 1.`,
    });
  }
  return values;
}

const words = { back: "backwards", front: "forwards", side: "sideways" };
