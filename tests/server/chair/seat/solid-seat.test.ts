import { describe, expect, it } from "vitest";
import { planOf } from "../../../../server/chair/seat/solid/plan.ts";
import { sideThrough } from "../../../../server/chair/seat/solid/side.ts";
import { splineThrough } from "../../../../server/chair/seat/solid/spline.ts";
import { studied } from "../../../check.ts";
import { notSeat } from "../../../outside/seats/laws.ts";

const seat = (...lines: string[]): string => `seat solid {
  up 430
  thick 40
  ${lines.join("\n  ")}
}
`;

const head = `chair "Stool"
timber white-ash
joint socket {
  round 25
  through
}
`;

const legs = (...lines: string[]): string => `post leg pair {
  into seat at out 100, back 80
  ${lines.join("\n  ")}
  round 32
  joined socket
}
post back-leg {
  into seat at out 0, back 250
  rake 10deg foot back
  round 32
  joined socket
}
`;

/** The findings of a text, each with the words it stands on. */
function findings(text: string): string[] {
  return studied(text).problems.map(
    ({ code, message, start, end }) => `${code} «${text.slice(start, end)}» ${message}`,
  );
}

describe("a bevel round a seat with a tail", () => {
  const tailed = (...lines: string[]) =>
    studied(
      head +
        seat(
          "deep 380",
          "wide 420 at 10",
          "wide 400 at 250",
          "wide 300 at 340",
          "corner 20",
          "tail 90 x 50",
          ...lines,
        ) +
        legs("splay 5deg", "rake 5deg foot forward"),
    );

  // A grid over the outline adds up the thicknesses, which is a working of its own.
  it.each(["bevel 18 x 10 below", "bevel 20 x 12 above"])(
    "%s takes off the edge and nothing else",
    (bevel) => {
      const { chair, problems } = tailed(bevel);
      expect(notSeat(chair)).toEqual([]);
      expect(problems.filter(({ code }) => code === "cannot-be-built")).toEqual([]);
    },
  );
});

describe("a hollow that runs out at the front edge", () => {
  it("is as deep there as behind, beside rounded corners too", () => {
    const widths = ["wide 420 at 10", "wide 440 at 150", "wide 300 at 340"];
    const { chair } = studied(
      head +
        seat("deep 380", ...widths, "corner 25", "hollow 12 over 90 open front, rim 36") +
        legs("splay 5deg", "rake 5deg foot forward"),
    );
    // A corner's last stretch, nearly in line with the front edge, passed over the whole of it: 3 % more wood.
    expect(notSeat(chair)).toEqual([]);
  });
});

describe("a spline", () => {
  it("goes through its points and is natural where no slope is given: no curvature at its ends", () => {
    const knots = [
      { x: 0, y: 3 },
      { x: 2, y: 5 },
      { x: 5, y: 1 },
      { x: 9, y: 2 },
    ];
    const curve = splineThrough(knots);
    for (const { x, y } of knots) expect(curve.at(x)).toBeCloseTo(y, 12);
    const bend = (x: number, h = 1e-3) => (curve.at(x + h) - 2 * curve.at(x) + curve.at(x - h)) / h ** 2;
    expect(Math.abs(bend(0.002))).toBeLessThan(0.01);
    expect(Math.abs(bend(8.998))).toBeLessThan(0.01);
    // The curvature goes on over a point, and so does the slope.
    expect(bend(1.998)).toBeCloseTo(bend(2.002), 1);
    expect(curve.slope(4.999999)).toBeCloseTo(curve.slope(5.000001), 4);
  });

  it("is the cubic itself through four of its points where both slopes are the cubic's", () => {
    const cubic = (x: number) => 2 * x ** 3 - x ** 2 + 4;
    const slope = (x: number) => 6 * x * x - 2 * x;
    const knots = [0, 1, 2, 4].map((x) => ({ x, y: cubic(x) }));
    const curve = splineThrough(knots, { first: slope(0), last: slope(4) });
    for (const x of [0.3, 1.7, 3.1]) expect(curve.at(x)).toBeCloseTo(cubic(x), 9);
  });

  it("leaves a straight along it", () => {
    const side = sideThrough([
      { at: 0, wide: 400, straight: false },
      { at: 100, wide: 440, straight: true },
      { at: 200, wide: 430, straight: false },
      { at: 300, wide: 300, straight: false },
    ]);
    expect(side.at(50)).toBeCloseTo(210, 9);
    expect(side.slope(100 + 1e-9)).toBeCloseTo(0.2, 6);
  });
});

