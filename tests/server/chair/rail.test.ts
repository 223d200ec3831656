import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { buildMembers } from "../../../server/chair/members.ts";
import { centreAt, pieceAt } from "../../../server/chair/posts/post-query.ts";
import { measureBody } from "../../../server/geometry/body.ts";
import { depthIn } from "../../../server/geometry/convex.ts";
import { height } from "../../../server/geometry/plane.ts";
import type { Vec3 } from "../../../server/geometry/solid.ts";
import { along, cross, distance, dot, mirrored, norm, scale, sub } from "../../../server/geometry/vec.ts";
import { across, DEG, design, fromTo, post, type RailFacts, rail } from "./fixtures.ts";
import { build, FRAME, number, straight, theRail } from "./rails.ts";

describe("a rail between plumb posts", () => {
  const facts: RailFacts = { course: across("front"), section: [20, 60], up: 400 };

  it("flush has its outside face in the posts' faces, its top edge at the height given", () => {
    const it = theRail({ ...facts, face: "flush" });
    expect(it.start).toEqual([180, -20, 400]);
    expect(it.end).toEqual([-180, -20, 400]);
    expect(it.length).toBeCloseTo(360, 9);
    expect(distance(it.outward, [0, -1, 0])).toBeLessThan(1e-12);
    expect(it.ends.map((end) => end.name)).toEqual(["left", "right"]);
    expect(it.ends[0].entered).toEqual({ kind: "post", name: "front.left" });
    expect(it.ends[0].lines.map((l) => Math.round(l))).toEqual([20, 60, 20, 60]);
    expect(measureBody(it.body).volume).toBeCloseTo(360 * 20 * 60, 6);
    expect(it.body.edges).toHaveLength(12);
  });

  it("inset stands in by so much; centred on the posts' centre lines", () => {
    expect(theRail({ ...facts, face: 3 }).start[1]).toBeCloseTo(-17, 12);
    expect(theRail(facts).start[1]).toBeCloseTo(-10, 12);
    expect(theRail({ ...facts, course: across("back"), face: 3 }).start[1]).toBeCloseTo(417, 12);
  });

  it("takes the front for its outside when it stands in the very middle", () => {
    const middle = [straight("front", 200, 0), straight("back", 200, 400), straight("mid", 200, 200)];
    expect(theRail({ ...facts, course: across("mid") }, ...middle).outward[1]).toBe(-1);
  });

  it("falls towards its second end, by a drop or by an angle", () => {
    const drop = theRail({ course: fromTo("front.left", "back.left"), section: [20, 60], up: 400, fall: 18 });
    expect(drop.start[2]).toBeCloseTo(400, 9);
    expect(drop.end[2]).toBeCloseTo(382, 9);
    expect(drop.ends[0].faceBevel / DEG).toBeCloseTo(90 - Math.atan2(18, 360) / DEG, 9);
    expect(drop.ends[1].faceBevel / DEG).toBeCloseTo(90 + Math.atan2(18, 360) / DEG, 9);
    const angle = theRail({
      course: fromTo("front.left", "back.left"),
      section: [20, 60],
      up: 400,
      slope: 3 * DEG,
    });
    expect(angle.end[2]).toBeCloseTo(400 - 360 * Math.tan(3 * DEG), 9);
  });

  it("stands on each side when it is one of a pair, and repeats with numbers", () => {
    const side = build({
      pair: true,
      course: fromTo("front", "back"),
      section: [20, 60],
      up: [100, 200, 300],
    });
    expect([...side.rails.keys()]).toEqual([
      "it.1.left",
      "it.1.right",
      "it.2.left",
      "it.2.right",
      "it.3.left",
      "it.3.right",
    ]);
    expect(side.rails.get("it.3.right")!.start[2]).toBe(300);
    expect(side.rails.get("it.3.right")!.ends.map((end) => end.entered!.name)).toEqual([
      "front.right",
      "back.right",
    ]);
    expect(side.rails.get("it.1.left")!.outward[0]).toBeCloseTo(1, 12);
  });

  it("keeps its outside top arris when it tapers", () => {
    const it = theRail({ ...facts, face: "flush", tapers: [{ section: [14, 40], towards: "end" }] });
    expect(it.ends[1].lines[0]).toBeCloseTo(14, 9);
    expect(it.ends[1].lines[3]).toBeCloseTo(40, 9);
    const frustum = (360 / 6) * (20 * 60 + 4 * 17 * 50 + 14 * 40);
    expect(measureBody(it.body).volume).toBeCloseTo(frustum, 6);
  });

  it("arched keeps the full width at its ends, and loses the segment of a circle (chord table formula)", () => {
    const it = theRail({ ...facts, arches: [{ rise: 15, edge: "below" }] });
    expect(it.ends[0].lines[3]).toBeCloseTo(60, 9);
    const radius = (360 * 360) / (8 * 15) + 7.5;
    const half = Math.asin(180 / radius);
    const segment = radius * radius * (half - Math.sin(half) * Math.cos(half));
    expect(Math.abs(measureBody(it.body).volume / ((360 * 60 - segment) * 20) - 1)).toBeLessThan(1e-3);
    expect(it.body.edges.filter((edge) => edge.is === "smooth").length).toBeGreaterThan(10);
    const crown = theRail({ ...facts, arches: [{ rise: 15, edge: "above" }] });
    expect(Math.abs(measureBody(crown.body).volume / ((360 * 60 + segment) * 20) - 1)).toBeLessThan(1e-3);
    expect(Math.max(...crown.body.pieces.flatMap((p) => p.points).map((p) => p[2]))).toBeGreaterThan(414.9);
  });

  it("bowed rises from the straight, either way, and says so along its curve", () => {
    const out = theRail({ ...facts, bow: { rise: 20, towards: "front" } });
    expect(out.bow).toBe(20);
    expect(theRail({ ...facts, bow: { rise: 20, towards: "back" } }).bow).toBe(-20);
    expect(Math.min(...out.body.pieces.flatMap((p) => p.points).map((p) => p[1]))).toBeCloseTo(-30, 1);
    expect(out.roundLength).toBeGreaterThan(362.9);
    expect(out.length).toBeCloseTo(360, 9);
  });
});

