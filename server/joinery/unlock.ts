import { finish } from "../../grammar/steps.ts";
import type { Chair, Joint } from "../chair/chair.ts";
import { goesSquare } from "../chair/joints/kinds/index.ts";
import { type Locked, lockedSteps } from "./assembly.ts";
import { allowance } from "./figures.ts";
import { type Change, fittingsOf, partsOf } from "./order.ts";

/** A change of the joints in the way that was tried and lets the chair be put together. */
export interface WayOut {
  joints: string[];
  square?: true;
  /** mm */
  long?: number;
  /** A fit of this much, mm. */
  fit?: number;
}

const STEP = 0.5;

/** What would free some locked joints, each tried by looking for an order again. */
export function waysOut(chair: Chair, { joints, parts }: Locked): WayOut[] {
  const names = joints.map(({ name }) => name);
  const mine = new Set(names);
  const inside = new Set(parts);
  const frees = (change: (joint: Joint) => Change | undefined): boolean =>
    !lockedStill(finish(lockedSteps(partsOf(chair), fittingsOf(chair, change))), inside);
  const ways: WayOut[] = [];
  const square = (some: ReadonlySet<string>) => (joint: Joint) =>
    some.has(joint.name) && !goesSquare(joint) ? ({ square: true } as const) : undefined;
  const inLine = [...chair.joints.values()].filter((joint) => {
    const { part, entered, name } = joint;
    return (
      inside.has(part) &&
      inside.has(entered.name) &&
      !goesSquare(joint) &&
      (mine.has(name) || chair.posts.has(entered.name))
    );
  });
  const all = new Set(inLine.map(({ name }) => name));
  if (names.some((name) => all.has(name)) && frees(square(mine))) ways.push({ joints: names, square: true });
  else if (all.size > 0 && frees(square(all))) ways.push({ joints: [...all], square: true });
  const worst = Math.max(0, ...joints.map(({ strays, slack }) => strays / Math.max(slack, 1e-9)));
  const longest = Math.max(0, ...names.map((name) => chair.joints.get(name)?.long ?? 0));
  const long = Math.floor(longest / Math.max(worst, 1) / STEP) * STEP;
  if (
    long >= allowance("shortest-tenon") * longest &&
    frees(({ name }) => (mine.has(name) ? { long } : undefined))
  )
    ways.push({ joints: names, long });
  const looser = Math.ceil(10 * Math.max(0, ...joints.map(({ strays, slack }) => strays - slack))) / 10;
  const fit = looser + Math.max(0, ...names.map((name) => chair.joints.get(name)?.facts.fit?.value ?? 0));
  if (
    looser > 0 &&
    fit <= allowance("loosest-fit") &&
    frees(({ name }) => (mine.has(name) ? { looser } : undefined))
  )
    ways.push({ joints: names, fit });
  return ways;
}

const lockedStill = (locked: readonly Locked[], parts: ReadonlySet<string>): boolean =>
  locked.some((knot) => knot.parts.some((part) => parts.has(part)));