describe("an outline", () => {
  const solidOf = (text: string) => studied(`${head}${text}`).design!.seat!.solid!;
  const plan = (text: string) => {
    const troubles: { message: string }[] = [];
    const made = planOf(solidOf(text), { start: 0, end: 0 }, "mm", troubles as never[]);
    return { made, troubles };
  };

  it("has arcs in front and behind that go through the corners and the middle", () => {
    const { made } = plan(seat("deep 400", "wide 400 at 20", "wide 300 at 370"));
    const front = made!.half.filter(([, s]) => s < 20);
    const radius = (200 ** 2 + 20 ** 2) / 40;
    for (const [x, s] of front) expect(Math.hypot(x, s - radius)).toBeCloseTo(radius, 6);
    const back = (150 ** 2 + 30 ** 2) / 60;
    const behind = made!.half.filter(([, s]) => s > 370.001);
    for (const [x, s] of behind) expect(Math.hypot(x, s - (400 - back))).toBeCloseTo(back, 6);
  });

  it("rounds a corner by an arc that touches both edges from inside", () => {
    const { made } = plan(seat("deep 400", "wide 400 at 0", "wide 400 at 400", "corner 30"));
    const arc = made!.half.filter(([x, s]) => x > 170 && s < 30);
    for (const [x, s] of arc) expect(Math.hypot(x - 170, s - 30)).toBeCloseTo(30, 6);
    expect(arc.length).toBeGreaterThan(6);
  });

  it("rounds a corner whose edges are nearly in line, where the arc is clear over some mm alone", () => {
    const widths = ["wide 60 at 12", "wide 560 at 285 straight", "wide 60 at 548 straight"];
    expect(plan(seat("deep 560", ...widths, "corner 20")).troubles).toEqual([]);
  });

  it("says how large a corner the edges hold", () => {
    const { troubles } = plan(seat("deep 400", "wide 400 at 0", "wide 400 at 400", "corner 240"));
    const most = Number(/([\d.]+) mm is the most/.exec(troubles[0]!.message)![1]);
    expect(most).toBeGreaterThan(199);
    expect(plan(seat("deep 400", "wide 400 at 0", "wide 400 at 400", `corner ${most}`)).troubles).toEqual([]);
  });
});

describe("wrong input", () => {
  it.each([
    [
      "a place outside the outline",
      `${head}${seat("round 320")}${legs("splay 5deg").replace("out 100", "out 170")}`,
      "no-room «170, back 80» The post leg: its place lies 31.5 mm outside",
    ],
    [
      "a rake that does not say which end",
      `${head}${seat("round 320")}${legs("rake 8deg")}`,
      "which-end «8deg»",
    ],
    [
      "two ways of going to the floor",
      `${head}${seat("round 320")}${legs("splay 5deg", "foot out 130, back 40")}`,
      "given-twice «foot»",
    ],
    [
      "stations out of order",
      `${head}${seat("deep 330", "wide 300 at 200", "wide 300 at 100")}`,
      "no-room «300 at 100» The seat: its widths run from the front to the back",
    ],
    [
      "one station",
      `${head}${seat("deep 330", "wide 300 at 20")}`,
      "no-room «300 at 20» The seat: its outline needs two",
    ],
    [
      "a front edge that rises too much",
      `${head}${seat("deep 330", "wide 200 at 120", "wide 300 at 330")}`,
      "no-room «200 at 120» The seat: its front edge rises 120 mm",
    ],
    ["a round seat with widths", `${head}${seat("round 320", "wide 200 at 20")}`, "given-twice «wide»"],
    ["no solid seat", `${head}${legs("splay 5deg")}`, "unknown-name «seat»"],
    [
      "a tenon that grows",
      `${head.replace("round 25", "round 22 to 28")}${seat("round 320")}`,
      "impossible-size «28» This tenon is 22 mm thick at its shoulder and grows to 28 mm",
    ],
    ["a height", `${head}${seat("round 320")}${legs("height 400")}`, "given-twice «height»"],
  ])("%s is one finding on the narrowest text", (_, text, wanted) => {
    const found = findings(text).filter((each) => each.startsWith(wanted.split(" ")[0]!));
    expect(found.filter((each) => each.startsWith(wanted)).length, findings(text).join("\n")).toBe(1);
  });

  it("gives a figure that works", () => {
    const text = `${head}${seat("round 320")}${legs("splay 5deg").replace("out 100", "out 170")}`;
    const told = findings(text).find((each) => each.startsWith("no-room"))!;
    const most = Number(/`out` of less than ([\d.]+) mm/.exec(told)![1]);
    expect(
      findings(text.replace("out 170", `out ${most - 0.5}`)).some((each) => each.startsWith("no-room")),
    ).toBe(false);
  });

  it("of a seat in the file that a chair starts from is told on the line that names it", () => {
    const base = `${head}${seat("deep 330", "wide 300 at 200", "wide 300 at 100")}`;
    const text = 'like "base.chair"\nchair "Other"\n';
    const found = studied(text, { "base.chair": base }).problems.filter(({ code }) => code === "no-room");
    expect(found.map(({ start, end }) => text.slice(start, end))).toEqual(['"base.chair"']);
  });

  it("copes with half-typed text: a finding, never a throw", () => {
    const whole = `${head}${seat("deep 330", "wide 300 at 20", "wide 280 at 300", "corner 20", "tail 60 x 20")}${legs(
      "splay 9deg",
      "rake 8deg foot forward",
    )}`;
    for (let end = 0; end < whole.length; end += 7) expect(() => studied(whole.slice(0, end))).not.toThrow();
  });
});

