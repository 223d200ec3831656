import { describe, expect, it } from "vitest";
import { finish } from "../../../grammar/steps.ts";
import type { Vec3 } from "../../../server/geometry/solid.ts";
import { assemblyOf, lines, lockedSteps } from "../../../server/joinery/assembly.ts";
import type { Fitting } from "../../../server/joinery/fitting.ts";

const slack = 0.3;
const joint = (part: string, into: string, direction: Vec3, long = 28): Fitting => {
  const length = Math.hypot(...direction);
  return {
    name: `${part} to ${into}`,
    part,
    into,
    direction: direction.map((v) => v / length) as unknown as Vec3,
    long,
    slack,
  };
};

/** A frame of four posts and four rails; side rails converge by `lean` to the back, their tenons in line or square. */
function boxFrame(lean: number, line: "in-line" | "square") {
  const parts = ["fl", "fr", "bl", "br", "front", "back", "left", "right"];
  const s = line === "in-line" ? Math.sin(lean) : 0;
  const c = line === "in-line" ? Math.cos(lean) : 1;
  const joints = [
    joint("front", "fl", [1, 0, 0]),
    joint("front", "fr", [-1, 0, 0]),
    joint("back", "bl", [1, 0, 0]),
    joint("back", "br", [-1, 0, 0]),
    joint("left", "fl", [s, -c, 0]),
    joint("left", "bl", [-s, c, 0]),
    joint("right", "fr", [-s, -c, 0]),
    joint("right", "br", [s, c, 0]),
  ];
  return { parts, joints };
}

describe("an order of assembly", () => {
  it("a plain box frame: front and back frames, then the sides in one go", () => {
    const { parts, joints } = boxFrame(0, "square");
    const { glueUps, locked } = assemblyOf(parts, joints);
    expect(locked).toEqual([]);
    expect(glueUps.map((one) => one.parts.length)).toEqual([3, 3, 8]);
    const last = glueUps[2]!;
    expect(last.closes.sort()).toEqual(["left to bl", "left to fl", "right to br", "right to fr"]);
    expect(last.groups.map((group) => group.length).sort()).toEqual([1, 1, 3, 3]);
    expect(Math.abs(last.direction[1])).toBeCloseTo(1, 9);
  });

  it("every joint is closed once", () => {
    const { parts, joints } = boxFrame(0, "square");
    const closed = assemblyOf(parts, joints).glueUps.flatMap((one) => one.closes);
    expect(closed.sort()).toEqual(joints.map((one) => one.name).sort());
  });

  it("the tapered frame with tenons in line: side frames first, since all cross rails lie one way", () => {
    const { parts, joints } = boxFrame(0.07, "in-line");
    const { glueUps, locked } = assemblyOf(parts, joints);
    expect(locked).toEqual([]);
    expect(Math.abs(glueUps[glueUps.length - 1]!.direction[0])).toBeCloseTo(1, 9);
  });

  it("tapered both ways, a frame in line locks; square to the posts it does not", () => {
    // The front is splayed too: neither the cross rails nor the side rails lie one way at both ends.
    const build = (square: boolean) => {
      const a = square ? 0 : 0.09;
      const b = square ? 0 : 0.07;
      const parts = ["fl", "fr", "bl", "br", "front", "low", "back", "left", "right"];
      const joints = [
        joint("front", "fl", [Math.cos(a), 0, Math.sin(a)]),
        joint("low", "fl", [Math.cos(a), 0, -Math.sin(a)]),
        joint("front", "fr", [-Math.cos(a), 0, Math.sin(a)]),
        joint("low", "fr", [-Math.cos(a), 0, -Math.sin(a)]),
        joint("back", "bl", [1, 0, 0]),
        joint("back", "br", [-1, 0, 0]),
        joint("left", "fl", [Math.sin(b), -Math.cos(b), 0]),
        joint("left", "bl", [-Math.sin(b), Math.cos(b), 0]),
        joint("right", "fr", [-Math.sin(b), -Math.cos(b), 0]),
        joint("right", "br", [Math.sin(b), Math.cos(b), 0]),
      ];
      return assemblyOf(parts, joints);
    };
    expect(build(true).locked).toEqual([]);
    const { locked } = build(false);
    expect(locked).toHaveLength(1);
    const worst = locked[0]!.joints;
    expect(worst.length).toBeGreaterThan(0);
    for (const one of worst) {
      expect(one.strays).toBeGreaterThan(slack);
      expect(one.strays).toBeCloseTo(28 * Math.sin(one.angle), 9);
    }
  });

  it("a three-legged stool round a board goes together leg by leg", () => {
    const parts = ["seat", "a", "b", "c"];
    const joints = [
      joint("a", "seat", [0.1, -0.1, 1]),
      joint("b", "seat", [-0.1, -0.1, 1]),
      joint("c", "seat", [0, 0.15, 1]),
    ];
    const { glueUps, locked } = assemblyOf(parts, joints);
    expect(locked).toEqual([]);
    expect(glueUps).toHaveLength(3);
  });

  it("one rail too many: stretchers between the splayed legs of that stool lock it", () => {
    const parts = ["seat", "a", "b", "c", "ab", "bc", "ca"];
    const joints = [
      joint("a", "seat", [0.1, -0.1, 1]),
      joint("b", "seat", [-0.1, -0.1, 1]),
      joint("c", "seat", [0, 0.15, 1]),
      joint("ab", "a", [1, 0, 0]),
      joint("ab", "b", [-1, 0, 0]),
      joint("bc", "b", [-0.5, -0.87, 0]),
      joint("bc", "c", [0.5, 0.87, 0]),
      joint("ca", "c", [-0.5, 0.87, 0]),
      joint("ca", "a", [0.5, -0.87, 0]),
    ];
    const { locked } = assemblyOf(parts, joints);
    expect(locked.map((one) => one.parts.length)).toEqual([7]);
  });

  it("two parts that no joint ties are left as they are", () => {
    expect(assemblyOf(["a", "b"], [])).toEqual({ glueUps: [], locked: [] });
  });
});

