import { describe, expect, it } from "vitest";
import { buildMembers } from "../../../server/chair/members.ts";
import { buildPost } from "../../../server/chair/posts/post.ts";
import { angleBetween } from "../../../server/geometry/vec.ts";
import { across, DEG, design, post, rail } from "../../server/chair/fixtures.ts";

/**
 * Legs that rake and splay, as chair makers work them out (common practice):
 * tan(resultant) = √(tan² rake + tan² splay), tan(sightline) = tan splay / tan rake from the fore-and-aft line.
 * The worked figures are arithmetic on those formulas, checked by hand.
 */
const WORKED = [
  { rake: 10, splay: 5, resultant: 11.14, sightline: 26.39 },
  { rake: 15, splay: 10, resultant: 17.78, sightline: 33.35 },
  { rake: 8, splay: 0, resultant: 8, sightline: 0 },
  { rake: 0, splay: 8, resultant: 8, sightline: 90 },
];

describe("a leg that rakes and splays", () => {
  it.each(WORKED)("$rake° and $splay° leans $resultant° on a sightline of $sightline°", (row) => {
    const facts = {
      section: [36, 36] as [number, number],
      place: { out: 200, back: 30 },
      height: 430,
      rake: row.rake * DEG,
      splay: row.splay * DEG,
    };
    const leg = buildPost(post("leg", facts), "left")!;
    const [x, y] = leg.pieces[0]!.direction;
    expect(angleBetween(leg.pieces[0]!.direction, [0, 0, 1]) / DEG).toBeCloseTo(row.resultant, 2);
    expect(Math.atan2(Math.abs(x), Math.abs(y)) / DEG).toBeCloseTo(row.sightline, 2);
  });
});

describe("a rail in the plane of two raked legs", () => {
  it.each([
    // tan b' = tan splay · cos rake: 15°/10° gives 9.67°, not 10° (worked).
    { rake: 15, splay: 10, bevel: 9.67 },
    { rake: 0, splay: 10, bevel: 10 },
    { rake: -20, splay: 8, bevel: Math.atan(Math.tan(8 * DEG) * Math.cos(20 * DEG)) / DEG },
  ])("at rake $rake°, splay $splay° meets them $bevel° off square", ({ rake, splay, bevel }) => {
    const chair = buildMembers(
      design(
        post("front", {
          section: [36, 36],
          place: { out: 200, back: 30 },
          height: 430,
          rake: rake * DEG,
          splay: splay * DEG,
        }),
        post("back", { section: [36, 36], place: { out: 180, back: 430 }, height: 430 }),
        rail("front-rail", { course: across("front"), section: [22, 60], up: 400, stand: "with posts" }),
      ),
    );
    const built = chair.rails.get("front-rail")!;
    for (const end of built.ends) {
      // Feet wider than tops: below the top edge the rail is longer, so the corner inside it is more than square at the foot.
      expect(Math.abs(end.faceBevel / DEG - 90)).toBeCloseTo(bevel, 2);
      expect(end.faceBevel).toBeGreaterThan(Math.PI / 2);
      expect(end.edgeBevel / DEG).toBeCloseTo(90, 9);
    }
    expect(chair.faults).toEqual([]);
  });
});
