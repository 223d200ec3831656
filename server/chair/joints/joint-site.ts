import { flipped, lineMeets } from "../../geometry/plane.ts";
import type { Plane, Vec3 } from "../../geometry/solid.ts";
import { along, between, cross, dot, negate, scale, squareTo, sub, unit } from "../../geometry/vec.ts";
import { nearestOnBow } from "../bows/bow.ts";
import type { Bow, Entered, Member, Post, Rail, SeatSurface } from "../chair.ts";
import { shapeOf } from "../rails/rail-outline.ts";
import { underFace } from "../seat/solid/leg.ts";
import { backwardOf } from "../seat/solid/on-face.ts";
import { isOnPlan } from "../seat/solid/within.ts";
import { bowEnd } from "./bow-host.ts";
import { hostOf, woodOf } from "./hosting.ts";
import type { ChosenJoint } from "./joint-facts.ts";
import { stuffAcross, type Wood } from "./wood.ts";

/** An end that is to be joined: its stuff at the shoulder, and what it goes into. */
export interface JointSite {
  part: string;
  end: string;
  /** What kind of part has the tenon. */
  kind: "rail" | "slat" | "stick" | "bow" | "post";
  entered: Entered;
  chosen: ChosenJoint;
  /** Middle of the part's section where its stuff meets the shoulder. */
  origin: Vec3;
  /** Unit: along the part into the member entered, out of its outside face, up its width. */
  inward: Vec3;
  out: Vec3;
  up: Vec3;
  /** Size of the stuff along `out` and `up` at the shoulder, mm. */
  thick: number;
  wide: number;
  /** Its thickness square to its faces, mm: a bowed part's shoulder cuts its curve a little aslant. */
  stuff: number;
  /** Diameter of turned stuff. */
  round?: number;
  /** Rise of a bowed part towards one of its two directions, and its straight length. */
  bow?: { rise: number; length: number; towards: "out" | "up" };
  /** The face entered, looking out of the member entered. */
  shoulder: Plane;
  /** The wood of the member entered, and of the part itself. */
  wood: Wood;
  own: Wood;
}

/** The site of a rail's or slat's end, or undefined for one that enters nothing or lies over its post. */
export function siteOfEnd(
  rail: Rail,
  which: 0 | 1,
  chosen: ChosenJoint,
  member: Member | undefined,
): JointSite | undefined {
  const end = rail.ends[which];
  if (!end.entered || !end.shoulder || end.over || !member) return undefined;
  const shape = shapeOf(rail);
  const x = which === 0 ? 0 : rail.length;
  const [outside, inside, top, bottom] = [shape.outside(x), shape.inside(x), shape.top(x), shape.bottom(x)];
  const size = { out: outside - inside, up: top - bottom };
  const middle = spotOn(rail, x, (outside + inside) / 2, (top + bottom) / 2);
  const origin = lineMeets(end.shoulder, middle, rail.along) ?? middle;
  const tapered = rail.is === "rail" && "tapers" in rail.design && rail.design.tapers.length > 0;
  // A member that lies flat has its thickness plumb; its outside edge counts as its top.
  const flat = rail.flat === true;
  const site: JointSite = {
    part: rail.name,
    end: end.name,
    kind: rail.is,
    entered: end.entered,
    chosen,
    origin,
    inward: which === 0 ? negate(rail.along) : rail.along,
    out: flat ? rail.upward : rail.outward,
    up: flat ? rail.outward : rail.upward,
    thick: flat ? size.up : size.out,
    wide: flat ? size.out : size.up,
    stuff: flat ? size.up : rail.bow && !tapered ? rail.thick : size.out,
    shoulder: end.shoulder,
    wood:
      member.is === "bow"
        ? hostOf(member, nearestOnBow(member, origin, rail.along).s).wood(origin)
        : woodOf(member, origin),
    own: woodOf(rail, origin),
  };
  if (rail.round !== undefined) site.round = size.out;
  if (rail.bow) site.bow = { rise: rail.bow, length: rail.length, towards: flat ? "up" : "out" };
  return site;
}

/** A point in a rail's own measure: along it, outward from its outside arris, up from its top one. */
const spotOn = (rail: Rail, x: number, y: number, z: number): Vec3 =>
  along(along(along(rail.start, rail.along, x), rail.outward, y), rail.upward, z);

/**
 * The site of a post's top that goes up into a rail over it: `thick` is across the rail and `wide` along it, the top shoulder on the
 * side away from the rail's middle.
 */
