import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Post } from "../../../server/chair/chair.ts";
import { buildMembers } from "../../../server/chair/members.ts";
import { buildPost } from "../../../server/chair/posts/post.ts";
import { centreAt, directionAt } from "../../../server/chair/posts/post-query.ts";
import { measureBody, mirrorBody } from "../../../server/geometry/body.ts";
import { volume } from "../../../server/geometry/convex.ts";
import { angleBetween, distance, dot } from "../../../server/geometry/vec.ts";
import { boathouse, DEG, design, type PostFacts, post } from "./fixtures.ts";

const build = (facts: PostFacts, side: "left" | "right" | "middle" = "left"): Post =>
  buildPost(post("leg", facts), side)!;

const number = (low: number, high: number) => fc.double({ min: low, max: high, noNaN: true });

describe("a post", () => {
  it("that stands straight is a box", () => {
    const leg = build({ section: [40, 30], place: { out: 200, back: 20 }, height: 400 });
    expect(leg.pieces).toHaveLength(1);
    expect(volume(leg.pieces[0]!.solid)).toBeCloseTo(40 * 30 * 400, 6);
    expect(leg.body.edges).toHaveLength(12);
    expect(leg.pieces[0]!.faces!.left).toEqual({ normal: [1, 0, 0], offset: 220 });
    expect(leg.pieces[0]!.faces!.front.offset).toBeCloseTo(-5, 12);
  });

  it("with a rake above a height is straight below it and leans above it", () => {
    const leg = build({
      section: [40, 40],
      place: { out: 200, back: 400 },
      height: 900,
      knees: [{ height: 450, stretch: "above", slope: 8 * DEG, over: 100 }],
    });
    expect(centreAt(leg, 0)[1]).toBeCloseTo(400, 9);
    expect(centreAt(leg, 399)[1]).toBeCloseTo(400, 9);
    expect(centreAt(leg, 900)[1]).toBeCloseTo(400 + 450 * Math.tan(8 * DEG), 9);
    expect(directionAt(leg, 800)[1] / directionAt(leg, 800)[2]).toBeCloseTo(Math.tan(8 * DEG), 12);
    // The arc begins half of `over` below the knee.
    const curved = leg.pieces.filter((piece) => piece.curved);
    expect(curved[0]!.from).toBeCloseTo(400, 9);
    expect(curved[curved.length - 1]!.to).toBeCloseTo(450 + 50 * Math.cos(8 * DEG), 9);
    // Every corner of the arc is on the circle of radius (L/2)/tan(turn/2) about its middle.
    const radius = 50 / Math.tan(4 * DEG);
    for (const piece of curved)
      expect(distance(piece.start, [200, 400 + radius, 400])).toBeCloseTo(radius, 9);
    for (let k = 1; k < leg.pieces.length; k++) {
      expect(angleBetween(leg.pieces[k - 1]!.direction, leg.pieces[k]!.direction)).toBeLessThan(1.001 * DEG);
    }
  });

  it("keeps everything but the curve when the curve's length changes", () => {
    const facts = (over: number): PostFacts => ({
      section: [36, 36],
      place: { out: 175, back: 452 },
      height: 930,
      knees: [
        { height: 100, stretch: "below", slope: -4 * DEG, over },
        { height: 475, stretch: "above", slope: 6.5 * DEG, over },
      ],
    });
    const sharp = build(facts(0));
    const fair = build(facts(90));
    expect(sharp.pieces).toHaveLength(3);
    for (const z of [0, 40, 200, 400, 600, 930])
      expect(distance(centreAt(sharp, z), centreAt(fair, z))).toBeLessThan(1e-9);
    // The kick runs the foot back: the foot stands where it says, the shank in front of it.
    expect(sharp.foot).toEqual([175, 452, 0]);
    expect(centreAt(sharp, 100)[1]).toBeCloseTo(452 - 100 * Math.tan(4 * DEG), 9);
  });

  it("may be placed by foot, top or any height of the same line", () => {
    const lean = { section: [30, 30] as [number, number], height: 430, splay: 5 * DEG, rake: 10 * DEG };
    const byFoot = build({ ...lean, place: { out: 200, back: 30 } });
    const [x, y] = byFoot.top;
    const byTop = build({ ...lean, place: { station: "top", out: x, back: y } });
    const middle = centreAt(byFoot, 215);
    const byMiddle = build({ ...lean, place: { station: 215, out: middle[0], back: middle[1] } });
    expect(x).toBeCloseTo(200 - 430 * Math.tan(5 * DEG), 9);
    for (const other of [byTop, byMiddle]) expect(distance(other.foot, byFoot.foot)).toBeLessThan(1e-9);
  });

  it("has a volume of section by length when straight, whatever its lean and turn", () => {
    fc.assert(
      fc.property(
        number(20, 60),
        number(20, 60),
        number(-0.3, 0.3),
        number(-0.3, 0.3),
        number(-0.8, 0.8),
        number(200, 900),
        (w, d, rake, splay, turn, height) => {
          const leg = build({ section: [w, d], place: { out: 200, back: 100 }, height, rake, splay, turn });
          const length = height * Math.sqrt(1 + Math.tan(rake) ** 2 + Math.tan(splay) ** 2);
          expect(leg.length).toBeCloseTo(length, 8);
          expect(measureBody(leg.body).volume / (w * d * length)).toBeCloseTo(1, 10);
        },
      ),
      { numRuns: 60 },
    );
  });

  it("has the volume of a frustum when tapered and cut square, and of its circle when turned", () => {
    fc.assert(
      fc.property(number(30, 60), number(15, 29), number(200, 600), (big, small, height) => {
        const leg = build({
          section: [big, big],
          place: { out: 200, back: 100 },
          height,
          tapers: [{ section: [small, small], from: "top", to: "foot" }],
        });
        const frustum = (height / 3) * (big * big + big * small + small * small);
        expect(measureBody(leg.body).volume / frustum).toBeCloseTo(1, 10);
        const turned = build({
          round: big,
          place: { out: 200, back: 100 },
          height,
          tapers: [{ section: [small, small], from: "top", to: "foot" }],
        });
        expect(measureBody(turned.body).volume / ((Math.PI / 4) * frustum)).toBeCloseTo(1, 10);
        expect(turned.pieces[0]!.radii![0]).toBeCloseTo(small / 2, 9);
        expect(turned.pieces[0]!.radii![1]).toBeCloseTo(big / 2, 9);
      }),
      { numRuns: 40 },
    );
  });

  it("keeps a face straight when the taper says so", () => {
    const leg = build({
      section: [40, 40],
      place: { out: 200, back: 20 },
      height: 400,
      tapers: [{ section: [30, 25], from: 300, to: "foot", keeping: ["outside", "front"] }],
    });
    const [low, high] = leg.pieces;
    expect(low!.faces!.left.normal).toEqual([1, 0, 0]);
    expect(low!.faces!.front.normal[1]).toBeCloseTo(-1, 12);
    expect(low!.faces!.right.normal[2]).not.toBe(0);
    const foot = low!.solid.points.filter((p) => p[2] === 0).map((p) => p[0]);
    expect(Math.max(...foot)).toBeCloseTo(220, 9);
    expect(Math.min(...foot)).toBeCloseTo(190, 9);
    expect(high!.from).toBe(300);
  });

  it("turned about its length shows its front face outward, on both sides", () => {
    const facts: PostFacts = {
      section: [40, 40],
      place: { out: 200, back: 20 },
      height: 400,
      turn: 20 * DEG,
    };
    expect(build(facts, "left").pieces[0]!.faces!.front.normal[0]).toBeCloseTo(Math.sin(20 * DEG), 12);
    expect(build(facts, "right").pieces[0]!.faces!.front.normal[0]).toBeCloseTo(-Math.sin(20 * DEG), 12);
  });

  it("holds the level line across the chair in its front and back faces", () => {
    const leg = build({
      section: [40, 40],
      place: { out: 200, back: 20 },
      height: 400,
      splay: 9 * DEG,
      rake: -7 * DEG,
    });
    expect(dot(leg.pieces[0]!.faces!.front.normal, [1, 0, 0])).toBeCloseTo(0, 12);
    expect(dot(leg.pieces[0]!.faces!.left.normal, leg.pieces[0]!.faces!.front.normal)).toBeCloseTo(0, 12);
  });

  it("of a pair is the mirror image of its twin", () => {
    fc.assert(
      fc.property(
        number(-0.2, 0.2),
        number(-0.2, 0.2),
        number(-0.5, 0.5),
        number(-0.15, 0.15),
        (rake, splay, turn, kick) => {
          const facts: PostFacts = {
            section: [40, 34],
            place: { out: 200, back: 20 },
            height: 700,
            rake,
            splay,
            turn,
            knees: [{ height: 120, stretch: "below", slope: kick, over: 60 }],
            tapers: [{ section: [25, 28], from: 400, to: "top", keeping: ["inside"] }],
          };
          const left = build(facts, "left");
          const right = build(facts, "right");
          const image = mirrorBody(left.body);
          expect(right.pieces).toHaveLength(left.pieces.length);
          const points = image.pieces.flatMap((piece) => piece.points);
          for (const p of right.body.pieces.flatMap((piece) => piece.points)) {
            expect(Math.min(...points.map((q) => distance(p, q)))).toBeLessThan(1e-9);
          }
          expect(measureBody(right.body).volume).toBeCloseTo(measureBody(image).volume, 4);
        },
      ),
      { numRuns: 30 },
    );
  });

  it("is cut to a floor that is not level, longer on one side", () => {
    const facts: PostFacts = { section: [40, 40], place: { out: 200, back: 0 }, height: 400 };
    const tilt = { normal: [0, Math.sin(0.02), Math.cos(0.02)] as const, offset: 0 };
    const leg = buildPost(post("leg", facts), "left", { foot: tilt })!;
    const low = leg.pieces[0]!.solid.points.map((p) => p[2]);
    expect(Math.min(...low)).toBeCloseTo(-20 * Math.tan(0.02), 9);
    expect(leg.foot).toEqual([200, 0, 0]);
  });

  it("says when two curves run into each other, once for a pair, and shortens them", () => {
    const facts: PostFacts = {
      section: [40, 40],
      place: { out: 200, back: 0 },
      height: 400,
      knees: [
        { height: 100, stretch: "below", slope: -0.1, over: 100 },
        { height: 160, stretch: "above", slope: 0.1, over: 100 },
      ],
    };
    const chair = buildMembers(design(post("leg", facts)));
    expect(chair.posts.size).toBe(2);
    expect(chair.faults).toMatchObject([{ is: "no-room", part: "leg.left" }]);
    expect(chair.faults[0]!.is === "no-room" && chair.faults[0]!.message).toContain("need 100 mm");
  });

  it("that cannot be is left out and told", () => {
    const facts: PostFacts = { section: [40, 40], place: { out: 200, back: 0 }, height: 400 };
    const why = (more: Partial<PostFacts>) =>
      buildMembers(design(post("leg", { ...facts, pair: false, ...more }))).faults;
    expect(why({ height: -5 })).toMatchObject([{ is: "not-buildable", part: "leg" }]);
    expect(why({ rake: 1.5 })).toMatchObject([{ is: "not-buildable" }]);
    expect(why({ tapers: [{ section: [0, 0], from: 100, to: "foot" }] })).toMatchObject([
      { is: "not-buildable" },
    ]);
    expect(why({ height: Number.NaN })).toMatchObject([{ is: "not-buildable" }]);
  });

  it("of the boathouse chair leans as the maker said", () => {
    const back = buildPost(boathouse().posts.get("back")!, "left")!;
    const knee = 452 - 100 * Math.tan(4 * DEG);
    expect(back.top[1]).toBeCloseTo(knee + (930 - 475) * Math.tan(6.5 * DEG), 9);
    expect(back.top[0]).toBe(175);
    expect(back.body.edges.filter((edge) => edge.is === "arris").length).toBeGreaterThan(12);
  });
});