describe("against exhaustive search on small random frames", () => {
  const axes: Vec3[] = [
    [1, 0, 0],
    [-1, 0, 0],
    [0, 1, 0],
    [0, -1, 0],
    [0, 0, 1],
    [0.6, 0.8, 0],
  ];

  it("500 frames of up to six parts: the same answer whether it goes together, and what forbids it is the same without the order", () => {
    const random = seeded(7);
    let lockedCount = 0;
    for (let run = 0; run < 500; run += 1) {
      const n = 3 + Math.floor(random() * 4);
      const parts = Array.from({ length: n }, (_, i) => `p${i}`);
      const joints: Fitting[] = [];
      for (let i = 0; i < n; i += 1) {
        for (let j = i + 1; j < n; j += 1) {
          if (random() < 0.55)
            joints.push(joint(`p${i}`, `p${j}`, axes[Math.floor(random() * axes.length)]!));
        }
      }
      const expected = canComeApart(parts, joints);
      const { locked } = assemblyOf(parts, joints);
      if (!expected) lockedCount += 1;
      expect(locked.length === 0, JSON.stringify(joints)).toBe(expected);
      expect(finish(lockedSteps(parts, joints))).toEqual(locked);
    }
    expect(lockedCount).toBeGreaterThan(50);
    expect(lockedCount).toBeLessThan(450);
  });

  /** Tries every way to part every set in two along every axis. */
  function canComeApart(parts: readonly string[], joints: readonly Fitting[]): boolean {
    if (parts.length < 2) return true;
    const inside = new Set(parts);
    const held = joints.filter((one) => inside.has(one.part) && inside.has(one.into));
    for (let mask = 1; mask < 2 ** parts.length - 1; mask += 1) {
      const taken = new Set(parts.filter((_, i) => mask & (1 << i)));
      const across = held.filter((one) => taken.has(one.part) !== taken.has(one.into));
      const ways = across.map((one) => (taken.has(one.part) ? one.direction : one.direction.map((v) => -v)));
      const first = ways[0];
      const agrees = ways.every((way) => way.every((v, i) => Math.abs(v - first![i]!) < 1e-9));
      if (!agrees) continue;
      const rest = parts.filter((part) => !taken.has(part));
      if (canComeApart([...taken], joints) && canComeApart(rest, joints)) return true;
    }
    return false;
  }
});

function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 1664525 + 1013904223) % 4294967296;
    return state / 4294967296;
  };
}

describe("the lines that are tried", () => {
  // A tenon may be turned by its clearance over its length; midway between two, each gives half of the angle between them.
  const most = 2 * Math.asin(slack / 28);
  const between = (angle: number) => {
    const [one, other] = [joint("a", "p", [0, 1, 0]), joint("b", "q", [Math.sin(angle), Math.cos(angle), 0])];
    const midway = [Math.sin(angle / 2), Math.cos(angle / 2), 0];
    return lines([one, other]).some((line) => midway.every((v, k) => Math.abs(v - (line[k] ?? 0)) < 1e-9));
  };

  it("has the one midway between two tenons as far apart as both can give, and not further", () => {
    expect(between(most * 0.6)).toBe(true);
    expect(between(most * 0.99)).toBe(true);
    expect(between(most * 1.01)).toBe(false);
  });
});
