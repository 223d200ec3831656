import { describe, expect, test } from "vitest";
import { read, values } from "./read.ts";

const frame = `post a { section 40 x 40; foot out 150, back 0; height 300 }
post b pair { section 40 x 40; foot out 150, back 300; height 300 }
`;

const faults = (text: string) =>
  read(frame + text).problems.map(({ code, start, end }) => `${code}: ${(frame + text).slice(start, end)}`);

describe("boards, yards, waste", () => {
  test("a board with everything", () => {
    const design = read(`board plank {
  size 2400 x 180 x 32
  count 3
  wane 20
  grain quarter
  timber white-ash moisture 11%
  defect at 640 long 60 from edge 40 wide 35 "knot"
  defect at 30
  defect at 900 from edge 100
  price 38
}
`);
    expect(design.problems).toEqual([]);
    const { name: _, statement: __, ...plank } = design.boards.get("plank")!;
    expect(values(plank)).toEqual({
      is: "board",
      size: { long: 2400, wide: 180, thick: 32 },
      count: 3,
      wane: 20,
      grain: "quarter",
      timber: { species: "white-ash", moisture: 11 },
      price: 38,
      defects: [
        { at: 640, long: 60, fromEdge: 40, wide: 35, what: "knot" },
        { at: 30, long: 50, fromEdge: 0 },
        { at: 900, long: 50, fromEdge: 100 },
      ],
    });
  });

  test("a yard's thicknesses stand in order, each once; its ranges both ways round are refused", () => {
    const design = read("yard y {\n  thick 34, 27, 27mm\n  long 2400 to 3600\n  price 1400\n}\n");
    expect(values(design.yards.get("y")!)).toMatchObject({
      thick: [27, 34],
      long: { low: 2400, high: 3600 },
      price: 1400,
    });
    expect(faults("yard y {\n  thick 27\n  wide 260 to 120\n}\n")).toEqual(["impossible-size: 260 to 120"]);
    expect(faults("yard y {\n  thick 27\n  price -3\n}\n")).toEqual(["impossible-size: -3"]);
  });

  test("inches are kept as millimetres", () => {
    const design = read("units in\nwaste {\n  saw 1/8\n  jointing 1/16\n}\nmake 6\n");
    expect(values(design.waste!)).toEqual({ saw: 25.4 / 8, jointing: 25.4 / 16 });
    expect(design.make?.value).toBe(6);
  });

  test("make is a whole number from 1 to 1000", () => {
    for (const wrong of ["0", "2.5", "1001"])
      expect(faults(`make ${wrong}\n`)).toEqual([`impossible-size: ${wrong}`]);
    expect(read("").make).toBeUndefined();
  });

  test("a part says its board and its hidden faces; a match says how its pieces lie", () => {
    const design = read(`${frame}board p { size 2000 x 100 x 50; count 2 }
post c { section 40 x 40; foot out 0, back 0; height 300; sawn from p.2; hidden inside, back }
seat board { on r; hidden below; sawn from p }
match a, b.left from p end to end
match a, c from p.1
`);
    expect(values(design.posts.get("c")!)).toMatchObject({
      sawnFrom: { name: "p", which: 2 },
      hidden: ["inside", "back"],
    });
    expect(values(design.seat!)).toMatchObject({ sawnFrom: { name: "p" }, hidden: ["below"] });
    expect(values(design.matches)).toMatchObject([
      { parts: [{ name: "a" }, { name: "b", side: "left" }], board: { name: "p" }, laid: "end to end" },
      { parts: [{ name: "a" }, { name: "c" }], board: { name: "p", which: 1 }, laid: "side by side" },
    ]);
  });

  test("parts and boards may be called side and end", () => {
    const text = `board end { size 2000 x 100 x 50 }
post side pair { section 40 x 40; foot out 50, back 0; height 300 }
match side, a from end side by side
match b, side.left from end end to end
match side from end
`;
    expect(faults(text)).toEqual([]);
    expect(values(read(`${frame}${text}`).matches)).toMatchObject([
      { parts: [{ name: "side" }, { name: "a" }], board: { name: "end" }, laid: "side by side" },
      { parts: [{ name: "b" }, { name: "side", side: "left" }], board: { name: "end" }, laid: "end to end" },
      { parts: [{ name: "side" }], board: { name: "end" }, laid: "side by side" },
    ]);
  });

  test("a board that is not there, and a number that is none", () => {
    expect(faults("post c { section 40 x 40; foot out 0, back 0; height 300; sawn from plank }\n")).toEqual([
      "unknown-name: plank",
    ]);
    expect(faults("board p { size 2000 x 100 x 50 }\nmatch a from p.left\n")).toEqual([
      "unknown-name: p.left",
    ]);
  });
});

describe("other files", () => {
  const files = {
    "library.chair": "board p { size 2000 x 100 x 50 }\nyard y { thick 27 }\nwaste { saw 5 }\nmake 3\n",
    "base.chair": `${frame}board p { size 2000 x 100 x 50 }
post c { section 40 x 40; foot out 0, back 0; height 300; sawn from p }
yard y { thick 27 }
waste { saw 5 }
make 3
match a, c from p
`,
  };

  test("use brings in boards, yards and waste, not the number of chairs", () => {
    const design = read('use "library.chair"\n', files);
    expect([...design.boards.keys(), ...design.yards.keys()]).toEqual(["p", "y"]);
    expect(design.waste?.saw?.value).toBe(5);
    expect(design.make).toBeUndefined();
  });

  test("like takes over yards and waste, not boards, matches or what a part is sawn from", () => {
    const design = read('like "base.chair"\n', files);
    expect(design.problems).toEqual([]);
    expect([...design.boards.keys(), ...design.yards.keys()]).toEqual(["y"]);
    expect(design.waste?.saw?.value).toBe(5);
    expect(design.posts.get("c")).toBeDefined();
    expect(design.posts.get("c")?.sawnFrom).toBeUndefined();
    expect([design.matches, design.make]).toEqual([[], undefined]);
  });
});
