/**
 * The ends of posts and what lies near them.
 */
import type { Chair, Joint, Post } from "../../chair/chair.ts";
import { kept } from "../../chair/kept.ts";
import { reachIn } from "../../geometry/convex.ts";
import { height } from "../../geometry/plane.ts";
import type { Convex, Plane } from "../../geometry/solid.ts";
import { dot, negate } from "../../geometry/vec.ts";

interface NearEnd {
  end: "top" | "foot";
  /** Wood between the mortise and the post's end as cut, at the least, mm. */
  wood: number;
}

/** How much wood there is above a rail's mortise to the post's top, or below it to the foot, whichever is less. */
export const nearEnd = (chair: Chair, joint: Joint): NearEnd | undefined => kept(chair, nearEnds).get(joint);

function nearEnds(chair: Chair): Map<Joint, NearEnd> {
  const planes = new Map<string, { top?: Plane; foot?: Plane }>();
  const found = new Map<Joint, NearEnd>();
  for (const joint of chair.joints.values()) {
    const post = chair.posts.get(joint.entered.name);
    if (!post || joint.tenon.length === 0) continue;
    let ends = planes.get(post.name);
    if (!ends) {
      ends = endPlanes(post);
      planes.set(post.name, ends);
    }
    const above = ends.top ? woodTo(ends.top, joint.tenon) : Number.POSITIVE_INFINITY;
    const below = ends.foot ? woodTo(ends.foot, joint.tenon) : Number.POSITIVE_INFINITY;
    found.set(joint, above <= below ? { end: "top", wood: above } : { end: "foot", wood: below });
  }
  return found;
}

/** The planes a post's ends are cut to, looking out of it. */
function endPlanes(post: Post): { top?: Plane; foot?: Plane } {
  const [top, foot] = [endPlane(post, "top"), endPlane(post, "foot")];
  return { ...(top ? { top } : {}), ...(foot ? { foot } : {}) };
}

function endPlane({ body, pieces }: Post, end: "top" | "foot"): Plane | undefined {
  const along = (end === "top" ? pieces.at(-1) : pieces[0])?.direction;
  if (!along) return undefined;
  const out = end === "top" ? along : negate(along);
  let last: Convex | undefined;
  let furthest = Number.NEGATIVE_INFINITY;
  for (const piece of body.pieces) {
    const reach = reachIn(piece, out);
    if (reach > furthest) {
      furthest = reach;
      last = piece;
    }
  }
  return last?.planes.find(({ normal }) => dot(normal, out) > Math.SQRT1_2);
}

const woodTo = (plane: Plane, solids: readonly Convex[]): number =>
  Math.min(...solids.flatMap(({ points }) => points.map((point) => -height(plane, point))));
