/**
 * A leg in a solid seat: where its line goes, and how that lies to the seat's face.
 */
import type { LegWay, PostDesign } from "../../../design/design.ts";
import { flipped, lineMeets, offsetBy } from "../../../geometry/plane.ts";
import type { Plane, Vec3 } from "../../../geometry/solid.ts";
import { add, along, cross, dot, negate, scale, sub, unit } from "../../../geometry/vec.ts";
import type { Bow, Post, Rail, SeatSurface, Side } from "../../chair.ts";
import { bowHost, stationOnBow } from "../../joints/bow-host.ts";
import type { PostEnds } from "../../posts/post.ts";
import { backwardOf } from "./on-face.ts";

/** The under face of a solid seat, looking up. */
export const underFace = ({ plane, design }: Pick<SeatSurface, "plane" | "design">): Plane =>
  offsetBy(plane, -(design.thick?.value ?? 0));

/** Where a leg's centre line crosses the face that it is placed by, as drawn. */
export function placeInSeat(seat: SeatSurface, design: PostDesign, side: Side): Vec3 | undefined {
  const place = (design.intoSeat ?? design.onSeat)?.value;
  if (!place) return undefined;
  const onTop = design.onSeat !== undefined || design.intoSeat?.value.above === true;
  const face = onTop ? seat.plane : underFace(seat);
  return lineMeets(face, [side === "right" ? -place.out : place.out, place.back, 0], [0, 0, 1]);
}

/** How the post of a leg is built: up to the seat's under face, from its place there down to the floor. */
export function endsOfLeg(seat: SeatSurface, design: PostDesign, side: Side): PostEnds | undefined {
  const at = placeInSeat(seat, design, side);
  const place = design.intoSeat?.value;
  if (!at || !place) return undefined;
  const lean = leanOf(design.way?.value, seat, at, side);
  const under = underFace(seat);
  return {
    top: under,
    // A first guess where the place is on the top face, until the line itself tells.
    topHeight: at[2],
    place: { station: at[2], out: place.out, back: place.back },
    ...(lean && { lean }),
  };
}

/**
 * How the foot of a post that stands on the seat is cut: to the seat's top, at its place there. One whose top goes into a bow runs straight to
 * its place in that and is cut to its surface.
 */
export function endsOnSeat(seat: SeatSurface, design: PostDesign, side: Side, bow?: Bow): PostEnds {
  const at = placeInSeat(seat, design, side);
  if (!at || !design.onSeat) return {};
  const { out, back } = design.onSeat.value;
  const ends: PostEnds = { foot: seat.plane, footHeight: at[2], place: { station: at[2], out, back } };
  if (!bow || !design.topBow) return ends;
  const s = stationOnBow(bow, design.topBow.value.at, side);
  const middle = bow.spot(s);
  const way = unit(sub(middle, at));
  const face = bowHost(bow, s).face(negate(way), middle);
  const top = lineMeets(face, middle, way);
  if (!top) return ends;
  const sign = side === "right" ? -1 : 1;
  const lean = { splay: Math.atan2(-sign * way[0], way[2]), rake: Math.atan2(way[1], way[2]) };
  return { ...ends, top: flipped(face), topHeight: top[2], lean };
}

/** The splay and rake, as a post's bare ones are, that lead to a foot or lie so to the seat's face. */
function leanOf(way: LegWay | undefined, seat: SeatSurface, at: Vec3, side: Side): PostEnds["lean"] {
  if (!way) return undefined;
  const sign = side === "right" ? -1 : 1;
  const down =
    way.is === "foot"
      ? ([sign * way.out - at[0], way.back - at[1], -at[2]] as Vec3)
      : wayDown(seat.plane, way.lean, way.sightLine, sign);
  return { splay: Math.atan2(sign * down[0], -down[2]), rake: Math.atan2(-down[1], -down[2]) };
}

/** Unit, from the seat to the foot: by its lean from square to the face, and its direction in the face. */
function wayDown(plane: Plane, lean: number, sightLine: number, sign: 1 | -1): Vec3 {
  const inFace = add(scale(backwardOf(plane), Math.cos(sightLine)), scale([sign, 0, 0], Math.sin(sightLine)));
  return along(scale(negate(plane.normal), Math.cos(lean)), inFace, Math.sin(lean));
}

/** How a leg lies to the seat that it goes into, radians; undefined of a post that is no leg. */
export interface SeatLean {
  /** Between its line and square to the face. */
  lean: number;
  /** In the face, from straight back to the way its far end leans, towards its own side. */
  sightLine: number;
}

/**
 * The lean and the sight line of a leg, a post, a stick or a hoop (its left foot) in a solid seat, as drawn: a trim turns seat and legs together. They are of
 * its straight at the seat. Undefined of a part that is not let into one.
 */
export function seatLeanOf(seat: SeatSurface | undefined, part: Post | Rail | Bow): SeatLean | undefined {
  const away = wayFromSeat(part);
  if (!seat || !away) return undefined;
  const { normal } = seat.plane;
  const sign = part.side === "right" ? -1 : 1;
  const inFace = (way: Vec3): number => {
    const part = dot(away, way);
    return Math.abs(part) < LEVEL ? 0 : part;
  };
  const [back, out] = [inFace(backwardOf(seat.plane)), inFace([sign, 0, 0])];
  return {
    lean: Math.atan2(Math.hypot(...cross(normal, away)), Math.abs(dot(normal, away))),
    sightLine: Math.atan2(out, back),
  };
}

/** A lean one way of less than this is none, as a sine. */
const LEVEL = 1e-9;

/** Unit, from the seat along a part that is let into it. */
export function wayFromSeat(part: Post | Rail | Bow): Vec3 | undefined {
  if (part.is === "bow") return part.design.feet && part.way(0);
  if (part.is !== "post") return part.is === "stick" ? part.along : undefined;
  const { intoSeat, onSeat } = part.design;
  if (intoSeat) {
    const last = part.pieces[part.pieces.length - 1];
    return last && negate(last.direction);
  }
  return onSeat && part.pieces[0]?.direction;
}
