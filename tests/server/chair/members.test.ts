import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { finish } from "../../../grammar/steps.ts";
import type { Rail } from "../../../server/chair/chair.ts";
import { buildMembers, cutFeet } from "../../../server/chair/members.ts";
import { pieceAt } from "../../../server/chair/posts/post-query.ts";
import { measureBody } from "../../../server/geometry/body.ts";
import { contains } from "../../../server/geometry/convex.ts";
import { height, planeAt } from "../../../server/geometry/plane.ts";
import type { Plane, Vec3 } from "../../../server/geometry/solid.ts";
import { along, angleBetween, distance, dot, sub } from "../../../server/geometry/vec.ts";
import { across, block, boathouse, DEG, design, fromTo, given, post, rail, ref, slat } from "./fixtures.ts";

const straight = (name: string, out: number, back: number, tall = 430) =>
  post(name, { section: [40, 40], place: { out, back }, height: tall });

/** Middle of a slat's end on the edge it enters. */
const middleOf = (it: Rail, which: 0 | 1): Vec3 => {
  const [a, b, c, d] = it.ends[which].corners;
  return [0, 1, 2].map((i) => (a![i]! + b![i]! + c![i]! + d![i]!) / 4) as unknown as Vec3;
};

describe("slats", () => {
  const fanned = [
    straight("front", 200, 0),
    post("back", { section: [40, 40], place: { out: 160, back: 400 }, height: 900, splay: -4 * DEG }),
    rail("lower", { course: across("back"), section: [20, 40], up: 520 }),
    rail("upper", { course: across("back"), section: [20, 60], up: 880 }),
  ];

  it("leave equal gaps on each rail, posts included, and so fan as the posts do", () => {
    const chair = buildMembers(
      design(...fanned, slat("it", { from: "lower", to: "upper", count: 5, section: [8, 30] })),
    );
    expect([...chair.slats.keys()]).toEqual(["it.1", "it.2", "it.3", "it.4", "it.5"]);
    const row = [...chair.slats.values()];
    for (const which of [0, 1] as const) {
      // Along the edge from the left: the slats' two corners on it, and the posts' faces at both ends.
      const z = middleOf(row[0]!, which)[2];
      const post = pieceAt(chair.posts.get("back.left")!, z).faces!.right;
      const face = (post.offset - post.normal[2] * z) / post.normal[0];
      const marks = [
        face,
        ...row.flatMap((s) => [s.ends[which].corners[0]![0], s.ends[which].corners[2]![0]]),
        -face,
      ];
      const gaps = [0, 2, 4, 6, 8, 10].map((k) => marks[k]! - marks[k + 1]!);
      for (const gap of gaps) expect(gap).toBeCloseTo(gaps[0]!, 6);
      expect(gaps[0]!).toBeGreaterThan(20);
    }
    expect(row[0]!.along[0]).toBeGreaterThan(0.04);
    expect(row[2]!.along[0]).toBeCloseTo(0, 9);
    expect(row[4]!.along[0]).toBeCloseTo(-row[0]!.along[0], 9);
    expect(chair.faults).toEqual([]);
  });

  it("stand at stations along the first rail, or alone under their bare name", () => {
    const chair = buildMembers(
      design(
        ...fanned,
        slat("it", { from: "lower", to: "upper", stations: [{ mm: 80 }], section: [8, 30] }),
        slat("splat", { from: "lower", to: "upper", stations: [{ share: 0.5 }], section: [8, 90] }),
      ),
    );
    const lower = chair.rails.get("lower")!;
    expect(dot(sub(middleOf(chair.slats.get("it")!, 0), lower.start), lower.along)).toBeCloseTo(80, 6);
    expect(middleOf(chair.slats.get("splat")!, 0)[0]).toBeCloseTo(0, 9);
    expect(chair.slats.get("splat")!.ends.map((end) => end.name)).toEqual(["lower", "upper"]);
  });

  it("follow a bowed rail, each into the middle of its thickness, and stop at an arched edge", () => {
    const chair = buildMembers(
      design(
        straight("front", 200, 0),
        straight("back", 180, 400, 900),
        rail("lower", { course: across("back"), section: [20, 40], up: 520 }),
        rail("upper", {
          course: across("back"),
          section: [20, 60],
          up: 880,
          bow: { rise: 25, towards: "back" },
          arches: [{ rise: 20, edge: "below" }],
        }),
        slat("it", {
          from: "lower",
          to: "upper",
          stations: [{ share: 0.5 }, { share: 0.25 }],
          section: [8, 30],
        }),
      ),
    );
    const [middle, quarter] = [...chair.slats.values()];
    expect(middleOf(middle!, 1)[1]).toBeCloseTo(400 + 25, 6);
    expect(middleOf(middle!, 1)[2]).toBeCloseTo(880 - 60 + 20, 6);
    expect(middleOf(quarter!, 1)[2]).toBeLessThan(836);
    expect(middleOf(quarter!, 1)[2]).toBeGreaterThan(834);
    // At a quarter the arched edge slopes, so the shoulder is not square.
    expect(Math.abs(quarter!.ends[1].faceBevel - Math.PI / 2)).toBeGreaterThan(3 * DEG);
  });

  it("too many for their rail are told", () => {
    const chair = buildMembers(
      design(...fanned, slat("it", { from: "lower", to: "upper", count: 12, section: [8, 30] })),
    );
    expect(chair.faults).toMatchObject([
      {
        is: "no-room",
        part: "it",
        message: "12 slats take up 360.2 mm side by side, and there are 352.6 mm between the posts",
      },
    ]);
  });

  it("of the boathouse chair lean back one by one as the crest is bowed", () => {
    const chair = buildMembers(boathouse());
    const lean = (name: string) => chair.slats.get(name)!.along[1];
    expect(lean("back-slat.2")).toBeGreaterThan(lean("back-slat.1"));
    expect(lean("back-slat.2")).toBeCloseTo(lean("back-slat.3"), 9);
  });
});

