import { height } from "../../geometry/plane.ts";
import type { Plane, Vec3 } from "../../geometry/solid.ts";
import { along, angleBetween, distance, negate, sub } from "../../geometry/vec.ts";
import type { RailShape } from "./rail-shape.ts";

interface ShoulderFrame {
  start: Vec3;
  along: Vec3;
  outward: Vec3;
  upward: Vec3;
  length: number;
}

/** The lines around a shoulder, and the bevels a maker sets. */
export interface Shoulder {
  corners: [Vec3, Vec3, Vec3, Vec3];
  lines: [number, number, number, number];
  faceBevel: number;
  edgeBevel: number;
}

const ROUNDS = 8;
/** For slopes of an arris, mm. */
const STEP = 1e-2;

/**
 * Where the rail's four arrises meet the plane at one end: top outside, top inside, bottom inside, bottom outside; the lengths of the lines
 * between them; the bevel on the outside face (top edge to shoulder line) and on the top edge (outside face to shoulder line), both
 * measured inside the rail along its straight, π/2 when square.
 */
export function shoulderOf(shape: RailShape, frame: ShoulderFrame, which: 0 | 1, plane: Plane): Shoulder {
  const spot = (x: number, y: number, z: number) =>
    along(along(along(frame.start, frame.along, x), frame.outward, y), frame.upward, z);
  const corner = (y: (x: number) => number, z: (x: number) => number): Vec3 => {
    const off = (x: number) => height(plane, spot(x, y(x), z(x)));
    let x = which === 0 ? 0 : frame.length;
    // The arris is straight or nearly so: Newton's steps are exact at once or within a few.
    for (let round = 0; round < ROUNDS && Math.abs(off(x)) > 1e-12; round++) {
      x -= (2 * STEP * off(x)) / (off(x + STEP) - off(x - STEP));
    }
    return spot(x, y(x), z(x));
  };
  const corners: Shoulder["corners"] = [
    corner(shape.outside, shape.top),
    corner(shape.inside, shape.top),
    corner(shape.inside, shape.bottom),
    corner(shape.outside, shape.bottom),
  ];
  const [topOutside, topInside, bottomInside, bottomOutside] = corners;
  const inward = which === 0 ? frame.along : negate(frame.along);
  return {
    corners,
    lines: [
      distance(topOutside, topInside),
      distance(topInside, bottomInside),
      distance(bottomInside, bottomOutside),
      distance(bottomOutside, topOutside),
    ],
    faceBevel: angleBetween(inward, sub(bottomOutside, topOutside)),
    edgeBevel: angleBetween(inward, sub(topInside, topOutside)),
  };
}
