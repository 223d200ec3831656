import { drawnLater } from "../../geometry/body.ts";
import { offsetBy, planeAt } from "../../geometry/plane.ts";
import type { Body, Convex, Vec3 } from "../../geometry/solid.ts";
import { outlinedOn } from "../../geometry/surfacing.ts";
import { along, distance, dot, negate, sub } from "../../geometry/vec.ts";
import type { MemberFace, MemberOf } from "../chair.ts";
import type { RailFrame } from "./rail-frame.ts";
import { type RailShape, type RailSizes, railShape } from "./rail-shape.ts";
import { type Shoulder, shoulderOf } from "./shoulder.ts";
import { stationsOf, sweep } from "./sweep.ts";

interface StickSizes extends Omit<RailSizes, "length" | "clear"> {
  /** How far its body runs past each end plane, to the surface of a turned member. */
  past: readonly [number, number];
  /** The wood of the members it enters, on whose surface such ends are outlined. */
  enters: readonly [readonly Convex[], readonly Convex[]];
}

/** A rail or slat cut between its two end planes. */
export interface Stick {
  shape: RailShape;
  length: number;
  shoulders: [Shoulder, Shoulder];
  body: Body;
  /** The distances along it between which its outline is straight. */
  stations: number[];
}

/**
 * Shapes straight, tapered, arched, bowed or turned stuff in its frame. Arches keep to where the whole section stands clear of both
 * shoulders, so that the ends have their full width all round however the shoulders slant.
 */
export function makeStick(frame: RailFrame, sizes: StickSizes): Stick {
  const length = distance(frame.start, frame.end);
  const place = { ...frame, length };
  const straight = railShape({ ...sizes, bow: 0, arch: {}, length, clear: [0, length] });
  let ends = bothShoulders(straight, place);
  let clear = clearOf(ends, frame, length);
  let shape = straight;
  let xs: number[] = [0, length];
  if (
    sizes.bow ||
    sizes.arch?.above ||
    sizes.arch?.below ||
    sizes.tapers.length > 0 ||
    sizes.stations?.length
  ) {
    for (let round = 0; round < 3; round++) {
      shape = railShape({ ...sizes, length, clear });
      xs = stationsOf(shape, length, clear);
      ends = bothShoulders(shape, place);
      const found = clearOf(ends, frame, length);
      if (found[0] <= clear[0] + 1e-9 && found[1] >= clear[1] - 1e-9) break;
      clear = [Math.max(clear[0], found[0] + 1e-3), Math.min(clear[1], found[1] - 1e-3)];
    }
  }
  const cuts = [offsetBy(frame.cuts[0], -sizes.past[0]), offsetBy(frame.cuts[1], -sizes.past[1])] as const;
  const { pieces, edges } = sweep(shape, { ...frame, cuts }, xs);
  const body = drawnLater(pieces, () =>
    ([0, 1] as const)
      .filter((which) => sizes.past[which] > 0)
      .reduce(
        (lines, which) => outlinedOn(lines, cuts[which], frame.along, which, sizes.enters[which]),
        edges,
      ),
  );
  return { shape, length, shoulders: ends, body, stations: xs };
}

function bothShoulders(shape: RailShape, frame: RailFrame & { length: number }): [Shoulder, Shoulder] {
  return [shoulderOf(shape, frame, 0, frame.cuts[0]), shoulderOf(shape, frame, 1, frame.cuts[1])];
}

/** Where the whole section stands, by the corners of both shoulders. */
function clearOf(ends: readonly [Shoulder, Shoulder], frame: RailFrame, length: number): [number, number] {
  const xs = (end: 0 | 1) => ends[end].corners.map((c: Vec3) => dot(sub(c, frame.start), frame.along));
  return [Math.max(0, frame.free[0], ...xs(0)), Math.min(length, frame.free[1], ...xs(1))];
}

/** What runs along a stick, as every member has it: its centre line, its grain, its flat faces as they are halfway along. */
export function alongStick(
  frame: RailFrame,
  { shape, length }: Stick,
): Pick<MemberOf<"rail", unknown>, "centreLine" | "grain" | "faces"> {
  const middle = (x: number): Vec3 => spot(x, (shape.outside(x) + shape.inside(x)) / 2, height(x));
  const height = (x: number) => (shape.top(x) + shape.bottom(x)) / 2;
  const spot = (x: number, y: number, z: number): Vec3 =>
    along(along(along(frame.start, frame.along, x), frame.outward, y), frame.upward, z);
  const x = length / 2;
  const face = (name: MemberFace["name"], at: Vec3, normal: Vec3) => ({ name, plane: planeAt(at, normal) });
  return {
    centreLine: [0, ...shape.bends.filter((bend) => bend > 0 && bend < length), length].map(middle),
    grain: frame.along,
    faces: shape.round
      ? []
      : [
          face("outside", spot(x, shape.outside(x), height(x)), frame.outward),
          face("inside", spot(x, shape.inside(x), height(x)), negate(frame.outward)),
          face("top", spot(x, 0, shape.top(x)), frame.upward),
          face("bottom", spot(x, 0, shape.bottom(x)), negate(frame.upward)),
        ],
  };
}
