import type { Design, SeatDesign } from "../../design/design.ts";
import { partName, SEAT } from "../../design/identity.ts";
import { flipped, offsetBy } from "../../geometry/plane.ts";
import type { Vec3 } from "../../geometry/solid.ts";
import { along, between, sub, unit } from "../../geometry/vec.ts";
import type { Post, Rail, SeatSurface } from "../chair.ts";
import { bearingPlane, seatFrame } from "./seat-frame.ts";
import type { SeatLayer } from "./seat-layer.ts";
import { outlineOf, type Reach } from "./seat-outline.ts";
import { type Rest, restOf } from "./seat-rest.ts";
import { outlineOfRing, planeOfRing, ringOf } from "./seat-ring.ts";
import { seatBody } from "./seat-solid.ts";

/**
 * The sitting surface: the plane through the middles of the tops of its front and back rails, level across the chair, raised by `proud`
 * square to itself; its outline; its body.
 *
 * A board, an upholstered and a woven seat reach over the rails to their outside faces, and past them by the overhang. A drop-in seat
 * that stands proud reaches to the middle of the rails' thickness, one that does not to their inside faces. What lies below the
 * rails' tops fits between them. One that rests on strips, in rebates or in grooves lies as high as those put it. Undefined when the rails it lies on give no plane or no outline.
 */
export function buildSeat(
  design: Design,
  rails: ReadonlyMap<string, Rail>,
  posts: Iterable<Post>,
): SeatSurface | undefined {
  const seat = design.seat;
  if (!seat || seat.solid) return undefined;
  const frame = seatFrame(
    seat.on.map((given) => given.value),
    rails,
  );
  const round = ringOf(frame);
  const rest = restOf(seat, [...frame.front, ...frame.back, ...frame.sides]);
  const bearing = round ? planeOfRing(round, rest?.drop) : bearingPlane(frame, rest?.drop);
  if (!bearing) return undefined;
  const proud = rest?.rise ?? proudOf(seat);
  const plane = offsetBy(bearing, proud);
  const outlined = (reach: Reach) =>
    round ? outlineOfRing(seat, round, plane, reach) : outlineOf(seat, frame, plane, reach);
  const thick = seat.thick?.value ?? 0;
  const slabs = rest?.slabs ?? onRails(seat, proud, thick);
  const layers = slabs.flatMap(({ reach, from, to }): SeatLayer[] => {
    const made = outlined(reach);
    return made ? [{ outline: made, from, to }] : [];
  });
  const outline = layers[0]?.outline ?? outlined(rest?.slabs[0]?.reach ?? reachOf(seat, proud));
  if (!outline) return undefined;
  const clearance = rest?.clearance ?? 0;
  const [front, back] = [edgeOf(outline.front), edgeOf(outline.back)];
  const middle = (point: Vec3) => along(point, plane.normal, -thick / 2);
  return {
    is: "seat",
    id: SEAT,
    name: partName(SEAT),
    side: SEAT.side,
    design: seat,
    ...(seat.timber && { timber: seat.timber.value }),
    plane,
    outline: outline.ring,
    front,
    back,
    body: seatBody(layers, plane, posts, clearance),
    layers,
    clearance,
    centreLine: [middle(front.middle), middle(back.middle)],
    grain: unit(sub(back.middle, front.middle)),
    faces: [
      { name: "top", plane },
      { name: "bottom", plane: flipped(offsetBy(plane, -thick)) },
    ],
  };
}

/** The slabs of a seat on its rails' tops: what lies above those reaches over them, what lies below fits between. */
function onRails(seat: SeatDesign, proud: number, thick: number): Rest["slabs"] {
  const above = Math.min(thick, Math.max(0, proud));
  return [
    ...(above > 0 ? [{ from: 0, to: above, reach: reachOf(seat, proud) }] : []),
    ...(thick > above ? [{ from: above, to: thick, reach: "inside" as const }] : []),
  ];
}

/** How far the sitting surface lies above the rails: a board or woven seat as much as it is thick, unless the text says otherwise. */
function proudOf(seat: SeatDesign): number {
  if (seat.proud && !seat.proud.assumed) return seat.proud.value;
  const ownThick = seat.kind === "board" || seat.kind === "woven" ? seat.thick?.value : undefined;
  return ownThick ?? seat.proud?.value ?? 0;
}

const reachOf = (seat: SeatDesign, proud: number): Reach =>
  seat.kind !== "drop-in" ? "outside" : proud > 0 ? "middle" : "inside";

function edgeOf(points: Vec3[]): SeatSurface["front"] {
  const left = points[0]!;
  const right = points[points.length - 1]!;
  const half = (points.length - 1) / 2;
  const middle = between(points[Math.floor(half)]!, points[Math.ceil(half)]!, 0.5);
  return { left, middle, right };
}
