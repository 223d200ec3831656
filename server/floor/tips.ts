import { type ValueName, valueTable } from "../../grammar/vocabulary/values.ts";
import type { Chair, Worked } from "../chair/chair.ts";
import { kept } from "../chair/kept.ts";
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
function editionFor({ design }: Pick<Chair, "design">): EditionName {
  const chosen = design.stability?.value.edition;
  return editionNames.find((name) => name === chosen) ?? usualEdition;
}

/** Weighs the chair, finds its feet and loads it by an edition of the standards. A calculation, not a test. */
export function balanceOf(chair: Chair, edition: EditionName = editionFor(chair)): Balance {
  const weight = kept(chair, weigh);
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

type OfBalance = Extract<ValueName, "weight" | `tip.${string}`>;

const tiltOf =
  (way: TiltWay) =>
  ({ tilt }: Balance) =>
    tilt[way];
const marginOf =
  (way: TiltWay) =>
  ({ cases }: Balance) =>
    cases.find((each) => each.way === way)?.margin;
const beyondOf =
  (kind: string, what: "tilt" | "margin") =>
  ({ beyond }: Balance) =>
    beyond.find((each) => each.kind === kind)?.[what];

type TiltWay = keyof Balance["tilt"];

/** How each value of the weight and of tipping is worked out: a function for each row of the table of values. */
const workings: Record<OfBalance, (balance: Balance) => number | undefined> = {
  weight: ({ weight }) => (weight.unknown.length === 0 && weight.mass > 0 ? weight.mass : undefined),
  "tip.back": tiltOf("back"),
  "tip.front": tiltOf("front"),
  "tip.side": tiltOf("side"),
  "tip.leaning": beyondOf("leaning", "tilt"),
  "tip.back-margin": marginOf("back"),
  "tip.front-margin": marginOf("front"),
  "tip.side-margin": marginOf("side"),
  "tip.leaning-margin": beyondOf("leaning", "margin"),
  "tip.child-margin": beyondOf("child", "margin"),
};

/** Names of those that come to no finite number: no weight or push lifts a leg that way. */
export const endlessOf = (balance: Balance): string[] =>
  Object.entries(workings).flatMap(([name, working]) => {
    const number = working(balance);
    return number === undefined || Number.isFinite(number) ? [] : [name];
  });

/** The chair's weight and how it tips as worked-out values, in the order to list them. */
function balanceValues(balance: Balance): Worked[] {
  return (Object.keys(workings) as OfBalance[]).flatMap((name) => {
    const number = workings[name](balance);
    if (number === undefined || !Number.isFinite(number)) return [];
    const { dimension } = valueTable[name];
    return [{ name, number, dimension, meaning: meaningOf(name, balance) }];
  });
}

/** The meaning in the table; of a margin, with the loads that it is against. */
function meaningOf(name: OfBalance, { edition, beyond }: Balance): string {
  const { meaning } = valueTable[name];
  if (!name.endsWith("-margin")) return meaning;
  const one = beyond.find(({ kind }) => name === `tip.${kind}-margin`);
  return one
    ? `Margin with ${one.name}; over at 1.`
    : `${meaning.replace("the standard loads", `the loads of ${edition.title}`).replace(/\.$/, "")}; over at 1.`;
}
