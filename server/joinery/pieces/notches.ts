/**
 * Notches that let another rail through, set out on a squared stick: where they cross the arrises of the face that they open in, how deep
 * they are there, and where their floor ends.
 */
import type { Notch, Rail } from "../../chair/chair.ts";
import { height, threePlanes } from "../../geometry/plane.ts";
import type { Vec3 } from "../../geometry/solid.ts";
import { dot, negate, sub } from "../../geometry/vec.ts";
import type { CutNotch } from "./piece.ts";
import { measured, type Run, runAt } from "./runs.ts";
import type { SquaredStick } from "./squared.ts";

/** The notches of a rail in the order of its stick. */
export function notchesOf(stick: SquaredStick, runs: readonly Run[], rail: Rail): CutNotch[] {
  return (rail.notches ?? [])
    .flatMap((notch) => notchOf(stick, runs, notch) ?? [])
    .sort((a, b) => a.sides[0].mouth[0] - b.sides[0].mouth[0]);
}

function notchOf(stick: SquaredStick, runs: readonly Run[], notch: Notch): CutNotch | undefined {
  const middle = threePlanes(notch.sides[0], notch.floor, stick.stretches[0]!.planes[stick.side as 0]);
  const at = middle ? stretchAt(stick, middle) : 0;
  const { planes } = stick.stretches[at]!;
  const run = runAt(runs, at);
  const opens = negate(notch.floor.normal);
  const open = [0, 1, 2, 3].reduce((best, k) =>
    dot(planes[k as 0].normal, opens) > dot(planes[best as 0].normal, opens) ? k : best,
  );
  const lines = [1, 3].map((turn) => {
    const side = (open + turn) % 4;
    const points = notch.sides.map((end) => {
      const mouth = threePlanes(planes[open as 0], planes[side as 0], end);
      const floor = threePlanes(notch.floor, planes[side as 0], end);
      if (!mouth || !floor) return undefined;
      return {
        mouth: measured(run, mouth),
        floor: measured(run, floor),
        deep: -height(planes[open as 0], floor),
      };
    });
    const [a, b] = points.sort((one, other) => (one?.mouth ?? 0) - (other?.mouth ?? 0));
    if (!a || !b) return undefined;
    return {
      face: stick.names[side as 0],
      mouth: [a.mouth, b.mouth] as const,
      floor: [a.floor, b.floor] as const,
      deep: [a.deep, b.deep] as const,
    };
  });
  if (!lines[0] || !lines[1]) return undefined;
  return {
    for: notch.by,
    face: stick.names[open as 0],
    datum: run.datum.name,
    sides: [lines[0], lines[1]],
  };
}

/** The stretch that holds a point, by how far along it lies. */
function stretchAt(stick: SquaredStick, point: Vec3): number {
  const begun = stick.stretches.filter(({ start, direction }) => dot(sub(point, start), direction) >= 0);
  return Math.max(0, begun.length - 1);
}
