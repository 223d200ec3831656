/**
 * The ends of posts and crests and what lies near them.
 */
import type { Chair, Joint, Post, Rail } from "../../chair/chair.ts";
import { kept } from "../../chair/kept.ts";
import { isCarried } from "../../chair/rails/carried.ts";
import { reachIn } from "../../geometry/convex.ts";
import { flipped, height, planeThrough } from "../../geometry/plane.ts";
import type { Convex, Plane } from "../../geometry/solid.ts";
import { between, dot, negate } from "../../geometry/vec.ts";

interface NearEnd {
  end: "top" | "foot" | "end";
  /** Wood between the mortise and the end of the post or crest as cut, at the least, mm. */
  wood: number;
}

/**
 * How much wood there is above a rail's mortise to the post's top, or below it to the foot, whichever is less; from the head of a stick to the
 * nearer end of its crest.
 */
export const nearEnd = (chair: Chair, joint: Joint): NearEnd | undefined => kept(chair, nearEnds).get(joint);

function nearEnds(chair: Chair): Map<Joint, NearEnd> {
  const planes = new Map<string, { top?: Plane; foot?: Plane }>();
  const found = new Map<Joint, NearEnd>();
  for (const joint of chair.joints.values()) {
    const post = chair.posts.get(joint.entered.name);
    if (joint.tenon.length === 0) continue;
    const crest = chair.rails.get(joint.entered.name);
    if (crest && isCarried(crest)) {
      const woods = crestEnds(crest).map((plane) => woodTo(plane, joint.tenon));
      found.set(joint, { end: "end", wood: Math.min(...woods) });
    }
    if (!post) continue;
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

/** The planes a crest's ends are cut to, looking out of it. */
function crestEnds({ ends, start, end }: Rail): Plane[] {
  const middle = between(start, end, 0.5);
  return ends.flatMap(({ corners: [a, b, c] }) => {
    const plane = a && b && c && planeThrough(a, b, c);
    return plane ? [height(plane, middle) > 0 ? flipped(plane) : plane] : [];
  });
}

const woodTo = (plane: Plane, solids: readonly Convex[]): number =>
  Math.min(...solids.flatMap(({ points }) => points.map((point) => -height(plane, point))));
