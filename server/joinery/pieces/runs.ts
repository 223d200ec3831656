/**
 * The straight runs of a stick: each has a line squared round it from which its distances are measured, so that all four faces agree
 * however the stick is bent.
 */
import type { Vec3 } from "../../geometry/solid.ts";
import { angleBetween, distance, dot, sub } from "../../geometry/vec.ts";
import type { Datum } from "./piece.ts";

/** A straight stretch of any stick, squared or turned. */
interface Straight {
  direction: Vec3;
  curved: boolean;
  start: Vec3;
  end: Vec3;
}

export interface Run {
  datum: Datum;
  /** Stretches, first and last. */
  from: number;
  to: number;
  /** Where the datum crosses the centre line, and the way distances run. */
  origin: Vec3;
  direction: Vec3;
}

const SAME = 1e-6;

/** Runs in order. The first starts at the stick's end, the others where a bend ends; a stick that is curved all along is one run. */
export function runsOf(stretches: readonly Straight[], first: string): Run[] {
  const runs: Run[] = [];
  let along = 0;
  for (const [k, { direction, curved, start, end }] of stretches.entries()) {
    const last = runs[runs.length - 1];
    const goesOn = last && last.to === k - 1 && angleBetween(last.direction, direction) < SAME;
    if (!curved && goesOn) last.to = k;
    else if (!curved) {
      const number = runs.length + 1;
      runs.push({
        datum: {
          name: `D${number}`,
          says: first,
          along,
          reach: [0, 0],
        },
        from: k,
        to: k,
        origin: start,
        direction,
      });
    }
    along += distance(start, end);
  }
  const only = stretches[0]!;
  if (runs.length === 0) {
    const datum = { name: "D1", says: first, along: 0, reach: [0, along] as [number, number] };
    return [{ datum, from: 0, to: stretches.length - 1, origin: only.start, direction: only.direction }];
  }
  for (const run of runs) {
    const end = stretches[run.to]!.end;
    run.datum.reach = [0, dot(sub(end, run.origin), run.direction)];
  }
  sayBends(
    runs.filter(({ from }) => from > 0),
    (run) => stretches[run.from - 1]?.curved === true,
  );
  return runs;
}

const ORDER = ["first", "second", "third", "fourth", "fifth", "sixth"];

/** Says of each run after a bend where it is squared round: which curve or which bend, counted from the datum of the first where there are several. */
function sayBends(runs: readonly Run[], afterCurve: (run: Run) => boolean): void {
  const curves = runs.filter(afterCurve);
  const bends = runs.filter((run) => !afterCurve(run));
  const which = (all: readonly Run[], run: Run) =>
    all.length > 1 ? `${ORDER[all.indexOf(run)] ?? "next"} ` : "";
  for (const run of curves) run.datum.says = `squared round where the ${which(curves, run)}curve ends`;
  for (const run of bends)
    run.datum.says = `squared round at the ${which(bends, run)}bend, on the centre line`;
}

/** The run that a stretch belongs to, or the nearest below a curve. */
export function runAt(runs: readonly Run[], stretch: number): Run {
  return [...runs].reverse().find(({ from }) => from <= stretch) ?? runs[0]!;
}

/** How far a point lies from a run's datum along it. */
export const measured = ({ origin, direction }: Run, point: Vec3): number =>
  dot(sub(point, origin), direction);
