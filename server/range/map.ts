/**
 * Two choices at once: what is found at each place of a grid over both ranges.
 */
import type { Steps } from "../../grammar/steps.ts";
import type { Study } from "../study.ts";
import { type Subject, textSteps } from "./attempt.ts";
import type { Choice } from "./choice.ts";
import { type Known, knownBy } from "./findings.ts";
import { movingTextSteps } from "./moving.ts";

interface Axis {
  choice: Choice;
  low: number;
  high: number;
  /** Where the grid's lines stand, in the choice's unit. */
  places: number[];
}

export interface RangeMap {
  across: Axis;
  up: Axis;
  /** Everything that is found somewhere on the map. */
  findings: Known[];
  /** For each place up, for each place across, the indices of what is found there. */
  rows: number[][][];
}

interface Asking {
  subject: Subject;
  across: { choice: Choice; low?: number; high?: number };
  up: { choice: Choice; low?: number; high?: number };
  /** Lines of the grid each way. */
  places?: number;
}

/** How many places each way are tried unless said. */
export const MAP_PLACES = 15;

/** Tries every place of the grid; rests after each. */
export function* mapSteps({ subject, places = MAP_PLACES, ...axes }: Asking): Steps<RangeMap> {
  const across = axisOf(axes.across, places);
  const up = axisOf(axes.up, places);
  const moving = yield* movingTextSteps(subject.text, [across, up]);
  const index = new Map<string, number>();
  const findings: Known[] = [];
  const rows: number[][][] = [];
  let { earlier } = subject;
  for (const y of up.places) {
    const row: number[][] = [];
    for (const x of across.places) {
      const study: Study = yield* textSteps({ ...subject, ...(earlier && { earlier }) }, moving([x, y]));
      earlier = study.chair;
      yield;
      const here = [...knownBy(study.problems)].map(([key, known]) => {
        const at = index.get(key) ?? findings.push(known) - 1;
        index.set(key, at);
        return at;
      });
      row.push(here.sort((a, b) => a - b));
    }
    rows.push(row);
  }
  return { across, up, findings, rows };
}

function axisOf(
  { choice, low = choice.low, high = choice.high }: { choice: Choice; low?: number; high?: number },
  count: number,
): Axis {
  const places = Array.from({ length: count }, (_, k) =>
    Number((count === 1 ? choice.now : low + ((high - low) * k) / (count - 1)).toFixed(6)),
  );
  return { choice, low, high, places };
}
