import { loft } from "../../geometry/body.ts";
import { planeAt } from "../../geometry/plane.ts";
import type { Body, Convex, Plane, Vec3 } from "../../geometry/solid.ts";
import { along, cross, dot, negate } from "../../geometry/vec.ts";
import { facetRadius, facetsOf } from "../facets.ts";
import { type CornerLine, cutBetween } from "../joints/stuff.ts";
import { facetStations } from "./arc.ts";
import type { RailShape } from "./rail-shape.ts";

interface SweepFrame {
  start: Vec3;
  along: Vec3;
  outward: Vec3;
  upward: Vec3;
  /** The planes that end the stuff, each looking into it. */
  cuts: readonly [Plane, Plane];
}

/** Faces that turn less than this are one curved face, radians. */
const CURVE = (3 * Math.PI) / 180;

/**
 * The body of a rail or slat between its two end planes: slabs square to it from station to station, the end ones cut by the planes.
 * Every face is flat: outlines bend only along the rail.
 */
export function sweep(shape: RailShape, frame: SweepFrame, xs: readonly number[]): Body {
  const at = ringMaker(shape, frame);
  const rings = xs.map(at);
  const pieces: Convex[] = [];
  const outlines: [Vec3[], Vec3[]][] = [];
  const last = xs.length - 2;
  for (let k = 0; k <= last; k++) {
    const lines = rings[k]!.map((p, c): CornerLine => [p, rings[k + 1]![c]!]);
    const from = k === 0 ? frame.cuts[0] : planeAt(along(frame.start, frame.along, xs[k]!), frame.along);
    const to =
      k === last
        ? lookingBack(frame.cuts[1])
        : planeAt(along(frame.start, frame.along, xs[k + 1]!), frame.along);
    const cut = cutBetween(lines, from, to);
    if (!cut) continue;
    pieces.push(cut.solid);
    outlines.push([cut.start, cut.end]);
  }
  if (pieces.length === 0) return { pieces: [], edges: [] };
  return loft(pieces, outlines, { round: shape.round, smoothBelow: CURVE });
}

const lookingBack = (plane: Plane): Plane => ({ normal: negate(plane.normal), offset: -plane.offset });

/** The distances along a rail between which its outline is straight; `clear` is where the whole section stands. */
export function stationsOf(
  shape: RailShape,
  length: number,
  [from, to]: readonly [number, number],
): number[] {
  const inner = [...shape.bends];
  for (const { from: start, arc, chord } of shape.arcs) {
    for (const x of facetStations(arc, chord)) inner.push(start + x);
  }
  // The end slabs reach past their slanting shoulders; no station may stand inside those.
  const kept = inner.filter((x) => x >= from - 1e-9 && x <= to + 1e-9);
  // Where a curve begins right at an end, the full section still has to reach a shoulder that slants out past it.
  const ends =
    shape.bends.length > 0
      ? [from > NEAR ? 0 : -NEAR, to < length - NEAR ? length : length + NEAR]
      : [0, length];
  const inside = kept.filter((x) => x > ends[0]! + 1e-6 && x < ends[1]! - 1e-6).sort((a, b) => a - b);
  const apart = inside.filter((x, k) => k === 0 || x - inside[k - 1]! > 1e-3);
  return [ends[0]!, ...apart, ends[1]!];
}

/** A slab that only carries a section on past an end, mm long. */
const NEAR = 1e-2;

/** Corners of the section at a station, anticlockwise seen from the rail's end. */
function ringMaker(shape: RailShape, frame: SweepFrame): (x: number) => Vec3[] {
  const forward = dot(cross(frame.outward, frame.upward), frame.along) > 0;
  const spot = (x: number, y: number, z: number) =>
    along(along(along(frame.start, frame.along, x), frame.outward, y), frame.upward, z);
  if (shape.round) {
    const facets = facetsOf((shape.outside(0) - shape.inside(0)) / 2);
    return (x) => {
      const middle = (shape.outside(x) + shape.inside(x)) / 2;
      const radius = facetRadius((shape.outside(x) - shape.inside(x)) / 2, facets);
      return Array.from({ length: facets }, (_, k) => {
        const angle = ((forward ? 1 : -1) * 2 * Math.PI * k) / facets;
        return spot(x, middle + radius * Math.cos(angle), radius * Math.sin(angle));
      });
    };
  }
  return (x) => {
    const ring = [
      spot(x, shape.outside(x), shape.top(x)),
      spot(x, shape.inside(x), shape.top(x)),
      spot(x, shape.inside(x), shape.bottom(x)),
      spot(x, shape.outside(x), shape.bottom(x)),
    ];
    return forward ? ring : ring.reverse();
  };
}
