import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { parse } from "../../../grammar/parser.ts";
import { vocabulary } from "../../../grammar/vocabulary/index.ts";
import { hangsOn, type Mover } from "../../../server/sensitivity/sensitivity.ts";
import { settle } from "../../../server/settle.ts";

const files = { resolve: (_from: string, path: string) => path, read: () => undefined };

function movers(text: string, value: string): readonly Mover[] {
  const tree = parse(text, vocabulary);
  const { design, chair } = settle({ tree, address: "a.chair", files });
  const before = JSON.stringify(chair.values.get(value));
  const steps = hangsOn({
    tree,
    design,
    chair,
    values: [value],
    rework: (t) => settle({ tree: t, address: "a.chair", files }).chair,
  });
  let next = steps.next();
  while (!next.done) next = steps.next();
  // The tree is left as it was.
  const again = settle({ tree, address: "a.chair", files });
  expect(JSON.stringify(again.chair.values.get(value))).toBe(before);
  return next.value.get(value) ?? [];
}

describe("what a value depends on", { timeout: 60_000 }, () => {
  const mess = readFileSync(new URL("../../../samples/boathouse-mess-chair.chair", import.meta.url), "utf8");

  it("the slope of the seat: trimming the back feet, and where they stand", () => {
    const found = movers(mess, "seat.slope");
    const trim = found.find((one) => one.what === "trim back")!;
    // 1 mm more off the back feet turns the chair by about 1 mm over the distance between the feet, 452 − 20 mm.
    expect(trim.moves).toBeCloseTo(Math.atan(1 / 432), 4);
    expect(trim.step).toEqual({ number: 1, dimension: "length" });
    expect(found.some((one) => one.what === "foot back" && one.of === "back")).toBe(true);
    expect(found.every((one, i) => i === 0 || Math.abs(one.moves) <= Math.abs(found[i - 1]!.moves))).toBe(
      true,
    );
  });

  it("a let is named by its own name; a section of a slat moves nothing of the seat", () => {
    const found = movers(mess, "back-rake");
    expect(found[0]!.what).toBe("back-lean");
    expect(found[0]!.moves).toBeCloseTo(Math.PI / 180, 6);
    expect(movers(mess, "seat.height").some((one) => one.of === "back-slat")).toBe(false);
  });

  it("a post that the trim shortens is as long as the trim leaves it", () => {
    const found = movers(mess, "back.left.length").find((one) => one.what === "trim back");
    expect(found?.moves).toBeCloseTo(-1, 1);
  });

  it("tries what is nearest first and leaves out what cannot matter", () => {
    const tree = parse(mess, vocabulary);
    const { design, chair } = settle({ tree, address: "a.chair", files });
    const steps = (value: string) => {
      let tried = 0;
      const rework = () => {
        tried++;
        return chair;
      };
      const walk = hangsOn({ tree, design, chair, values: [value], rework });
      while (!walk.next().done);
      return tried;
    };
    expect(steps("seat.slope")).toBeLessThan(steps("tip.back"));
    expect(steps("front.left.foot-bevel")).toBeLessThan(steps("seat.slope"));
  });

  it("agrees with a chair written by hand with the figure changed", () => {
    const all = movers(mess, "tip.back-margin");
    const kick = all.find((one) => one.what === "kick")!;
    const marginOf = (text: string) =>
      settle({ tree: parse(text, vocabulary), address: "a.chair", files }).chair.values.get(
        "tip.back-margin",
      )!.number;
    expect(kick.moves).toBeCloseTo(marginOf(mess.replace("kick 4deg", "kick 5deg")) - marginOf(mess), 12);
  });

  it("grows what a line comes to, whatever is written in it", () => {
    const movesOf = (up: string) =>
      movers(
        mess.replace(
          "across back\n  section 22 x 70\n  up seat-height - 12",
          `across back\n  section 22 x 70\n  up ${up}`,
        ),
        "seat.slope",
      ).find((one) => one.what === "up" && one.of === "seat-back")!.moves;
    const plainly = movesOf("428");
    expect(plainly).toBeLessThan(0);
    for (const same of ["seat-height - 12", "seat-height - (24 - 12)", "min(428, 500)", "42.8cm", "2 * 214"])
      expect(movesOf(same), same).toBeCloseTo(plainly, 9);
    expect(movesOf("-12 + seat-height")).toBeCloseTo(plainly, 9);
  });

  it("works out only what the value can depend on, and the whole where that would say otherwise", () => {
    const tree = parse(mess, vocabulary);
    const { design, chair } = settle({ tree, address: "a.chair", files });
    const sizes = (value: string, rework: (t: typeof tree) => typeof chair) => {
      const seen = new Set<number>();
      const walk = hangsOn({
        tree,
        design,
        chair,
        values: [value],
        rework(t) {
          seen.add(t.statements.length);
          return rework(t);
        },
      });
      walk.next();
      walk.next();
      return [...seen];
    };
    const worked = (t: typeof tree) => settle({ tree: t, address: "a.chair", files }).chair;
    const [slight] = sizes("seat.slope", worked);
    expect(slight).toBeLessThan(tree.statements.length * 0.7);
    // A chair of which the lesser tree makes another value is worked out whole from then on.
    const otherwise = (t: typeof tree) =>
      t.statements.length < tree.statements.length ? worked({ ...t, statements: [] }) : worked(t);
    expect(sizes("seat.slope", otherwise)).toEqual([slight, tree.statements.length]);
  });

  it("halfway along a rail is not a length that could grow", () => {
    const bench = readFileSync(new URL("../../../samples/landing-bench.chair", import.meta.url), "utf8");
    const joints = readFileSync(new URL("../../../samples/boathouse-joints.chair", import.meta.url), "utf8");
    const tree = parse(bench, vocabulary);
    const others = { resolve: (_from: string, path: string) => path, read: () => joints };
    const { design, chair } = settle({ tree, address: "a.chair", files: others });
    const walk = hangsOn({
      tree,
      design,
      chair,
      values: ["weight"],
      rework: (t) => settle({ tree: t, address: "a.chair", files: others }).chair,
    });
    let last = walk.next();
    while (!last.done) last = walk.next();
    expect(last.value.get("weight")!.map(({ what }) => what)).not.toContain("from station-from");
  });

  it("a value that is not there depends on nothing", () => {
    expect(movers('chair "x"\n', "seat.slope")).toEqual([]);
  });
});
