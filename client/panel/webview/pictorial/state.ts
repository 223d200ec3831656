/**
 * How the pictorial view is looked at, and what a key or a pull does to it.
 */

import { type Eye, eyes } from "../../../../server/drawing/pictorial/eye.ts";
import type { Look } from "../../../../server/drawing/pictorial/look.ts";
import type { Point } from "../../../../server/drawing/sheet.ts";

/** What comes back after the window is loaded anew. */
export type Turned = Required<Omit<Look, "glueUp">> & Pick<Look, "glueUp">;

/** From the front left, whole, tenons not seen. */
export const atFirst: Turned = { eye: eyes["front-left"]!, apart: 0, joints: false };

const DEGREE = Math.PI / 180;
/** One press of an arrow key, and one with Shift. */
const STEP = 15 * DEGREE;
const FINE_STEP = 5 * DEGREE;
/** A pull over one pixel. */
const PULL = 0.4 * DEGREE;

/** The eye after a key; undefined when the key turns nothing. The chair goes the way the arrow points, as it does when it is pulled. */
export function eyeAfter(eye: Eye, key: string, shift: boolean): Eye | undefined {
  const by = shift ? FINE_STEP : STEP;
  const turns: Record<string, Point> = {
    ArrowLeft: [by, 0],
    ArrowRight: [-by, 0],
    ArrowUp: [0, -by],
    ArrowDown: [0, by],
  };
  if (key === "0") return atFirst.eye;
  const turn = Object.hasOwn(turns, key) ? turns[key] : undefined;
  return turn && turned(eye, turn);
}

/** The eye after a pull by so many pixels to the right and down. */
export const eyePulled = (eye: Eye, [right, down]: Point): Eye => turned(eye, [-right * PULL, down * PULL]);

/** Round by whole turns, and never over the top. */
function turned({ round, above }: Eye, [on, up]: Point): Eye {
  const circle = 2 * Math.PI;
  return {
    round: exact((((round + on) % circle) + circle) % circle),
    above: exact(Math.min(Math.PI / 2, Math.max(-Math.PI / 2, above + up))),
  };
}

/** Steps of whole degrees stay whole degrees. */
function exact(angle: number): number {
  const whole = Math.round(angle / DEGREE);
  return Math.abs(angle / DEGREE - whole) < 1e-6 ? (whole % 360) * DEGREE : angle;
}

/** The name of the side or corner that this is, if it is one. */
export const nameOfEye = ({ round, above }: Eye): string | undefined =>
  Object.keys(eyes).find((name) => {
    const eye = eyes[name]!;
    return Math.abs(eye.round - round) < 1e-6 && Math.abs(eye.above - above) < 1e-6;
  });

/** What was kept, as far as it can still be used. */
export function readTurned(given: unknown): Turned {
  const { eye, apart, joints, glueUp } = (given ?? {}) as Partial<Turned>;
  const isNumber = (value: unknown): value is number => typeof value === "number" && Number.isFinite(value);
  return {
    eye: isNumber(eye?.round) && isNumber(eye.above) ? { round: eye.round, above: eye.above } : atFirst.eye,
    apart: isNumber(apart) ? Math.min(1, Math.max(0, apart)) : 0,
    joints: joints === true,
    ...(isNumber(glueUp) && glueUp >= 0 && { glueUp: Math.floor(glueUp) }),
  };
}