export function siteOfTop(post: Post, cut: Plane, chosen: ChosenJoint, rail: Rail): JointSite | undefined {
  const away = dot(sub(post.top, between(rail.start, rail.end, 0.5)), rail.along) < 0 ? -1 : 1;
  return siteAtPostEnd(post, "top", flipped(cut), chosen, rail, {
    up: scale(rail.along, away),
    out: rail.outward,
  });
}

/** The site of a leg's top in a solid seat: `thick` is across the seat and `wide` fore and aft. */
export function siteInSeat(post: Post, chosen: ChosenJoint, seat: SeatSurface): JointSite | undefined {
  const out: Vec3 = [post.side === "right" ? -1 : 1, 0, 0];
  const { onSeat } = post.design;
  if (seat.plan && !isOnPlan(seat, onSeat ? post.foot : post.top)) return undefined;
  const look = { up: backwardOf(seat.plane), out };
  if (onSeat) return siteAtPostEnd(post, "foot", seat.plane, chosen, seat, look);
  return siteAtPostEnd(post, "top", flipped(underFace(seat)), chosen, seat, look);
}

/** The site of a post's top that goes into a bow at a place along it: `wide` is along the bow. */
export function siteInBow(
  post: Post,
  cut: Plane,
  chosen: ChosenJoint,
  bow: Bow,
  s: number,
): JointSite | undefined {
  const up = bow.way(s);
  return siteAtPostEnd(post, "top", flipped(cut), chosen, bow, { up, out: cross(up, bow.normal) });
}

/** The site of a hoop's foot in a solid seat: `thick` is in its plane and `wide` square to it. */
export function siteOfFoot(
  bow: Bow,
  which: 0 | 1,
  chosen: ChosenJoint,
  seat: SeatSurface,
): JointSite | undefined {
  const { at, out: inward } = bowEnd(bow, which);
  if (seat.plan && !isOnPlan(seat, at)) return undefined;
  const { thick, wide } = bow.sizeAt(which === 0 ? 0 : bow.path.length);
  const across = cross(inward, bow.normal);
  return {
    part: bow.name,
    end: which === 0 ? "left" : "right",
    kind: "bow",
    entered: { kind: "seat", name: seat.name },
    chosen,
    origin: at,
    inward,
    out: across[0] < 0 === (which === 0) ? negate(across) : across,
    up: bow.normal,
    thick,
    wide,
    stuff: thick,
    ...(bow.round !== undefined && { round: thick }),
    shoulder: seat.plane,
    wood: woodOf(seat, at),
    own: woodOf(bow, at),
  };
}

/** The site of one end of a post; `shoulder` is the face it enters, looking out of the member entered. */
function siteAtPostEnd(
  post: Post,
  end: "foot" | "top",
  shoulder: Plane,
  chosen: ChosenJoint,
  into: Rail | Bow | SeatSurface,
  look: { up: Vec3; out: Vec3 },
): JointSite | undefined {
  const piece = end === "top" ? post.pieces[post.pieces.length - 1] : post.pieces[0];
  if (!piece || Math.abs(dot(piece.direction, look.up)) > 0.99) return undefined;
  const inward = end === "top" ? piece.direction : negate(piece.direction);
  const [at, radius] = end === "top" ? [post.top, piece.radii?.[1]] : [post.foot, piece.radii?.[0]];
  const up = unit(squareTo(look.up, inward));
  const across = unit(cross(inward, up));
  const out = dot(across, look.out) < 0 ? negate(across) : across;
  const span = (across: Vec3): [number, number] =>
    radius !== undefined ? [-radius, radius] : stuffAcross(piece.solid, inward, at, across);
  const [inside, outside] = span(out);
  const [bottom, top] = span(up);
  // Not the centre line where one face was kept straight.
  const middle = along(along(at, out, (inside + outside) / 2), up, (bottom + top) / 2);
  const origin = lineMeets(shoulder, middle, inward) ?? middle;
  return {
    part: post.name,
    end,
    kind: "post",
    entered: { kind: into.is, name: into.name },
    chosen,
    origin,
    inward,
    out,
    up,
    thick: outside - inside,
    wide: top - bottom,
    stuff: outside - inside,
    ...(radius !== undefined ? { round: 2 * radius } : {}),
    shoulder,
    wood:
      into.is === "bow"
        ? hostOf(into, nearestOnBow(into, origin, inward).s).wood(origin)
        : woodOf(into, origin),
    own: woodOf(post, origin),
  };
}
