/**
 * One fault, one finding, with its cure: the whole sample with one slip each.
 */
import { expect, it } from "vitest";
import { mend } from "../../../server/mends/mends.ts";
import { messageOf } from "../../../server/mends/words.ts";
import { samples } from "../../proofs/mended-texts.ts";
import { plainView } from "../editor/view.ts";

const mess = samples["boathouse-mess-chair.chair"]!;

function foundIn(text: string, bounds: Parameters<typeof mend>[2] = { each: 8, all: 16 }): string[] {
  const { study, files } = plainView(text, "file:///samples/chair.chair", { ...samples });
  mend(study, files, bounds);
  return study.problems.map((problem) => `${problem.code}: ${messageOf(problem)}`);
}

it("the sample itself has none", () => expect(foundIn(mess)).toEqual([]));

it.each([
  ["a missing `pair`", /^post front pair \{/m, "post front {", [/^not-a-pair: .*make front a pair/]],
  [
    "the same where three rails run",
    /^post back pair \{/m,
    "post back {",
    [/^not-a-pair: .*make back a pair/],
  ],
  [
    "a post's height in centimetres",
    /height 930/,
    "height 93",
    [
      /^post-too-short: The post back ends 93 mm up, and .* should enter it above that, the highest at 925 mm\. What works: make it 93cm\.$/,
    ],
  ],
  [
    "a rest that a seat does not have",
    /rests on strips/,
    "rests on rebates",
    [/^unknown-word: `rails` or `strips`/],
  ],
  [
    "a sitter's age alone",
    /^sitter adult/m,
    "sitter child 8",
    [/^missing-value: `to` must follow, as in `sitter child 8 to 10`\.$/],
  ],
  [
    "a rail of one side between pairs",
    /^rail seat-side pair \{/m,
    "rail seat-side {",
    [/^which-side: .*front\.left or front\.right/],
  ],
  [
    "a wrong unit",
    /^units mm/m,
    "units in",
    [/^impossible-size: 11 lengths .*`units in` does not fit them, `units mm` does\.$/],
  ],
  [
    "a length over ten metres",
    /foot out 175,/,
    "foot out 17500,",
    [/^impossible-size: This comes to 17500 mm/],
  ],
  ["an open frame", /^rail seat-back \{[^}]*\}/m, "", [/^unknown-name: .*seat-back/]],
  [
    "a comment of another language",
    /^units mm/m,
    "units mm // all of it",
    [/^sign-spelling: A comment begins with `#`/],
  ],
  [
    "a part of something misspelt",
    /1\/3 of rail/,
    "1/3 of rial",
    [/^unknown-name: .*not of rial; write rail\.$/],
  ],
  [
    "a wood with several species",
    /^timber white-ash/m,
    "timber ash",
    [/^unknown-species: ash may be white-ash or european-ash; which one is meant\?/],
  ],
] as const)("%s", (_, from, to, expected) => {
  expect(mess).toMatch(from);
  const found = foundIn(mess.replace(from, to));
  expect(found).toEqual(expected.map((each) => expect.stringMatching(each)));
});

it("one foot of a pair trimmed: both are offered, and nothing is said of tipping", () => {
  const found = foundIn(
    mess.replace(/^trim back 10.*$/m, "trim back.left 3").replace(/^require seat.*$/m, ""),
  );
  expect(found).toEqual([expect.stringMatching(/^foot-hangs: .*What works: trim both feet of back alike/)]);
});

it("density and moisture in either order come to the same chair", () => {
  const one = mess.replace(/^timber .*$/m, "timber white-ash moisture 9% density 700");
  const other = mess.replace(/^timber .*$/m, "timber white-ash density 700 moisture 9%");
  const weigh = (text: string) =>
    plainView(text, "file:///samples/chair.chair").study.chair.values.get("weight")?.number;
  expect(foundIn(one)).toEqual(foundIn(other));
  expect(weigh(one)).toBeCloseTo(weigh(other)!, 12);
  expect(weigh(one)).not.toBeCloseTo(weigh(mess)!, 2);
});

it("a leg on a solid seat without `pair`: nothing is said of what follows from it", () => {
  const found = foundIn(samples["slip-chair.chair"]!.replace("post front-leg pair", "post front-leg"));
  expect(found).toEqual([
    expect.stringMatching(
      /^post-without-twin: .* to the left of the centre line.* What works: make front-leg a pair\.$/,
    ),
  ]);
});

it("two posts described one by one, alike left and right, are no posts without a twin", () => {
  const leg = (name: string, out: number) =>
    `post ${name} {\n  section 40 x 40\n  foot out ${out}, back 20\n  height 430\n}\n`;
  const twins = (other: number) =>
    foundIn(`${leg("one", 200)}${leg("other", other)}`).filter((each) => each.startsWith("post-without"));
  expect(twins(-200)).toEqual([]);
  expect(twins(-150)).toHaveLength(2);
});

it("a file of joints that is not there: nothing is said of the joints that it may hold", () => {
  const found = foundIn(
    samples["mess-armchair.chair"]!.replace("boathouse-joints.chair", "boathouse-joint.chair"),
  );
  expect(found).toEqual([expect.stringMatching(/^missing-file: There is no file boathouse-joint\.chair/)]);
  const misspelt = foundIn(
    samples["mess-armchair.chair"]!.replace("boathouse-joints.chair", "boathouse-joint.chair").replace(
      "joined cross-tenon",
      "joined cross-tennon",
    ),
  );
  expect(misspelt.map((each) => each.slice(0, each.indexOf(":")))).toEqual(["missing-file", "unknown-name"]);
});

/** Trials as an editor makes them. */
const usual = { each: 32, all: 192 };

it("dowels without room: nothing is said of what cannot be judged for it", () => {
  const found = foundIn(
    samples["mess-armchair.chair"]!.replace("dowels 2 round 8", "dowels 4 round 8"),
    usual,
  );
  expect(found).toEqual([
    expect.stringMatching(/^cannot-be-built: .* What works: change dowels count .* to 2\.$/),
  ]);
});

it("a lean given as a slope, and a height behind two values, are figures that can be moved", () => {
  const stool = samples["joined-stool.chair"]!;
  const [lean] = foundIn(stool.replace("lean-out = 1:10", "lean-out = 1:4"), usual);
  expect(lean).toMatch(/^angle-not-met: .* What works: change lean-out from 1:4 to 1:8\.5\.$/);
  const high = foundIn(stool.replace("= 17 3/4 within 17 to 18 1/2", "= 20 within 17 to 20"), usual);
  expect(high).toContainEqual(
    expect.stringMatching(/^seat-too-high: .* What works: change stool-height from 20 to 18 1\/8\.$/),
  );
});

it("a hyphen between a whole number and its fraction: nothing is said of the range that it leaves", () => {
  const found = foundIn(samples["joined-stool.chair"]!.replace("17 3/4 within", "17-3/4 within"));
  expect(found).toEqual([
    "minus-spacing: A whole number and its fraction have a space between them: `17 3/4`; a minus that subtracts has one on both sides.",
  ]);
});

it("a lean without its unit: a rail that stands with the posts is not said to wind", () => {
  const [front, back] = [/^post front pair \{/m, /^post back pair \{/m];
  const leaning = mess
    .replace(front, "post front pair {\n  splay 4deg foot out")
    .replace(/rail seat-side pair \{/, "rail seat-side pair {\n  stand with posts");
  const codes = (text: string) => foundIn(text).map((each) => each.slice(0, each.indexOf(":")));
  expect(codes(leaning)).toContain("rail-winds");
  expect(codes(leaning.replace(back, "post back pair {\n  splay 4"))).toEqual(
    expect.not.arrayContaining(["rail-winds"]),
  );
});

it("sticks without a joint are offered the one that nothing names", () => {
  const [first] = foundIn(samples["slip-chair.chair"]!.replace(/^ {2}joined stick-tenon\n/m, ""));
  expect(first).toMatch(/^member-without-joint: .* What works: write `joined stick-tenon`\.$/);
});

it("a leg that leans far is offered less splay, though its twin is the one that locks then", () => {
  const [first] = foundIn(samples["slip-chair.chair"]!.replace("splay 9deg", "splay 40deg"));
  expect(first).toMatch(
    /^leg-leans-far: .* What works: change splay of front-leg from 40deg to 24\.\ddeg\.$/,
  );
});

it("a place outside the seat is moved on until its socket has wood round it", () => {
  const slip = samples["slip-chair.chair"]!;
  const [first] = foundIn(slip.replace("at out 155, back 80", "at out 215, back 80"));
  const out = Number(
    /What works: change into out of front-leg from 215 to ([\d.]+)\.$/.exec(first ?? "")?.[1],
  );
  expect(foundIn(slip.replace("at out 155, back 80", `at out ${out}, back 80`))).toEqual([]);
});

it.each([
  [
    "a board of 2 mm, which was to be 2 cm",
    "mess",
    /^seat drop-in \{[^}]*\}/m,
    "seat board {\n  on seat-front, seat-side, seat-back\n  thick 2\n}",
    "2",
  ],
  ["a hollow that leaves 4 mm", "slip", /hollow 12 /, "hollow 40 ", "4"],
] as const)("a seat too thin for a sitter: %s", (_, chair, from, to, left) => {
  const text = chair === "mess" ? mess.replace(/^require weight.*$/m, "") : samples["slip-chair.chair"]!;
  const [found] = foundIn(text.replace(from, to)).filter((each) => each.startsWith("seat-too-thin"));
  expect(found).toMatch(new RegExp(`seat is ${left} mm thick; 12 mm or more .*What works: change `));
  const limited = `${text.replace(from, to)}\nlimit seat-too-thin to 1\n`;
  expect(foundIn(limited).filter((each) => each.startsWith("seat-too-thin"))).toEqual([]);
});
