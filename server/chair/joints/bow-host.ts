import { prism } from "../../geometry/convex.ts";
import { height, planeAt } from "../../geometry/plane.ts";
import type { Convex, Plane, Vec3 } from "../../geometry/solid.ts";
import { along, cross, dot, negate, norm, scale, squareTo, sub, unit } from "../../geometry/vec.ts";
import type { Bow } from "../chair.ts";
import { fallBackOf, type Host } from "./host.ts";
import { squaredWood, turnedWood } from "./wood.ts";

/** A bow met at `s` mm along its centre line from the left: as if it went straight on from there both ways. */
export function bowHost(bow: Bow, s: number): Host {
  const held = Math.min(bow.path.length, Math.max(0, s));
  const middle = bow.spot(held);
  const run = bow.way(held);
  const out = cross(run, bow.normal);
  const { thick, wide } = bow.sizeAt(held);
  const radius = thick / 2;
  const { pieces } = bow.body;
  const faces: Plane[] = [
    planeAt(along(middle, out, thick / 2), out),
    planeAt(along(middle, out, -thick / 2), negate(out)),
    planeAt(along(middle, bow.normal, wide / 2), bow.normal),
    planeAt(along(middle, bow.normal, -wide / 2), negate(bow.normal)),
  ];
  const up: Vec3 = Math.abs(run[2]) > 0.1 ? run : [0, 0, 1];
  return {
    entered: { kind: "bow", name: bow.name },
    pieces,
    wood: () =>
      bow.round === undefined
        ? squaredWood([straightOn(middle, run, out, bow.normal, thick, wide)], run)
        : turnedWood(run, { axis: middle, radius }),
    middleHeight: middle[2],
    centre: () => middle,
    chord: () => (up[2] < 0 ? negate(up) : up),
    face: (look, _around, but) => {
      if (bow.round !== undefined) {
        const normal = unit(squareTo(look, run));
        return planeAt(along(middle, normal, radius), normal);
      }
      return faces
        .filter((face) => !but || dot(face.normal, but.normal) < 0.999)
        .reduce((best, face) => (dot(face.normal, look) > dot(best.normal, look) ? face : best));
    },
    check: (corners, shoulder) => {
      let off = Number.NEGATIVE_INFINITY;
      for (const corner of corners) {
        if (bow.round === undefined) {
          for (const face of faces)
            if (dot(face.normal, shoulder.normal) < 0.7) off = Math.max(off, height(face, corner));
        } else {
          const across = squareTo(squareTo(sub(corner, middle), run), shoulder.normal);
          off = Math.max(off, norm(across) - radius);
        }
      }
      const along = corners.map((corner) => dot(sub(corner, middle), run));
      const gap = Math.max(-Math.max(...along) - held, Math.min(...along) - (bow.path.length - held));
      return gap > 0 ? { off: 0, gap } : { off };
    },
    fallBack: (half) => (bow.round === undefined ? 0 : fallBackOf(radius, half)),
  };
}

/** How far its stuff is taken to run straight on either way, mm. */
const RUN_ON = 100;

/** A bow's stuff where it is met, running straight on both ways. */
function straightOn(at: Vec3, run: Vec3, out: Vec3, normal: Vec3, thick: number, wide: number): Convex {
  const ring = (x: number): Vec3[] =>
    [
      [thick / 2, wide / 2],
      [-thick / 2, wide / 2],
      [-thick / 2, -wide / 2],
      [thick / 2, -wide / 2],
    ].map(([o, n]) => along(along(along(at, run, x), out, o!), normal, n!));
  return prism(ring(-RUN_ON), ring(RUN_ON));
}

/** The place along a bow that is so far from the end on one side. */
export const stationOnBow = (bow: Bow, from: number, side: "left" | "right" | "middle"): number =>
  side === "right" ? bow.path.length - from : from;

/** Where a bow's foot or hand is, and the unit way out of it there. */
export function bowEnd(bow: Bow, which: 0 | 1): { at: Vec3; out: Vec3 } {
  const s = which === 0 ? 0 : bow.path.length;
  return { at: bow.spot(s), out: which === 0 ? scale(bow.way(0), -1) : bow.way(bow.path.length) };
}
