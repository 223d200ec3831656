/**
 * How far a chair's back leans from square to its seat, and where the text says so: for the rules about rake.
 */

import type { Chair, Post } from "../../chair/chair.ts";
import type { AngleDesign, AngleTerm, Given } from "../../design/design.ts";
import { partName } from "../../design/identity.ts";
import { height } from "../../geometry/plane.ts";
import type { Vec3 } from "../../geometry/solid.ts";
import { angleBetween, cross, dot, unit } from "../../geometry/vec.ts";
import { least } from "../machinery/figures.ts";
import type { Candidate } from "../machinery/place.ts";

/** A lean that a rule judges, radians, positive away from the sitter. */
export interface Lean {
  lean: number;
  post: Post;
  /** The facts that decide it, the narrowest first. */
  candidates: (Candidate | undefined)[];
  /** What the maker declared it must keep to; absent when the built-in figures hold. */
  declared?: { angle: AngleDesign; low?: number; high?: number };
}

/** Every lean of a back to judge: the declared ones with a limit, else the upper straight of each back post if the sitter is grown. */
export function leansOf(chair: Chair): Lean[] {
  const declared = [...chair.design.angles.values()].flatMap((angle) => declaredLean(chair, angle) ?? []);
  if (declared.length > 0 || chair.design.sitter.value.is !== "adult") return declared;
  return backPosts(chair).flatMap((post) => {
    const piece = post.pieces[post.pieces.length - 1];
    if (!piece || !chair.seat) return [];
    return [
      { lean: fromSquare(piece.direction, chair.seat.plane.normal), post, candidates: leanFacts(post) },
    ];
  });
}

/** Whether an angle is the lean of a post against the seat, which the rules about rake tell of. */
export function isRake(chair: Chair, angle: AngleDesign): boolean {
  const terms = angle.between?.value ?? [];
  return terms.some((term) => term.is === "seat") && terms.some((term) => postOf(chair, term) !== undefined);
}

function declaredLean(chair: Chair, angle: AngleDesign): Lean | undefined {
  const limit = angle.limit?.value;
  const worked = chair.values.get(angle.name);
  if (!limit || !worked || !isRake(chair, angle)) return undefined;
  const post = angle.between?.value.map((term) => postOf(chair, term)).find((each) => each !== undefined);
  if (!post) return undefined;
  return {
    lean: worked.number,
    post,
    candidates: [...leanFacts(post), angle.limit],
    declared: { angle, ...limit },
  };
}

function postOf(chair: Chair, term: AngleTerm): Post | undefined {
  if (term.is !== "part") return undefined;
  const { name, side } = term.part;
  return (
    chair.posts.get(partName({ stem: name, side: side ?? "middle" })) ??
    chair.posts.get(partName({ stem: name, side: "left" }))
  );
}

/** Posts from the floor (what stands on a solid seat leans as sticks do) that rise well above the seat, nearer its back edge than its middle: the side posts of a corner chair carry arms. */
function backPosts(chair: Chair): Post[] {
  const { seat } = chair;
  if (!seat) return [];
  const rear = (seat.front.middle[1] + 3 * seat.back.middle[1]) / 4;
  return [...chair.posts.values()].filter(
    (post) =>
      !post.design.standsOn &&
      !post.design.onSeat &&
      height(seat.plane, post.top) > least("carries-back") &&
      post.top[1] > rear,
  );
}

/** Signed lean of a line from square to a surface, seen from the side. */
function fromSquare(run: Vec3, normal: Vec3): number {
  const flat = (v: Vec3): Vec3 => unit([0, v[1], v[2]]);
  const lean = angleBetween(flat(run), flat(normal));
  return dot(run, unit(cross(normal, [1, 0, 0]))) < 0 ? -lean : lean;
}

/** What leans the upper stretch of a post: the highest rake or bend seen from the side, else the rake of the whole. */
function leanFacts(post: Post): (Given<unknown> | undefined)[] {
  const upper = post.design.knees
    .filter(({ value }) => value.seen === "side" && value.stretch === "above")
    .sort((a, b) => b.value.height - a.value.height);
  return [...upper, post.design.rake, post.design.place];
}
