import type { Fix } from "../../../grammar/problem.ts";
import { sentence } from "../../../grammar/sentences/sentence.ts";
import type { Post } from "../../chair/chair.ts";
import type { Vec3 } from "../../geometry/solid.ts";
import { named, placeOf } from "../machinery/place.ts";
import type { Rule } from "../machinery/rule.ts";
import { length, tell } from "../machinery/say.ts";

/** A post nearer to the centre line than this stands on it, and one nearer to another's mirror image is its twin, mm. */
const NEAR = 25;

export const postWithoutTwin: Rule = {
  code: "post-without-twin",
  severity: "warning",
  title: "Post on one side only",
  explanation:
    "A post off the centre line has nothing on the other side to match it. Usually `pair` is missing. While this stands, nothing else is said of the chair. `accept post-without-twin` is for a chair that is not alike left and right.",
  source: "common practice: chairs are alike left and right.",
  alone: true,
  find({ chair }) {
    const { units } = chair.design;
    const posts = [...chair.posts.values()];
    return posts.flatMap((post) => {
      const { design } = post;
      const off = Math.abs(post.foot[0]);
      if (design.pair || off <= NEAR || posts.some((other) => isMirrored(post, other))) return [];
      const place = placeOf(chair.design, [design]);
      return tell(postWithoutTwin, place, {
        message: sentence(post.foot[0] < 0 ? "post-without-twin.right" : "post-without-twin.left", {
          Post: named(chair, post.name),
          off: length(off, units),
        }),
        otherwise: sentence("post-without-twin.otherwise"),
        subject: post.name,
        found: length(off, units),
        allowed: sentence("found.on-centre-line"),
        badness: off,
        fixes: pairOf(post),
      });
    });
  },
};

const isMirrored = (post: Post, other: Post): boolean =>
  other !== post && apart(post.foot, other.foot) <= NEAR && apart(post.top, other.top) <= NEAR;

/** How far one point is from the other's mirror image, mm. */
const apart = (a: Vec3, b: Vec3): number => Math.hypot(a[0] + b[0], a[1] - b[1], a[2] - b[2]);

function pairOf({ design: post }: Post): Fix[] {
  if (post.file !== undefined) return [];
  const { end } = post.at;
  return [
    { title: sentence("fix.make-pair", { part: post.name }), edits: [{ start: end, end, text: " pair" }] },
  ];
}