describe("corner blocks", () => {
  it("lie against the inside of both rails and stay clear of the post", () => {
    const chair = buildMembers(
      design(
        straight("front", 200, 0),
        straight("back", 200, 400),
        rail("seat-front", { course: across("front"), section: [20, 60], up: 420, face: "flush" }),
        rail("seat-side", {
          pair: true,
          course: fromTo("front", "back"),
          section: [20, 60],
          up: 410,
          face: "flush",
        }),
        block("corner", { in: "front", along: 60, thick: 30 }),
      ),
    );
    expect([...chair.blocks.keys()]).toEqual(["corner.left", "corner.right"]);
    const left = chair.blocks.get("corner.left")!.body;
    // Inside faces meet at out 200, back 0 and legs run 60 along each: a triangle, less the corner of the post, which reaches 20 in.
    expect(measureBody(left).volume).toBeCloseTo(((60 * 60) / 2 - (40 * 40) / 2) * 30, 6);
    const points = left.pieces[0]!.points;
    expect(Math.max(...points.map((p) => p[2]))).toBeCloseTo(410, 9);
    expect(points.some((p) => distance(p, [140, 0, 410]) < 1e-6)).toBe(true);
    for (const p of points)
      expect(contains(chair.posts.get("front.left")!.pieces[0]!.solid, along(p, [-1, 1, 0], 1e-6))).toBe(
        false,
      );
    expect(measureBody(chair.blocks.get("corner.right")!.body).volume).toBeCloseTo(
      measureBody(left).volume,
      6,
    );
  });

  it("too short for the post, or with no corner to lie in, are told", () => {
    const posts = [straight("front", 200, 0), straight("back", 200, 400)];
    const front = rail("seat-front", { course: across("front"), section: [20, 60], up: 420 });
    const side = rail("seat-side", {
      pair: true,
      course: fromTo("front", "back"),
      section: [20, 60],
      up: 420,
    });
    expect(
      buildMembers(design(...posts, front, block("corner", { in: "front", along: 60, thick: 30 }))).faults,
    ).toMatchObject([
      { is: "not-buildable", part: "corner.left" },
      { is: "not-buildable", part: "corner.right" },
    ]);
    expect(
      buildMembers(design(...posts, front, side, block("corner", { in: "front", along: 15, thick: 30 })))
        .faults,
    ).toMatchObject([{ is: "no-room" }, { is: "no-room" }]);
  });
});