describe("a rail between leaning posts", () => {
  const leaning = fc.record({
    rakeF: number(-12, 12),
    rakeB: number(-12, 12),
    splayF: number(-10, 12),
    splayB: number(-10, 12),
    taper: number(0.7, 1),
    fall: number(-20, 20),
    face: fc.constantFrom("flush" as const, "centred" as const, 3),
    stand: fc.constantFrom("plumb" as const, "with posts" as const),
  });
  const frame = (c: { rakeF: number; rakeB: number; splayF: number; splayB: number; taper: number }) => [
    post("front", {
      section: [44, 44],
      place: { out: 210, back: 0 },
      height: 430,
      rake: c.rakeF * DEG,
      splay: c.splayF * DEG,
      tapers: [{ section: [44 * c.taper, 44 * c.taper], from: "top", to: "foot" }],
    }),
    post("back", {
      section: [40, 40],
      place: { out: 190, back: 420 },
      height: 800,
      rake: c.rakeB * DEG,
      splay: c.splayB * DEG,
    }),
  ];

  it("has its corners on the shoulder and on its own arrises, to 1e-9", () => {
    fc.assert(
      fc.property(leaning, (c) => {
        const chair = build(
          {
            pair: true,
            course: fromTo("front", "back"),
            section: [20, 50],
            up: 380,
            fall: c.fall,
            face: c.face,
            stand: c.stand,
          },
          ...frame(c),
        );
        const it = chair.rails.get("it.left")!;
        const arrises: Vec3[] = [
          [0, 0, 0],
          along([0, 0, 0], it.outward, -20),
          along(along([0, 0, 0], it.outward, -20), it.upward, -50),
          along([0, 0, 0], it.upward, -50),
        ];
        for (const end of it.ends) {
          end.corners.forEach((corner, k) => {
            expect(Math.abs(height(end.shoulder!, corner))).toBeLessThan(1e-9);
            const from = sub(corner, along(it.start, arrises[k]!, 1));
            expect(norm(cross(from, it.along))).toBeLessThan(1e-9);
            const nearest = Math.min(
              ...it.body.pieces.flatMap((p) => p.points).map((p) => distance(p, corner)),
            );
            expect(nearest).toBeLessThan(1e-9);
          });
        }
        // Its height is as the text has it, its directions are square, its shoulder lies in a face of the post.
        expect(it.start[2]).toBeCloseTo(380, 9);
        expect(it.end[2]).toBeCloseTo(380 - c.fall, 9);
        for (const d of [dot(it.along, it.outward), dot(it.along, it.upward), dot(it.outward, it.upward)])
          expect(Math.abs(d)).toBeLessThan(1e-12);
        if (c.stand === "plumb") expect(Math.abs(it.outward[2])).toBeLessThan(1e-12);
        const post = chair.posts.get("front.left")!;
        expect(Object.values(post.pieces[0]!.faces!)).toContain(it.ends[0].shoulder);
      }),
      { numRuns: 60 },
    );
  });

  it("has the volume of its section along its middle line, however its shoulders slant", () => {
    fc.assert(
      fc.property(leaning, (c) => {
        const it = build(
          {
            pair: true,
            course: fromTo("front", "back"),
            section: [20, 50],
            up: 380,
            face: c.face,
            stand: c.stand,
          },
          ...frame(c),
        ).rails.get("it.left")!;
        const middle = along(along(it.start, it.outward, -10), it.upward, -25);
        const reach = it.ends.map(
          (end) => -height(end.shoulder!, middle) / dot(end.shoulder!.normal, it.along),
        );
        expect(measureBody(it.body).volume / (1000 * (reach[1]! - reach[0]!))).toBeCloseTo(1, 9);
      }),
      { numRuns: 40 },
    );
  });

  it("centred has the middle of its section midway between both posts' faces", () => {
    fc.assert(
      fc.property(leaning, (c) => {
        const chair = build(
          {
            pair: true,
            course: fromTo("front", "back"),
            section: [20, 50],
            up: 380,
            fall: c.fall,
            stand: c.stand,
          },
          ...frame(c),
        );
        const it = chair.rails.get("it.left")!;
        const middle = along(along(it.start, it.outward, -10), it.upward, -25);
        const z = 380 - 10 * it.outward[2] - 25 * it.upward[2];
        for (const [name, at] of [
          ["front.left", z],
          ["back.left", z - c.fall],
        ] as const) {
          const centre = centreAt(chair.posts.get(name)!, at);
          const faces = Object.values(pieceAt(chair.posts.get(name)!, at).faces!);
          const reach = (look: Vec3) => {
            const face = faces.reduce((x, y) => (dot(x.normal, look) > dot(y.normal, look) ? x : y));
            return -height(face, centre) / dot(face.normal, look);
          };
          // Midway between the faces; on the centre line itself where the post does not taper.
          const aside = (reach(it.outward) - reach(scale(it.outward, -1))) / 2;
          expect(Math.abs(dot(sub(centre, middle), it.outward) + aside)).toBeLessThan(1e-6);
          if (c.taper === 0) expect(Math.abs(aside)).toBeLessThan(1e-9);
        }
      }),
      { numRuns: 40 },
    );
  });

  it("mirrors its twin", () => {
    fc.assert(
      fc.property(leaning, number(0, 25), (c, bow) => {
        const chair = build(
          {
            pair: true,
            course: fromTo("front", "back"),
            section: [20, 50],
            up: 380,
            face: c.face,
            stand: c.stand,
            bow: { rise: bow, towards: "out" },
          },
          ...frame(c),
        );
        const [left, right] = [chair.rails.get("it.left")!, chair.rails.get("it.right")!];
        expect(left.bow).toBe(right.bow);
        for (const which of [0, 1] as const) {
          left.ends[which].corners.forEach((corner, k) => {
            expect(distance(mirrored(corner), right.ends[which].corners[k]!)).toBeLessThan(1e-9);
          });
          expect(left.ends[which].faceBevel).toBeCloseTo(right.ends[which].faceBevel, 12);
        }
        expect(measureBody(left.body).volume).toBeCloseTo(measureBody(right.body).volume, 5);
      }),
      { numRuns: 40 },
    );
  });

  it("standing with them lies in the plane of two like posts, and tells wind where they differ", () => {
    const twins = build(
      { course: across("back"), section: [20, 50], up: 600, stand: "with posts" },
      ...frame({ rakeF: 0, rakeB: 9, splayF: 0, splayB: 4, taper: 1 }),
    );
    expect(twins.rails.get("it")!.upward[1] / twins.rails.get("it")!.upward[2]).toBeCloseTo(
      Math.tan(9 * DEG),
      9,
    );
    expect(twins.faults).toEqual([]);
    const apart = build(
      { pair: true, course: fromTo("front", "back"), section: [20, 50], up: 380, stand: "with posts" },
      ...frame({ rakeF: 0, rakeB: 0, splayF: 8, splayB: 0, taper: 1 }),
    );
    const wind = apart.faults.filter((fault) => fault.is === "wind");
    expect(wind).toHaveLength(2);
    // Seen along a rail that is nearly fore and aft, the ends differ by the splay.
    expect(wind[0]!.is === "wind" && wind[0]!.difference / DEG).toBeCloseTo(8, 1);
  });
});

