import { sentence } from "../../../grammar/sentences/sentence.ts";
import type { Chair, Post } from "../../chair/chair.ts";
import { isOnFloor } from "../../chair/posts/on-floor.ts";
import { height, lineMeets } from "../../geometry/plane.ts";
import type { Vec3 } from "../../geometry/solid.ts";
import { sub } from "../../geometry/vec.ts";
import { placeOf } from "../machinery/place.ts";
import type { Rule } from "../machinery/rule.ts";
import { type Finding, length, lengthOrLess, tell } from "../machinery/say.ts";
import { leanInsert } from "./insert-lean.ts";
import { tippingCaution } from "./tipping.ts";

/** How far the feet may stand inside what they carry, mm. */
const INSIDE = 10;

export const feetInsideTops: Rule = {
  code: "feet-inside-tops",
  severity: "warning",
  title: "Feet inside the tops they carry",
  explanation: `Feet nearer together than the seat they carry let the chair tip more easily than it looks. Usually the lean was meant the other way: \`splay 4deg foot out\`, \`rake 3deg foot forward\` for the front legs and \`rake 3deg foot back\` for the back legs say it without a sign. The tops are measured at the seat. \`limit feet-inside-tops to 30mm\` changes how far the feet may stand inside. ${tippingCaution}`,
  source: "common practice.",
  limit: { high: INSIDE, dimension: "length" },
  asksForMissing: true,
  find({ chair, limit }) {
    const most = limit.high ?? INSIDE;
    const posts = [...chair.posts.values()].filter(({ design }) => isOnFloor(design));
    const tops = posts.flatMap((post) => {
      const top = atSeat(chair, post);
      return top ? [{ post, top }] : [];
    });
    return [
      ...tellAcross(chair, tops, 1, most, sentence("way.from-front-to-back")),
      ...tellAcross(chair, tops, 0, most, sentence("way.across")),
    ];
  },
};

/** Where a post's centre line passes the seat, or its top when it ends below. */
function atSeat({ seat }: Chair, post: Post): Vec3 | undefined {
  if (!seat || height(seat.plane, post.top) <= 0) return post.top;
  const piece = post.pieces.find(
    ({ start, end }) => height(seat.plane, start) * height(seat.plane, end) <= 0,
  );
  return piece && lineMeets(seat.plane, piece.start, sub(piece.end, piece.start));
}

/** One finding where the feet span less than the tops, along one direction. */
function tellAcross(
  chair: Chair,
  posts: readonly { post: Post; top: Vec3 }[],
  axis: 0 | 1,
  most: number,
  way: string,
): Finding[] {
  const span = (places: number[]) => Math.max(...places) - Math.min(...places);
  if (posts.length < 3) return [];
  const [above, below] = [
    span(posts.map(({ top }) => top[axis])),
    span(posts.map(({ post }) => post.foot[axis])),
  ];
  const inside = above - below;
  if (inside <= most) return [];
  // The post whose foot is furthest inside its own top.
  const worst = posts.reduce((a, b) => (insideOf(b, axis, posts) > insideOf(a, axis, posts) ? b : a)).post;
  const { design } = worst;
  const units = chair.design.units;
  const lean = axis === 0 ? design.splay : design.rake;
  return [
    tell(feetInsideTops, placeOf(chair.design, [lean, ...design.knees, design.place, design]), {
      message: sentence("feet-inside-tops", {
        below: length(below, units),
        way,
        above: length(above, units),
        inside: length(inside, units),
        most: lengthOrLess(most, units),
      }),
      subject: worst.name,
      found: length(inside, units),
      allowed: sentence("figure.or-less", { figure: lengthOrLess(most, units) }),
      badness: inside,
      inserts: leanInsert(
        design,
        axis === 0 ? "splay" : worst.top[1] > middleOf(posts, 1) ? "rake foot back" : "rake foot forward",
        units,
      ),
      otherwise: sentence("feet-inside-tops.otherwise"),
    }),
  ];
}

const middleOf = (all: readonly { top: Vec3 }[], axis: 0 | 1): number =>
  all.reduce((sum, each) => sum + each.top[axis], 0) / all.length;

function insideOf(
  { post, top }: { post: Post; top: Vec3 },
  axis: 0 | 1,
  all: readonly { top: Vec3 }[],
): number {
  const middle = middleOf(all, axis);
  return Math.sign(top[axis] - middle) * (top[axis] - post.foot[axis]);
}
