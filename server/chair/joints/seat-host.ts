import { height, planeAt } from "../../geometry/plane.ts";
import type { Plane, Vec3 } from "../../geometry/solid.ts";
import { along, between, cross, dot, squareTo, sub, unit } from "../../geometry/vec.ts";
import type { SeatSurface } from "../chair.ts";
import type { Host } from "./host.ts";
import { seatWood } from "./seat-wood.ts";

/** A face is looked at rather than an edge when the cosine between is beyond this. */
const MOSTLY = Math.SQRT1_2;

/** A seat as a host: its top, its underside, or its edge as it runs nearest. */
export function seatHost(seat: SeatSurface): Host {
  const { outline, plane } = seat;
  const middle = between(seat.front.middle, seat.back.middle, 0.5);
  return {
    entered: { kind: "seat", name: seat.name },
    pieces: seat.body.pieces,
    wood: () => seatWood(seat),
    centre: (z) => along(middle, plane.normal, (z - middle[2]) / plane.normal[2]),
    chord: () => plane.normal,
    face: (look, around) => {
      const flat = seat.faces.find((face) => dot(face.plane.normal, look) > MOSTLY);
      return flat?.plane ?? edgeNear(outline, plane.normal, around);
    },
    check: (corners, shoulder) => {
      const sides =
        Math.abs(dot(shoulder.normal, plane.normal)) > MOSTLY
          ? edgesOf(outline, plane.normal)
          : seat.faces.map((face) => face.plane);
      return { off: Math.max(...corners.flatMap((corner) => sides.map((side) => height(side, corner)))) };
    },
    fallBack: () => 0,
  };
}

/** The planes of the outline's straight stretches, looking out. */
function edgesOf(outline: readonly Vec3[], up: Vec3): Plane[] {
  return outline.map((a, k) => planeAt(a, unit(cross(sub(outline[(k + 1) % outline.length]!, a), up))));
}

function edgeNear(outline: readonly Vec3[], up: Vec3, around: Vec3): Plane {
  const edges = edgesOf(outline, up);
  const middles = outline.map((a, k) => between(a, outline[(k + 1) % outline.length]!, 0.5));
  const away = (k: number) => {
    const off = squareTo(sub(around, middles[k]!), up);
    return dot(off, off);
  };
  const best = edges.reduce((least, _, k) => (away(k) < away(least) ? k : least), 0);
  return edges[best]!;
}
