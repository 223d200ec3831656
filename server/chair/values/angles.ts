import type { AngleDesign, AngleTerm, PartRef } from "../../design/design.ts";
import { moveDirection } from "../../geometry/motion.ts";
import type { Vec3 } from "../../geometry/solid.ts";
import { along, angleBetween, cross, dot, negate, norm, sub, unit } from "../../geometry/vec.ts";
import type { Chair, Post, Rail } from "../chair.ts";
import { centreAt } from "../posts/post-query.ts";

type Standing = Pick<Chair, "posts" | "rails" | "slats" | "seat" | "stance">;

/** What one side of an angle comes to as the chair stands. */
type Term =
  | { is: "surface"; normal: Vec3 }
  /** A line that stands up, taken going up; `x` tells on which side of the chair. */
  | { is: "upright"; run: Vec3; x: number; part: string }
  /** A line that lies, taken from its first end to its second. */
  | { is: "lying"; run: Vec3; part: string; rail: Rail };

/**
 * A declared angle as the chair stands, radians; undefined when something it speaks of is not there, or vanishes in the view asked for.
 *
 * - Two lines: the true angle between them, 0 to π; posts and slats taken going up, rails from first to second end, but away from a
 *   post they enter.
 * - A post or slat and a surface: the lean from square, positive leaning back going up (seen from the front: the foot further out).
 * - A rail and a surface: the angle between, positive when it falls going back (a rail that goes across: to its second end).
 * - Two surfaces: how much the first falls to the back against the second.
 */
export function angleOf(chair: Standing, design: AngleDesign): number | undefined {
  const terms = design.between?.value;
  if (!terms) return undefined;
  const a = termOf(chair, terms[0]);
  const b = termOf(chair, terms[1]);
  if (!a || !b) return undefined;
  const seen = design.seenFrom?.value;
  if (a.is === "surface" && b.is === "surface") return slopeBetween(a.normal, b.normal);
  if (a.is === "surface") return b.is === "surface" ? undefined : toSurface(b, a.normal, seen);
  if (b.is === "surface") return toSurface(a, b.normal, seen);
  return betweenLines(a, b, seen);
}

type LineTerm = Exclude<Term, { is: "surface" }>;
type SeenFrom = "side" | "front" | "above" | undefined;

function betweenLines(a: LineTerm, b: LineTerm, seen: SeenFrom): number | undefined {
  const u = asSeen(awayFrom(a, b), seen);
  const v = asSeen(awayFrom(b, a), seen);
  return u && v && angleBetween(u, v);
}

/** A rail that enters the other part runs away from it. */
function awayFrom(line: LineTerm, other: LineTerm): Vec3 {
  return line.is === "lying" && line.rail.ends[1].entered?.name === other.part ? negate(line.run) : line.run;
}

/** A direction as it looks from one side; undefined when it points at the eye. */
function asSeen(v: Vec3, seen: SeenFrom): Vec3 | undefined {
  const [x, y, z] = v;
  const flat: Vec3 =
    seen === "side" ? [0, y, z] : seen === "front" ? [x, 0, z] : seen === "above" ? [x, y, 0] : v;
  return norm(flat) > 1e-9 ? unit(flat) : undefined;
}

function toSurface(line: LineTerm, normal: Vec3, seen: SeenFrom): number | undefined {
  const n = asSeen(normal, seen);
  const run = asSeen(line.run, seen);
  // From above a surface is not seen on edge, so there is no angle to it.
  if (!n || !run || seen === "above") return undefined;
  if (line.is === "lying") {
    const back = Math.abs(run[1]) > 0.1 && run[1] < 0 ? negate(run) : run;
    return Math.atan2(-dot(back, n), norm(along(back, n, -dot(back, n))));
  }
  const up = dot(run, n) < 0 ? negate(run) : run;
  const lean = angleBetween(up, n);
  const positive = seen === "front" ? -up[0] * Math.sign(line.x) : dot(up, unit(cross(n, [1, 0, 0])));
  return positive < -1e-12 ? -lean : lean;
}

function slopeBetween(a: Vec3, b: Vec3): number {
  const angle = angleBetween(a, b);
  return a[1] - b[1] < 0 ? -angle : angle;
}

function termOf(chair: Standing, term: AngleTerm): Term | undefined {
  if (term.is === "floor") return { is: "surface", normal: [0, 0, 1] };
  const standing = (v: Vec3) => moveDirection(chair.stance, v);
  if (term.is === "seat") {
    return chair.seat && { is: "surface", normal: standing(chair.seat.plane.normal) };
  }
  const post = partOf(chair.posts, term.part);
  if (post) {
    const run = stretchOf(post, term.above, term.below);
    return run && { is: "upright", run: standing(run), x: post.foot[0], part: post.name };
  }
  const slat = partOf(chair.slats, term.part);
  if (slat) {
    const run = slat.along[2] < 0 ? negate(slat.along) : slat.along;
    return { is: "upright", run: standing(run), x: slat.start[0], part: slat.name };
  }
  const rail = partOf(chair.rails, term.part);
  return rail && { is: "lying", run: standing(rail.along), part: rail.name, rail };
}

/** The straight of a post's centre line between two heights as drawn, or from its foot, or to its top. */
function stretchOf(post: Post, above: number | undefined, below: number | undefined): Vec3 | undefined {
  const from = above === undefined ? post.foot : centreAt(post, above);
  const to = below === undefined ? post.top : centreAt(post, below);
  const run = sub(to, from);
  return run[2] > 1e-6 ? unit(run) : undefined;
}

/** A part by its name; of a pair the left one, of a row the first. */
export function partOf<T>(parts: ReadonlyMap<string, T>, ref: PartRef): T | undefined {
  if (ref.side) return parts.get(`${ref.name}.${ref.side}`);
  for (const tail of ["", ".left", ".1", ".1.left"]) {
    const part = parts.get(ref.name + tail);
    if (part) return part;
  }
  return undefined;
}
