import { sentence } from "../../../grammar/sentences/sentence.ts";
import type { Joint, Post } from "../../chair/chair.ts";
import { volume } from "../../geometry/convex.ts";
import type { Convex } from "../../geometry/solid.ts";
import { distance, dot } from "../../geometry/vec.ts";
import { least, sourcesOf } from "../machinery/figures.ts";
import { plain } from "../machinery/names.ts";
import type { Rule } from "../machinery/rule.ts";
import { length, listed, tell } from "../machinery/say.ts";
import { jointPlace, judgedJoints, sizesOf } from "./joint-places.ts";

/** Shares nearer than this are on the limit. */
const SAME_SHARE = 0.001;

export const postWeakened: Rule = {
  code: "post-weakened",
  severity: "warning",
  title: "Post weakened by mortises at one height",
  explanation:
    "Where rails come into a post at the same height their mortises take wood from the same section, and the post bends and breaks there. Put the rails at different heights, make tenons thinner or shorter, or the post stouter. `limit post-weakened to 0.4` changes the part of the section that must be left.",
  source: sourcesOf("post-left-at-joint"),
  limit: { low: least("post-left-at-joint"), dimension: "share", of: "share of the post" },
  find({ chair, limit }) {
    const allowed = limit.low ?? 0;
    const byPost = new Map<Post, Joint[]>();
    for (const joint of judgedJoints(chair, "post-weakened")) {
      const post = chair.posts.get(joint.entered.name);
      if (post) byPost.set(post, [...(byPost.get(post) ?? []), joint]);
    }
    return [...byPost].flatMap(([post, joints]) => {
      const worst = weakest(post, joints);
      if (!worst || worst.left >= allowed - SAME_SHARE) return [];
      const [first] = worst.joints;
      const percent = (share: number) => `${Math.round(100 * share)} %`;
      return tell(postWeakened, jointPlace(chair, first!, sizesOf(first!).thick), {
        message: sentence("post-weakened", {
          post: plain(post.name),
          left: percent(worst.left),
          height: length(worst.height, chair.design.units),
          rails: listed(worst.joints.map(({ part }) => plain(part))),
          least: percent(allowed),
        }),
        otherwise: sentence("post-weakened.otherwise"),
        subject: first!.name,
        found: percent(worst.left),
        allowed: sentence("figure.or-more", { figure: percent(allowed) }),
        badness: allowed - worst.left,
      });
    });
  },
};

interface Level {
  joints: Joint[];
  /** Share of the section. */
  left: number;
  height: number;
}

/** A tenon between two heights, and what a level cut through the post finds of it, mm²: its volume over its height. */
interface LevelLoss {
  joint: Joint;
  low: number;
  high: number;
  area: number;
}

/** The level at which the mortises of two or more joints leave the least of a post. */
function weakest(post: Post, joints: readonly Joint[]): Level | undefined {
  let worst: Level | undefined;
  const cuts = joints.flatMap((joint) => joint.tenon.map((solid) => cutBy(joint, solid)));
  for (const { low, high } of cuts) {
    const height = (low + high) / 2;
    const here = cuts.filter((cut) => cut.low < height && height < cut.high);
    const those = [...new Set(here.map(({ joint }) => joint))];
    if (those.length < 2) continue;
    const area = areaAt(post, height);
    const left = area > 0 ? Math.max(0, 1 - here.reduce((sum, cut) => sum + cut.area, 0) / area) : 1;
    if (!worst || left < worst.left) worst = { joints: those, left, height };
  }
  return worst;
}

function cutBy(joint: Joint, solid: Convex): LevelLoss {
  const heights = solid.points.map((point) => point[2]);
  const [low, high] = [Math.min(...heights), Math.max(...heights)];
  return { joint, low, high, area: volume(solid) / Math.max(high - low, 1e-9) };
}

function areaAt(post: Post, height: number): number {
  const piece = post.pieces.find(({ from, to }) => from <= height && height <= to) ?? post.pieces.at(-1);
  if (!piece) return 0;
  // Volume over length is the mean of the piece; tapers are gentle.
  return (
    volume(piece.solid) /
    Math.max(distance(piece.start, piece.end), 1e-9) /
    Math.max(Math.abs(dot(piece.direction, [0, 0, 1])), 0.5)
  );
}
