/**
 * Lean and sight line of a leg in a solid seat, against the two formulas that chairmakers' pages print, against worked pairs, and on falling
 * seats against a calculation by vectors that shares nothing with the program.
 */
import { describe, expect, it } from "vitest";
import type { Chair } from "../../../server/chair/chair.ts";
import { studied } from "../../check.ts";

const DEG = Math.PI / 180;

interface Leg {
  rake: number;
  splay: number;
  foot?: "forward" | "back";
  fall?: number;
}

/** A seat 400 deep whose leg stands in its middle, with room for any lean. */
function textOf({ rake, splay, foot = "back", fall = 0 }: Leg): string {
  return `chair "One leg"
timber white-ash
joint socket {
  round 25
  through
}
seat solid {
  up 430
  thick 40
  deep 400
  wide 400 at 0
  wide 400 at 400
  fall ${fall}
}
post leg pair {
  into seat at out 120, back 200
  splay ${splay}deg
  rake ${rake}deg foot ${foot}
  round 25
  joined socket
}
`;
}

function anglesOf(chair: Chair): { lean: number; sight: number } {
  const value = (name: string) => chair.values.get(`leg.left.${name}`)!.number / DEG;
  return { lean: value("lean"), sight: value("sight-line") };
}

const chairOf = (leg: Leg): Chair => studied(textOf(leg)).chair!;

/** tan lean = √(tan² rake + tan² splay), tan sight line = tan splay ÷ tan rake: common practice among chair makers, and worked by vectors here. */
function byFormula(rake: number, splay: number): { lean: number; sight: number } {
  const [r, s] = [Math.tan(rake * DEG), Math.tan(splay * DEG)];
  return { lean: Math.atan(Math.hypot(r, s)) / DEG, sight: Math.atan2(s, r) / DEG };
}

describe("a level seat", () => {
  const grid = [0, 6, 12, 18, 24, 30];
  it.each(grid)("leans as the formulas say at a rake of %i° and splays from 0° to 30°", (rake) => {
    for (const splay of grid) {
      for (const foot of ["back", "forward"] as const) {
        const found = anglesOf(chairOf({ rake, splay, foot }));
        const wanted = byFormula(foot === "back" ? rake : -rake, splay);
        expect(found.lean).toBeCloseTo(wanted.lean, 9);
        if (rake + splay > 0) expect(found.sight).toBeCloseTo(wanted.sight, 9);
      }
    }
  });

  /** Worked pairs: rake, splay, lean, sight line from the fore-and-aft line (arithmetic on the two formulas). */
  it.each([
    [5, 5, 7.05, 45],
    [7, 9, 11.33, 52.22],
    [10, 10, 14, 45],
    [10, 14, 16.98, 54.73],
    [12, 8, 14.3, 33.47],
    [17, 11, 19.92, 32.45],
    [20, 12, 22.86, 30.29],
    [25, 14, 27.87, 28.13],
    [30, 20, 34.31, 32.23],
  ])("rake %d° and splay %d° lean %d° along %d°", (rake, splay, lean, sight) => {
    const found = anglesOf(chairOf({ rake, splay }));
    // Given to two places; those of 20° and 12° are a hundredth high.
    expect(Math.abs(found.lean - lean)).toBeLessThan(0.01);
    expect(Math.abs(found.sight - sight)).toBeLessThan(0.01);
  });
});

describe("a seat that falls to the back", () => {
  /** By vectors: the leg's line and the seat's normal, the line laid into the face and measured from the face's own fall line. */
  function byVectors({ rake, splay, foot, fall = 0 }: Leg): { lean: number; sight: number } {
    const way = foot === "forward" ? -1 : 1;
    const leg = [Math.tan(splay * DEG), way * Math.tan(rake * DEG), -1];
    const slope = Math.asin(fall / 400);
    const normal = [0, Math.sin(slope), Math.cos(slope)];
    const times = (a: number[], b: number[]) => a.reduce((sum, v, k) => sum + v * b[k]!, 0);
    const long = Math.sqrt(times(leg, leg));
    const square = -times(leg, normal) / long;
    const inFace = leg.map((v, k) => v - times(leg, normal) * normal[k]!);
    const fallLine = [0, Math.cos(slope), -Math.sin(slope)];
    return {
      lean: Math.acos(square) / DEG,
      sight: Math.atan2(inFace[0]!, times(inFace, fallLine)) / DEG,
    };
  }

  it.each([
    { rake: 7, splay: 9, foot: "forward", fall: 12 },
    { rake: 16, splay: 12, foot: "back", fall: 12 },
    { rake: 10, splay: 0, foot: "back", fall: 20 },
    { rake: 3, splay: 14, foot: "forward", fall: 35 },
    { rake: 25, splay: 20, foot: "back", fall: 5 },
    { rake: 2, splay: 1, foot: "forward", fall: 30 },
  ] as const)("$rake° foot $foot, $splay°, on a fall of $fall in 400", (leg) => {
    const found = anglesOf(chairOf(leg));
    const wanted = byVectors(leg);
    expect(found.lean).toBeCloseTo(wanted.lean, 6);
    expect(found.sight).toBeCloseTo(wanted.sight, 6);
  });

  it("leads to the same leg by its foot, and by its lean and sight line", () => {
    const leg = { rake: 16, splay: 12, foot: "back", fall: 12 } as const;
    const own = chairOf(leg);
    const { foot, top } = own.posts.get("leg.left")!;
    const words = `splay 12deg\n  rake 16deg foot back`;
    const byFoot = studied(textOf(leg).replace(words, `foot out ${foot[0]}, back ${foot[1]}`)).chair!;
    const { lean, sight } = anglesOf(own);
    const byLean = studied(textOf(leg).replace(words, `lean ${lean}deg, sight-line ${sight}deg`)).chair!;
    for (const chair of [byFoot, byLean]) {
      for (const side of ["left", "right"]) {
        const [a, b] = [own, chair].map((each) => each.posts.get(`leg.${side}`)!);
        for (const axis of [0, 1, 2] as const) {
          expect(b!.foot[axis]).toBeCloseTo(a!.foot[axis], 6);
          expect(b!.top[axis]).toBeCloseTo(a!.top[axis], 6);
        }
      }
      expect(chair.faults).toEqual([]);
    }
    expect(top[2]).toBeLessThan(430 - 40);
  });
});
