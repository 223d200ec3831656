import { describe, expect, it } from "vitest";
import { casesOf } from "../../../server/strength/cases.ts";
import { frameOf } from "../../../server/strength/model.ts";
import { studiedLate } from "../../check.ts";
import { studied } from "../range/files.ts";
import { sound } from "./sound.ts";

/** The forces of one load of the plain chair's own, by node, its own weight left out; with the feet that are kept from sliding. */
function acting(lines: string) {
  const { chair, problems } = studied(sound(`load own {\n${lines}\n}\n`));
  expect(problems.filter(({ severity }) => severity === "error")).toEqual([]);
  const frame = frameOf(chair, "middle");
  const one = casesOf(chair, frame, "domestic").find(({ name }) => name === "own");
  if (!one) throw new Error("no such case");
  const weight = casesOf(studied(sound()).chair, frame, "domestic")[0]?.loads ?? [];
  const own = one.loads.slice(0, one.loads.length - weightCount(weight));
  const sum = (way: number) => own.reduce((all, { v }) => all + (v[way] ?? 0), 0);
  const moment = (of: (at: readonly number[], v: readonly number[]) => number) =>
    own.reduce((all, { node, v }) => all + of(frame.nodes[node]?.at ?? [], v), 0);
  const stopped = one.supports.filter(({ held }) => held[0]).map(({ node }) => frame.nodes[node]?.id);
  return { own, frame, one, sum, moment, stopped };
}

/** Weight acts down at both ends of each beam: what stands after the pushes of a case. */
const weightCount = (loads: readonly { v: readonly number[] }[]): number => {
  let count = 0;
  for (const { v } of [...loads].reverse()) {
    if (Math.abs(v[2] ?? 0) > 20 || (v[1] ?? 0) !== 0) break;
    count++;
  }
  return count;
};

describe("a load of one's own on the frame", () => {
  it("down on the seat comes to its force and its place, spread over a disc", () => {
    const { sum, moment } = acting("  push 500N down on seat at out 120, back 150");
    expect(sum(2)).toBeCloseTo(-500, 3);
    expect(moment(([x = 0], [, , z = 0]) => x * z) / -500).toBeCloseTo(120, 3);
    expect(moment(([, y = 0], [, , z = 0]) => y * z) / -500).toBeCloseTo(150, 3);
  });

  it("a pair is pushed on both, outward each to its own side, and nothing is left over", () => {
    const { own, sum, frame } = acting("  push 200N out on seat-side at 1/4");
    expect(sum(0)).toBeCloseTo(0, 9);
    const left = own.filter(({ v }) => (v[0] ?? 0) > 0);
    expect(left.reduce((all, { v }) => all + (v[0] ?? 0), 0)).toBeCloseTo(200, 9);
    expect(left.every(({ node }) => (frame.nodes[node]?.at[0] ?? 0) > 0)).toBe(true);
  });

  it("along a rail and up a post it acts where the text says", () => {
    const rail = acting("  push 100N down on seat-front at 90");
    const from = Math.max(
      ...(rail.frame.along.get("seat-front") ?? []).map((node) => rail.frame.nodes[node]?.at[0] ?? 0),
    );
    expect(rail.moment(([x = 0], [, , z = 0]) => x * z) / -100).toBeCloseTo(from - 90, 0);
    const post = acting("  push 100N back on back.left at 700");
    expect(post.moment(([, , z = 0], [, y = 0]) => y * z) / 100).toBeCloseTo(700, 3);
  });

  it("keeps the feet that it pushes towards from sliding, or those that `stops` says", () => {
    expect(acting("  push 100N back on back at 700").stopped.every((id) => id?.startsWith("back"))).toBe(
      true,
    );
    expect(
      acting("  push 100N back on back at 700\n  stops front").stopped.every((id) => id?.startsWith("front")),
    ).toBe(true);
    expect(acting("  push 100N down on seat").stopped).toHaveLength(4);
  });

  it("its demands, the level of the file and how often it comes are in what is worked out late", () => {
    const late = (more: string) => studiedLate(sound(more)).late?.strength;
    const once = late("load own {\n  push 900N down on seat\n}\n");
    expect(once?.cases.some(({ load }) => load.name === "own" && load.own)).toBe(true);
    const often = late("load own {\n  push 900N down on seat\n  times 100000\n}\n");
    const own = (all: typeof once) =>
      all?.cases
        .find(({ load, stiffness }) => load.name === "own" && stiffness === "middle")
        ?.members.get("seat-front");
    expect((own(often) ?? 0) / (own(once) ?? 1)).toBeGreaterThan(1.5);
    expect(late("strength severe\n")?.level).toBe("severe");
    expect((late("strength severe\n")?.margin ?? 9) < (late("")?.margin ?? 0)).toBe(true);
  });
});
