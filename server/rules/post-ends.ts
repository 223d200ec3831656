/**
 * The ends of posts and what lies near them.
 */
import type { Chair, Joint, Post } from "../chair/chair.ts";
import { height } from "../geometry/plane.ts";
import type { Convex, Plane } from "../geometry/solid.ts";
import { dot } from "../geometry/vec.ts";

export interface NearEnd {
  end: "top" | "foot";
  /** Wood between the mortise and the post's end as cut, at the least, mm. */
  wood: number;
}

/** How much wood there is above a rail's mortise to the post's top, or below it to the foot, whichever is less. */
export function nearEnd(chair: Chair, joint: Joint): NearEnd | undefined {
  const post = chair.posts.get(joint.entered.name);
  if (!post) return undefined;
  const [top, foot] = [endPlane(post, "top"), endPlane(post, "foot")];
  const above = top ? woodTo(top, joint.tenon) : Number.POSITIVE_INFINITY;
  const below = foot ? woodTo(foot, joint.tenon) : Number.POSITIVE_INFINITY;
  return above <= below ? { end: "top", wood: above } : { end: "foot", wood: below };
}

/** The plane a post's end is cut to, looking out of it. */
function endPlane(post: Post, end: "top" | "foot"): Plane | undefined {
  const pieces = post.body.pieces;
  const way = end === "top" ? 1 : -1;
  const along = (end === "top" ? post.pieces.at(-1) : post.pieces[0])?.direction;
  if (!along) return undefined;
  let found: Plane | undefined;
  let furthest = Number.NEGATIVE_INFINITY;
  for (const { planes, points } of pieces) {
    for (const plane of planes) {
      if (way * dot(plane.normal, along) < Math.SQRT1_2) continue;
      const reach = Math.max(...points.map((point) => way * dot(point, along)));
      if (reach > furthest) {
        furthest = reach;
        found = plane;
      }
    }
  }
  return found;
}

const woodTo = (plane: Plane, solids: readonly Convex[]): number =>
  Math.min(...solids.flatMap(({ points }) => points.map((point) => -height(plane, point))));
