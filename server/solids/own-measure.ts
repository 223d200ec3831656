import type { Member } from "../chair/chair.ts";
import { inverse } from "../geometry/motion.ts";
import type { Motion, Vec3 } from "../geometry/solid.ts";
import { cross, dot, squareTo, unit } from "../geometry/vec.ts";

/**
 * The motion that carries a part's own measure into the chair as drawn. In its own measure a part lies along x by its grain with its lowest
 * corner at zero on all three axes, so that its coordinates are small and single precision holds them well.
 */
export function fromOwnMeasure({ grain, body }: Member): Motion {
  const x = unit(grain);
  const up: Vec3 = Math.abs(x[2]) < 0.7 ? [0, 0, 1] : [0, 1, 0];
  const z = unit(squareTo(up, x));
  const y = cross(z, x);
  const least = (axis: Vec3) =>
    Math.min(...body.pieces.flatMap((piece) => piece.points.map((p) => dot(axis, p))));
  return inverse({ rotation: [x, y, z], shift: [-least(x), -least(y), -least(z)] });
}