describe("a rail that lies over posts", () => {
  const legs = (tall?: number) => [
    post("front", { section: [40, 40], place: { out: 200, back: 0 }, ...(tall ? { height: tall } : {}) }),
    straight("back", 200, 400, 800),
  ];

  it("lies on their tops and runs past them", () => {
    const chair = build(
      { course: { is: "over", of: { name: "front" }, overhang: 30 }, section: [50, 25] },
      ...legs(600),
    );
    const it = chair.rails.get("it")!;
    expect(it.length).toBeCloseTo(400 + 40 + 60, 9);
    expect(it.start).toEqual([250, -25, 625]);
    expect(it.ends[0].over).toEqual({ overhang: 30 });
    expect(it.ends[0].shoulder).toBeUndefined();
    expect(chair.faults).toEqual([]);
  });

  it("gives the posts their height when it was given its own", () => {
    const chair = build(
      { course: { is: "over", of: { name: "front" }, overhang: 0 }, section: [50, 25], up: 700 },
      ...legs(),
    );
    expect(chair.posts.get("front.left")!.topHeight).toBeCloseTo(675, 9);
    expect(chair.posts.get("front.right")!.top[2]).toBeCloseTo(675, 9);
    const both = build(
      { course: { is: "over", of: { name: "front" }, overhang: 0 }, section: [50, 25], up: 700 },
      ...legs(600),
    );
    expect(both.faults.map((fault) => fault.is)).toEqual(["not-buildable", "not-buildable"]);
  });

  it("as an arm lies flat over the front post, falls, and is let into the back one", () => {
    const chair = build(
      {
        pair: true,
        course: fromTo("front", "back"),
        section: [22, 60],
        tapers: [{ section: [22, 36], towards: "end" }],
        flat: true,
        up: 660,
        fall: 12,
        ends: [{ which: "front", over: 25 }],
      },
      ...legs(),
    );
    const arm = chair.rails.get("it.left")!;
    expect(arm.flat).toBe(true);
    expect([arm.thick, arm.wide]).toEqual([60, 22]);
    expect(arm.ends[0].over).toEqual({ overhang: 25 });
    expect(arm.ends[1].entered!.name).toBe("back.left");
    // Its end is cut square to it, so the fall sets the top edge back a little.
    const [outer, inner] = arm.ends[0].corners;
    expect((outer![1] + inner![1]) / 2).toBeCloseTo(-45 + (22 * 12) / 400, 1);
    expect(arm.end[1]).toBeCloseTo(380, 9);
    expect(arm.end[2]).toBeCloseTo(648, 9);
    // Its middle goes over the middle of the front post; the post's top is cut to its underside.
    const front = chair.posts.get("front.left")!;
    const under = along(arm.start, arm.upward, -22);
    for (const p of front.pieces[0]!.solid.points.filter((q) => q[2] > 300)) {
      expect(Math.abs(dot(sub(p, under), arm.upward))).toBeLessThan(1e-9);
    }
    const share = dot(sub(front.top, arm.start), arm.along) / arm.length;
    expect(dot(sub(arm.start, front.top), arm.outward)).toBeCloseTo((60 - 24 * share) / 2, 3);
    expect((arm.ends[1].corners[0]![0] + arm.ends[1].corners[1]![0]) / 2).toBeCloseTo(200, 2);
    expect(chair.faults).toEqual([]);
  });
});

