import { sentence } from "../../../grammar/sentences/sentence.ts";
import type { Chair, Rail } from "../../chair/chair.ts";
import { height } from "../../geometry/plane.ts";
import { between } from "../../geometry/vec.ts";
import { postsOf } from "../frame/ties.ts";
import { most, sourcesOf } from "../machinery/figures.ts";
import { placeOf } from "../machinery/place.ts";
import type { Rule } from "../machinery/rule.ts";
import { listed, tell } from "../machinery/say.ts";

export const seatRingOpen: Rule = {
  code: "seat-ring-open",
  severity: "warning",
  title: "Seat frame not closed",
  explanation:
    "The rails under a seat hold each other and the posts as a ring: front, sides and back. Where one is missing the sides spread under a sitter and every joint of the open side works loose. Close the ring with a rail between the two ends that the message names. `limit seat-ring-open to 100mm` says how far from the seat a rail may lie and still count.",
  source: sourcesOf("seat-ring-depth"),
  limit: { high: most("seat-ring-depth"), dimension: "length" },
  asksForMissing: true,
  find({ chair, limit }) {
    const { seat } = chair;
    if (!seat) return [];
    const ring = ringOf(chair, limit.high ?? 0);
    const loose = looseEnds(chair, ring);
    if (loose.length === 0) return [];
    const place = placeOf(chair.design, [
      ...seat.design.on.slice(0, 1),
      { at: seat.design.at, ...(seat.design.file === undefined ? {} : { file: seat.design.file }) },
    ]);
    const gap = sentence(loose.length === 2 ? "gap.between" : "gap.at", { posts: listed(loose) });
    return [
      tell(seatRingOpen, wholeList(place, chair), {
        message: sentence("seat-ring-open", { gap }),
        otherwise: sentence("seat-ring-open.otherwise", { gap }),
        subject: "seat",
        found: sentence("found.open", { gap }),
        allowed: sentence("found.closed-ring"),
      }),
    ];
  },
};

/** From the first rail that carries the seat to the last, when they stand in this file. */
function wholeList<P extends { start: number; end: number; own: boolean }>(place: P, chair: Chair): P {
  const last = chair.design.seat?.on.at(-1);
  return place.own && last && last.file === undefined && last.at.end > place.end
    ? { ...place, end: last.at.end }
    : place;
}

/** The rails that carry the seat, and those that lie in its plane near enough. */
function ringOf(chair: Chair, depth: number): Rail[] {
  const seat = chair.seat;
  if (!seat) return [];
  const carrying = new Set(seat.design.on.map((each) => each.value.name));
  return [...chair.rails.values()].filter((rail) => {
    if (carrying.has(rail.id.stem)) return true;
    const below = -height(seat.plane, between(rail.start, rail.end, 0.5));
    return Math.abs(below) <= depth && Math.abs(rail.along[2]) < 0.5 && !rail.flat;
  });
}

/** Posts where the ring ends: what is left when rails that close a round are set apart. A rail let into a rail joins where it enters. */
function looseEnds(chair: Chair, ring: readonly Rail[]): string[] {
  const edges: [string, string][] = [];
  for (const rail of ring) {
    const posts = postsOf(chair, rail);
    for (const which of [0, 1] as const) {
      const node = posts[which] ?? rail.ends[which].entered?.name;
      if (node !== undefined) edges.push([rail.name, node]);
    }
  }
  const degree = new Map<string, number>();
  for (const edge of edges) for (const node of edge) degree.set(node, (degree.get(node) ?? 0) + 1);
  return [...degree].filter(([node, count]) => count < 2 && chair.posts.has(node)).map(([node]) => node);
}