describe("posts and rails that decide each other", () => {
  const armchair = () =>
    buildMembers(
      design(
        post("front", { section: [38, 38], place: { out: 255, back: 20 } }),
        post("back", {
          section: [36, 38],
          place: { out: 205, back: 478 },
          knees: [{ height: 500, stretch: "above", slope: 7 * DEG, over: 100 }],
          tapers: [{ section: [28, 26], from: 500, to: "top", keeping: ["front"] }],
        }),
        post("strut", {
          section: [22, 22],
          standsOn: { rail: ref("side"), station: { share: 0.5 } },
          topInto: { rail: ref("arm") },
        }),
        rail("side", { pair: true, course: fromTo("front", "back"), section: [24, 68], up: 420, face: 2 }),
        rail("arm", {
          pair: true,
          course: fromTo("front", "back"),
          section: [24, 62],
          up: 645,
          slope: 2 * DEG,
          flat: true,
          ends: [{ which: "front", over: 36 }],
        }),
        rail("crest", {
          course: { is: "over", of: { name: "back" }, overhang: 30 },
          section: [26, 60],
          up: 985,
          stand: "with posts",
          arches: [{ rise: 10, edge: "below" }],
          bow: { rise: 15, towards: "back" },
        }),
      ),
    );
  it("an armchair: front posts end under the arms, back posts under the crest, struts between side rail and arm", () => {
    const chair = armchair();
    const under = (it: Rail): Plane => planeAt(along(it.start, it.upward, -it.wide), it.upward);
    const arm = chair.rails.get("arm.left")!;
    expect(arm.start[2] - arm.end[2]).toBeCloseTo(
      Math.hypot(arm.end[0] - arm.start[0], arm.end[1] - arm.start[1]) * Math.tan(2 * DEG),
      6,
    );
    expect(Math.abs(height(under(arm), chair.posts.get("front.left")!.top))).toBeLessThan(1e-9);
    expect(chair.posts.get("front.left")!.top[2]).toBeCloseTo(645 - 24, 0);
    const strut = chair.posts.get("strut.left")!;
    const side = chair.rails.get("side.left")!;
    expect(Math.abs(height(planeAt(side.start, side.upward), strut.foot))).toBeLessThan(1e-9);
    expect(Math.abs(height(under(arm), strut.top))).toBeLessThan(1e-9);

    // The crest's curve, not its straight, has its middle over the middle of the post's top.
    const crest = chair.rails.get("crest")!;
    const back = chair.posts.get("back.left")!;
    expect(Math.abs(height(under(crest), back.top))).toBeLessThan(1e-9);
    expect(Math.abs(back.top[2] - (985 - 60 * Math.cos(7 * DEG)))).toBeLessThan(2);
    expect(chair.rails.get("crest")!.length).toBeGreaterThan(410 + 60);
    const x = dot(sub(back.top, crest.start), crest.along);
    const radius = (crest.length * crest.length) / (8 * 15) + 7.5;
    const rise = Math.sqrt(radius ** 2 - (x - crest.length / 2) ** 2) - (radius - 15);
    const faces = pieceAt(back, back.top[2]).faces!;
    const reach = (plane: Plane) => -height(plane, back.top) / dot(plane.normal, crest.outward);
    const topMiddle = (reach(faces.back) + reach(faces.front)) / 2;
    expect(dot(sub(crest.start, back.top), crest.outward) + rise - 13).toBeCloseTo(topMiddle, 1);
    // Its arch keeps between the posts.
    for (const p of crest.body.pieces.flatMap((piece) => piece.points)) {
      const at = dot(sub(p, crest.start), crest.along);
      const z = dot(sub(p, crest.start), crest.upward);
      if (at < x && z < -30) expect(z).toBeCloseTo(-60, 6);
    }
  });

  it("keeps the order of the text, whatever had to be built first", () => {
    expect([...armchair().posts.keys()]).toEqual([
      "front.left",
      "front.right",
      "back.left",
      "back.right",
      "strut.left",
      "strut.right",
    ]);
    expect([...armchair().rails.keys()]).toEqual([
      "side.left",
      "side.right",
      "arm.left",
      "arm.right",
      "crest",
    ]);
  });
});

