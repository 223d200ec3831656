import { height, planeAt } from "../../geometry/plane.ts";
import type { Plane, Vec3 } from "../../geometry/solid.ts";
import { along, dot, norm, squareTo, sub, unit } from "../../geometry/vec.ts";
import type { Rail } from "../chair.ts";
import { shapeOf } from "../rails/rail-outline.ts";
import { fallBackOf, type Host } from "./host.ts";
import { squaredWood, turnedWood } from "./wood.ts";

/** A rail met at `x` mm from its first shoulder. */
export function railHost(rail: Rail, x: number): Host {
  const shape = shapeOf(rail);
  const spot = (y: number, z: number): Vec3 =>
    along(along(along(rail.start, rail.along, x), rail.outward, y), rail.upward, z);
  const outside = shape.outside(x);
  const inside = shape.inside(x);
  const top = shape.top(x);
  const bottom = shape.bottom(x);
  const middle = spot((outside + inside) / 2, (top + bottom) / 2);
  const slope = (f: (x: number) => number) => (f(x + 0.01) - f(x - 0.01)) / 0.02;
  const plane = (f: (x: number) => number, out: Vec3, at: Vec3): Plane =>
    planeAt(at, along(out, rail.along, -slope(f) * sign(out)));
  const sign = (out: Vec3) => (dot(out, rail.outward) + dot(out, rail.upward) > 0 ? 1 : -1);
  const negative = (v: Vec3): Vec3 => [-v[0], -v[1], -v[2]];
  const faces: Plane[] = [
    plane(shape.outside, rail.outward, spot(outside, (top + bottom) / 2)),
    plane(shape.inside, negative(rail.outward), spot(inside, (top + bottom) / 2)),
    plane(shape.top, rail.upward, spot((outside + inside) / 2, top)),
    plane(shape.bottom, negative(rail.upward), spot((outside + inside) / 2, bottom)),
  ];
  const radius = (outside - inside) / 2;
  // Its notches take nothing from the wood that its ends and mortises are cut in.
  const { pieces } = rail.uncut ?? rail.body;
  return {
    entered: { kind: rail.is, name: rail.name },
    pieces,
    wood: () =>
      rail.round === undefined
        ? squaredWood(pieces, rail.along)
        : turnedWood(rail.along, { axis: rail.start, radius: rail.round / 2 }),
    middleHeight: middle[2],
    centre: (z) =>
      along(
        middle,
        rail.upward,
        (z - middle[2]) / (Math.abs(rail.upward[2]) > 0.1 ? rail.upward[2] : Infinity),
      ),
    chord: () => (rail.upward[2] < 0 ? negative(rail.upward) : rail.upward),
    face: (look, _around, but) => {
      if (shape.round) {
        const normal = unit(squareTo(look, rail.along));
        return planeAt(along(middle, normal, radius), normal);
      }
      return faces
        .filter((face) => !but || dot(face.normal, but.normal) < 0.999)
        .reduce((best, face) => (dot(face.normal, look) > dot(best.normal, look) ? face : best));
    },
    check: (corners, shoulder) => {
      const ends = corners.map((c) => dot(sub(c, rail.start), rail.along));
      let off = Math.max(-Math.min(...ends), Math.max(...ends) - rail.length);
      for (const corner of corners) {
        if (shape.round) {
          const across = squareTo(squareTo(sub(corner, middle), rail.along), shoulder.normal);
          off = Math.max(off, norm(across) - radius);
        } else {
          for (const face of faces)
            if (dot(face.normal, shoulder.normal) < 0.7) off = Math.max(off, height(face, corner));
        }
      }
      const gap = Math.max(Math.min(...ends) - rail.length, -Math.max(...ends));
      return gap > 0 ? { off: 0, gap } : { off };
    },
    fallBack: (half) => (shape.round ? fallBackOf(radius, half) : 0),
  };
}
