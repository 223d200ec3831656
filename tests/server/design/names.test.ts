import { describe, expect, test } from "vitest";
import { faults, mended, read } from "./read.ts";

const posts =
  "post front pair {\n  section 40 x 40\n  foot out 200, back 20\n  height 430\n}\npost middle {\n  section 40 x 40\n  foot out 0, back 200\n  height 430\n}\njoint tenon {\n}\n";
const rail = (course: string, more = "") =>
  `${posts}rail r {\n  ${course}\n  section 22 x 70\n  up 400\n${more}}\n`;

describe("references", () => {
  test("lead to what is declared below as well", () => {
    const text =
      "rail r {\n  across front\n  section 22 x 70\n  up tall\n  joined tenon\n}\nlet tall = 300\n";
    expect(faults(`${text}${posts}`)).toEqual([]);
  });

  test("an unknown part, with the nearest of the right kind", () => {
    const text = rail("across frnt");
    expect(faults(text)).toEqual(["unknown-name: frnt"]);
    expect(mended(text, "unknown-name")).toEqual([text.replace("frnt", "front")]);
    expect(read(rail("across lintel")).problems[0]?.message).toBe(
      "There is no post or rail called lintel; there is front, middle, r.",
    );
    expect(mended(rail("across frnt.left"), "unknown-name")).toEqual([rail("across front.left")]);
  });

  test("a name of another kind", () => {
    expect(faults(rail("across front", "  joined middle\n"))).toEqual(["wrong-kind: middle"]);
    expect(faults(rail("across tenon"))).toEqual(["wrong-kind: tenon"]);
    expect(read(rail("across tenon")).problems[0]?.related?.[0]?.message).toBe("tenon is given here");
    expect(faults(`let a = front + 1\n${posts}`)).toEqual(["wrong-kind: front"]);
  });

  test("sides only of pairs", () => {
    expect(faults(rail("from front.left to middle"))).toEqual([]);
    expect(faults(rail("from front.left to middle.right"))).toEqual(["unknown-name: middle.right"]);
    expect(mended(rail("from front to middle.right"), "unknown-name")).toEqual([
      rail("from front to middle"),
    ]);
    expect(faults(rail("from front.top to middle"))).toEqual(["unknown-name: front.top"]);
    expect(mended(rail("from front.top to middle"), "unknown-name")).toEqual([
      rail("from front.left to middle"),
      rail("from front.right to middle"),
    ]);
  });

  test("a part that stands once says which of a pair it meets", () => {
    const text = rail("from front to middle");
    expect(faults(text)).toEqual(["which-side: front"]);
    expect(mended(text, "which-side")).toEqual([
      rail("from front.left to middle"),
      rail("from front.right to middle"),
    ]);
    expect(faults(text.replace("rail r {", "rail r pair {"))).toEqual([]);
    expect(faults(rail("across front.left"))).toEqual(["which-side: front.left"]);
    expect(mended(rail("across front.left"), "which-side")).toEqual([rail("across front")]);
    const side = "rail side pair {\n  from front to middle\n  round 20\n  up 300\n}\n";
    const strut = "post strut {\n  round 20\n  stand on side at 1/2\n  height 400\n}\n";
    expect(faults(`${posts}${side}${strut}`)).toEqual(["which-side: side"]);
    expect(faults(`${posts}${side}${strut.replace("on side", "on side.right")}`)).toEqual([]);
  });

  test("parts cannot depend on each other in a circle", () => {
    expect(faults(rail("from r to middle"))).toEqual(["circular-value: r"]);
    const two = (a: string, b: string) =>
      `${posts}rail one pair {\n  ${a}\n  round 20\n  up 100\n}\nrail two pair {\n  ${b}\n  round 20\n  up 100\n}\n`;
    expect(faults(two("from front to two", "from front to one"))).toEqual(["circular-value: front to one"]);
    expect(faults(two("from front to two", "from front to middle"))).toEqual([]);
    const { problems } = read(two("from front to two", "from front to one"));
    expect(problems[0]?.message).toContain("one → two → one");
    const strut = "post strut {\n  round 20\n  stand on r at 1/2\n  height 400\n}\n";
    expect(faults(`${rail("from front.left to strut")}${strut}`)).toHaveLength(1);
  });

  test("across goes a pair", () => {
    expect(faults(rail("across middle"))).toEqual(["not-a-pair: middle"]);
    expect(faults(rail("over middle"))).toEqual(["not-a-pair: middle"]);
    expect(faults(rail("from middle to middle"))).toEqual(["impossible-size: middle"]);
    expect(faults(rail("from front.left to front.right"))).toEqual([]);
  });

  test("one member of a ladder", () => {
    const ladder = `${posts}rail ladder {\n  across front\n  round 20\n  up 100, 200\n}\n`;
    const slat = (to: string) =>
      `${ladder}slat s {\n  from ladder.1 to ${to}\n  count 2 even\n  section 8 x 30\n}\n`;
    expect(faults(slat("ladder.2"))).toEqual([]);
    expect(read(slat("ladder.2")).slats.get("s")?.to?.value).toEqual({ name: "ladder.2" });
    expect(faults(slat("ladder.two"))).toEqual(["unknown-name: ladder.two"]);
  });

  test.each([
    ["seat board {\n  on r, nothing\n}\n", "unknown-name: nothing"],
    ["trim nothing 5\n", "unknown-name: nothing"],
    ["block b {\n  in r\n  along 50\n  thick 20\n}\n", "wrong-kind: r"],
    ["slat s {\n  from r to front\n  count 2 even\n  section 8 x 30\n}\n", "wrong-kind: front"],
    ["angle a {\n  between seat, nothing\n}\n", "unknown-name: nothing"],
    ["require nothing.length at most 5\n", "unknown-name: nothing"],
    ["require front.left.lenght at most 5\n", "unknown-name: lenght"],
    ["require seat.slop at most 5deg\n", "unknown-name: seat.slop"],
    ["require nothing at most 5\n", "unknown-name: nothing"],
    ["require front at most 5\n", "wrong-kind: front"],
    ["require seat.slope at most 5\n", "wrong-unit: 5"],
    ["require weight at most 400\n", "wrong-unit: 400"],
    ["require width at most 5kg\n", "wrong-unit: 5kg"],
  ])("%s", (line, fault) => expect(faults(`${rail("across front")}${line}`)).toEqual([fault]));

  test("a trim of unknown posts keeps those that are known", () => {
    const design = read(`${posts}trim front, nothing 5\n`);
    expect(design.trims[0]?.posts.map(({ value }) => value.name)).toEqual(["front"]);
  });

  test("the ends of a rail are called by what they enter, or left and right", () => {
    expect(faults(rail("across front", "  end left {\n    tenon square\n  }\n"))).toEqual([]);
    expect(faults(rail("across front", "  end frnt {\n    tenon square\n  }\n"))).toEqual([
      "unknown-name: frnt",
    ]);
  });
});

test("the first of a name keeps it", () => {
  const text = `${posts}post front {\n  section 30 x 30\n  foot out 0, back 0\n  height 100\n}\n`;
  expect(faults(text)).toEqual(["duplicate-name: front"]);
  expect(read(text).posts.get("front")?.section?.value.first).toBe(40);
  expect(mended(text, "duplicate-name")).toEqual([text.replace("post front {", "post front-2 {")]);
});