describe("a rail between rails", () => {
  it("goes across a pair at a station, at the height of their middles", () => {
    const chair = buildMembers(
      design(
        ...FRAME,
        rail("side", { pair: true, course: fromTo("front", "back"), section: [20, 40], up: 200 }),
        rail("cross", { course: across("side", { mm: 150 }), section: [18, 30] }),
        rail("half", { course: across("side"), section: [18, 30], up: 195 }),
      ),
    );
    const cross = chair.rails.get("cross")!;
    // The middle of its thickness is 150 from the side rail's first shoulder, at back 20.
    expect((cross.ends[0].corners[0]![1] + cross.ends[0].corners[1]![1]) / 2).toBeCloseTo(170, 9);
    expect(cross.start[2]).toBeCloseTo(195, 9);
    expect(cross.length).toBeCloseTo(400 - 20, 9);
    expect(cross.ends[0].entered).toEqual({ kind: "rail", name: "side.left" });
    expect(
      (chair.rails.get("half")!.start[1] + chair.rails.get("half")!.ends[0].corners[1]![1]) / 2,
    ).toBeCloseTo(200, 9);
    expect(chair.faults).toEqual([]);
  });

  it("that depend on each other are told, not built", () => {
    const chair = buildMembers(
      design(
        ...FRAME,
        rail("a", { course: fromTo("front.left", "b"), section: [20, 40], up: 200 }),
        rail("b", { course: fromTo("back.right", "a"), section: [20, 40], up: 200 }),
      ),
    );
    expect(chair.rails.size).toBe(0);
    expect(chair.faults.map((fault) => fault.is)).toEqual(["not-buildable", "not-buildable"]);
  });
});

