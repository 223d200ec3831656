/**
 * What a maker tries with hand and eye: turning the chair, and moving a value. Each case runs in a process of its own.
 */
import { readFileSync } from "node:fs";
import { finish } from "../../grammar/steps.ts";
import { lookAt } from "../../server/drawing/pictorial/look.ts";
import { turnableSteps } from "../../server/drawing/pictorial/turnable.ts";
import { rangeSteps } from "../../server/range/bands.ts";
import { choiceNamed } from "../../server/range/choice.ts";
import { mapSteps } from "../../server/range/map.ts";
import { study } from "../../server/study.ts";
import { settled } from "./making.ts";
import { type Timing, timed } from "./measure.ts";

export type Trying =
  | { is: "turned"; path: string; count: number }
  | { is: "ranges"; path: string; across: string; up: string; count: number };

/** One frame of the pictorial view, without its page, from ever other sides. */
export type TurnedResult = Timing & { lines: number };

export interface RangesResult {
  /** How far `across` may go, with its edges. */
  range: Timing;
  /** The map of both. */
  map: Timing;
}

const RADIANS = Math.PI / 180;

export async function turnedCase({ path, count }: Trying & { is: "turned" }): Promise<TurnedResult> {
  const turnable = finish(turnableSteps(settled(path), false));
  let lines = 0;
  const timing = await timed(count, (turn) => {
    const eye = { round: 5 * turn * RADIANS, above: (turn % 18) * 5 * RADIANS };
    lines = lookAt(turnable, { eye }).strokes.length;
  });
  return { ...timing, lines };
}

export async function rangesCase(given: Trying & { is: "ranges" }): Promise<RangesResult> {
  const { path, across, up, count } = given;
  const files = { resolve: (_from: string, other: string) => other, read: () => undefined };
  const subject = { text: readFileSync(path, "utf8"), address: path, files };
  const { tree, design } = study(subject);
  const choice = (name: string) => {
    const found = choiceNamed(tree, design, name);
    if (!found) throw new Error(`void: there is no ${name}`);
    return found;
  };
  const range = await timed(count, () => {
    finish(rangeSteps({ subject, choice: choice(across) }));
  });
  const map = await timed(Math.ceil(count / 4), () => {
    finish(mapSteps({ subject, across: { choice: choice(across) }, up: { choice: choice(up) } }));
  });
  return { range, map };
}