describe("the whole frame", () => {
  it("of the boathouse chair is built without a fault, and its twins are alike", () => {
    const chair = buildMembers(boathouse());
    expect(chair.faults).toEqual([]);
    expect(chair.posts.size).toBe(4);
    expect(chair.rails.size).toBe(8);
    for (const [name, it] of chair.rails) {
      if (it.side !== "left") continue;
      const twin = chair.rails.get(name.replace("left", "right"))!;
      expect(measureBody(twin.body).volume).toBeCloseTo(measureBody(it.body).volume, 4);
      expect(angleBetween(it.along, [-twin.along[0], twin.along[1], twin.along[2]])).toBeLessThan(1e-9);
    }
  });

  it("stands on the floor it is given", () => {
    const chair = buildMembers(boathouse());
    const floor = planeAt([0, 20, 0], [0, -10 / 432, 1]);
    const posts = finish(cutFeet(chair, floor));
    for (const [name, it] of posts) {
      const low = Math.min(...it.body.pieces.flatMap((piece) => piece.points).map((p) => height(floor, p)));
      expect(Math.abs(low)).toBeLessThan(1e-9);
      expect(it.top).toEqual(chair.posts.get(name)!.top);
    }
    expect(posts.get("back.left")!.length).toBeLessThan(chair.posts.get("back.left")!.length - 9.9);
  });

  it("of numbers no maker would write is left out part by part; nothing throws, nothing is not a number", () => {
    const odd = fc.oneof(
      fc.constantFrom(0, -1, 1e-9, 1e9, Number.NaN, Number.POSITIVE_INFINITY),
      fc.double({ min: -2000, max: 2000, noNaN: true }),
    );
    const numbers = fc.array(odd, { minLength: 14, maxLength: 14 });
    fc.assert(
      fc.property(
        numbers,
        fc.constantFrom("front", "out", "in"),
        ([a, b, c, d, e, f, g, h, i, j, k, l, m, n], towards) => {
          const chair = buildMembers(
            design(
              post("front", {
                section: [40, a!],
                place: { out: 200, back: b! },
                height: 430,
                rake: c! / 1000,
                knees: [{ height: d!, stretch: "below", slope: e! / 1000, over: f! }],
              }),
              post("back", {
                round: 40,
                place: { out: 180, back: 420 },
                height: 800,
                tapers: [{ section: [g!, g!], from: h!, to: "top" }],
              }),
              rail("side", {
                pair: true,
                course: fromTo("front", "back"),
                section: [20, 60],
                up: i!,
                fall: j!,
                bow: { rise: k!, towards },
                arches: [{ rise: l!, edge: "below" }],
              }),
              rail("cross", {
                course: across("side", { mm: m! }),
                section: [n!, 30],
                tapers: [{ section: [a!, b!], towards: "ends" }],
              }),
              rail("back-rail", { course: across("back"), section: [20, 60], up: 780 }),
              rail("low-rail", { course: across("back"), section: [20, 60], up: i! }),
              slat("it", { from: "low-rail", to: "back-rail", count: 3, section: [8, m!] }),
              block("corner", { in: "back", along: k!, thick: l! }),
            ),
          );
          const bodies = [
            ...chair.posts.values(),
            ...chair.rails.values(),
            ...chair.slats.values(),
            ...chair.blocks.values(),
          ];
          for (const { body } of bodies) {
            for (const piece of body.pieces)
              for (const p of piece.points) expect(p.every(Number.isFinite)).toBe(true);
          }
        },
      ),
      { numRuns: 150 },
    );
  });

  it("with parts left out is whatever can be built; nothing throws", () => {
    const whole = boathouse();
    for (const kind of ["posts", "rails"] as const) {
      for (const [name, part] of whole[kind]) {
        for (const fact of Object.keys(part)) {
          if (
            [
              "name",
              "at",
              "statement",
              "is",
              "knees",
              "tapers",
              "ups",
              "ends",
              "arches",
              "face",
              "stand",
              "pair",
            ].includes(fact)
          )
            continue;
          const broken = { ...part, [fact]: undefined };
          const less = { ...whole, [kind]: new Map<string, unknown>([...whole[kind], [name, broken]]) };
          expect(buildMembers(less as typeof whole).posts.size).toBeGreaterThan(1);
        }
      }
      for (const name of whole[kind].keys()) {
        const less = new Map<string, unknown>([...whole[kind]].filter(([other]) => other !== name));
        expect(() => buildMembers({ ...whole, [kind]: less } as unknown as typeof whole)).not.toThrow();
      }
    }
    const wild = {
      ...whole,
      rails: new Map(
        [...whole.rails].map(([name, it]) => [
          name,
          { ...it, section: given({ first: -3, second: Number.NaN }) },
        ]),
      ),
    };
    expect(() => buildMembers(wild)).not.toThrow();
  });
});