describe("a turned rail", () => {
  it("has its axis on the centre lines and runs to the surface of a turned post", () => {
    const turned = (name: string, back: number) =>
      post(name, { round: 36, place: { out: 200, back }, height: 430 });
    const chair = build(
      { course: across("front"), round: 20, up: 150 },
      turned("front", 0),
      turned("back", 400),
    );
    const it = chair.rails.get("it")!;
    expect(it.start).toEqual([182, 0, 150]);
    expect(it.length).toBeCloseTo(364, 9);
    expect(it.round).toBe(20);
    const reach = Math.max(...it.body.pieces.flatMap((p) => p.points).map((p) => p[0]));
    expect(reach).toBeCloseTo(200 - Math.sqrt(18 * 18 - 10 * 10), 9);
    expect(chair.faults).toEqual([]);
  });

  it("is outlined where it comes out of the turned post, on the post's own surface", () => {
    const turned = (name: string, back: number) =>
      post(name, { round: 36, place: { out: 200, back }, height: 430 });
    const chair = build(
      { course: across("front"), round: 20, up: 150 },
      turned("front", 0),
      turned("back", 400),
    );
    const wood = chair.posts.get("front.left")!.body.pieces[0]!;
    const ends = chair.rails.get("it")!.body.edges.filter((e) => e.is === "arris" && e.a[0] > 0);
    expect(ends.length).toBeGreaterThanOrEqual(24);
    for (const { a } of ends) expect(Math.abs(depthIn(wood, a))).toBeLessThan(0.02);
    // Two cylinders at right angles: the outline is deepest where the rung is widest, and at the tangent above and below.
    const xs = ends.map(({ a }) => a[0]);
    expect(Math.min(...xs)).toBeCloseTo(182, 0);
    expect(Math.max(...xs)).toBeCloseTo(200 - Math.sqrt(18 ** 2 - 10 ** 2), 0);
  });

  it("thicker than its post is told", () => {
    const thin = post("front", { round: 18, place: { out: 200, back: 0 }, height: 430 });
    const chair = build({ course: across("front"), round: 24, up: 150 }, thin, straight("back", 200, 400));
    expect(chair.faults.map((fault) => fault.is)).toEqual(["rail-misses-post", "rail-misses-post"]);
    expect(chair.faults[0]!.is === "rail-misses-post" && chair.faults[0]!.by).toBeCloseTo(3, 6);
  });
});

describe("bodies of rails", () => {
  it("stay outside the posts they enter", () => {
    const chair = build(
      { pair: true, course: fromTo("front", "back"), section: [20, 60], up: 400, face: 3 },
      straight("front", 205, 0),
      straight("back", 175, 400),
    );
    for (const it of chair.rails.values()) {
      for (const p of it.body.pieces.flatMap((piece) => piece.points)) {
        for (const post of chair.posts.values()) expect(depthIn(post.pieces[0]!.solid, p)).toBeLessThan(1e-6);
      }
    }
  });
});