describe("a leg", () => {
  const chair = () =>
    studied(`${head}${seat("round 330")}${legs("splay 12deg", "rake 8deg foot forward")}
rail front-stretcher {
  across leg
  round 24
  up 200
  joined stretcher
}
rail middle-stretcher {
  from front-stretcher at 1/2 to back-leg
  up 200
  round 20
  joined stretcher
}
joint stretcher {
  round 12, long 16
}
`).chair!;

  it("is mirrored, and ends on the seat's under face", () => {
    const { posts, seat: made } = chair();
    const [left, right] = ["leg.left", "leg.right"].map((name) => posts.get(name)!);
    expect(right!.foot).toEqual([-left!.foot[0], left!.foot[1], left!.foot[2]]);
    expect(left!.top[2]).toBeCloseTo(390, 9);
    expect(made!.name).toBe("seat");
  });
});

describe("a post on the seat", () => {
  const text = (
    ...lines: string[]
  ) => `${head}${seat("round 360", "fall 10")}${legs("splay 12deg", "rake 8deg foot forward")}
joint blind {
  round 20, long 25
}
post back-post pair {
  stand on seat at out 110, back 290
  rake 12deg top back
  splay 5deg top out
  ${lines.join("\n  ")}
  round 26
  joined blind
}
`;

  it("stands on the top face at its place, and leans by its own line to the way its top goes", () => {
    const { chair } = studied(text("height 800"));
    const post = chair!.posts.get("back-post.left")!;
    const { plane } = chair!.seat!;
    const off = post.foot.reduce((sum, v, k) => sum + v * plane.normal[k as 0]!, 0) - plane.offset;
    expect(off).toBeCloseTo(0, 9);
    expect(post.foot[0]).toBeCloseTo(110, 9);
    expect(post.foot[1]).toBeCloseTo(290, 9);
    expect(post.top[2]).toBeCloseTo(800, 9);
    // By vectors: up the post, the seat's normal and the seat's own fall line.
    const up = [Math.tan((5 * Math.PI) / 180), Math.tan((12 * Math.PI) / 180), 1];
    const slope = Math.asin(10 / 360);
    const times = (a: readonly number[], b: readonly number[]) => a.reduce((sum, v, k) => sum + v * b[k]!, 0);
    const square = times(up, [0, Math.sin(slope), Math.cos(slope)]) / Math.hypot(...up);
    expect(chair!.values.get("back-post.left.lean")!.number).toBeCloseTo(Math.acos(square), 9);
    const sight = Math.atan2(up[0]!, times(up, [0, Math.cos(slope), -Math.sin(slope)]));
    expect(chair!.values.get("back-post.left.sight-line")!.number).toBeCloseTo(sight, 9);
    expect(chair!.joints.get("back-post.left to seat")!.long).toBeCloseTo(25, 9);
    expect(chair!.stance.shift).toEqual([0, 0, 0]);
  });

  it("needs a top", () => {
    expect(findings(text()).filter((each) => each.startsWith("missing-property"))).toEqual([
      "missing-property «post» back-post needs `height`, or a rail that lies over it, such as `height 930`.",
    ]);
  });

  it("must stand within the outline", () => {
    const found = findings(text("height 800").replace("out 110, back 290", "out 110, back 350"));
    expect(found.filter((each) => each.startsWith("no-room «110, back 350»")).length, found.join("\n")).toBe(
      1,
    );
  });
});
