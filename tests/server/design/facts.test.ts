import { describe, expect, test } from "vitest";
import type { Design } from "../../../server/design/design.ts";
import { deg, faults, read, textAt, values } from "./read.ts";

function post(lines: string, units = "mm"): unknown {
  const rail =
    "rail r {\n  from q to s\n  section 20 x 60\n  up 300\n}\npost q {\n  section 40 x 40\n  foot out 0, back 300\n  height 400\n}\npost s {\n  section 40 x 40\n  foot out 0, back 500\n  height 400\n}\njoint j {\n}\n";
  const text = `units ${units}\n${rail}post p {\n${lines}\n}\n`;
  return values(read(text).posts.get("p"));
}

describe("posts", () => {
  test("a squared post with everything", () => {
    const lines = [
      "section 36 x 40",
      "foot out 175, back -20",
      "height 930",
      "splay 2deg",
      "rake 1deg",
      "rake 6.5deg above 475 over 90",
      "kick 4deg below 100 over 50",
      "bend 1deg above 600",
      "bend 2deg below 200 over 30 seen from front",
      "taper 28 x 26 from 480 to top keeping front, inside",
      "taper 30 x 30 from 250 to foot",
      "turn 10deg",
      "top square",
      "timber red-oak moisture 10% density 640",
    ];
    expect(post(lines.join("\n"))).toEqual({
      is: "post",
      name: "p",
      pair: false,
      section: { first: 36, second: 40 },
      place: { station: "foot", out: 175, back: -20 },
      height: 930,
      splay: deg(2),
      rake: deg(1),
      knees: [
        { word: "rake", seen: "side", height: 475, stretch: "above", slope: deg(6.5), over: 90 },
        { word: "kick", seen: "side", height: 100, stretch: "below", slope: -deg(4), over: 50 },
        { word: "bend", seen: "side", height: 600, stretch: "above", slope: deg(1), over: 0 },
        { word: "bend", seen: "front", height: 200, stretch: "below", slope: deg(2), over: 30 },
      ],
      tapers: [
        { section: { first: 28, second: 26 }, from: 480, to: "top", keeping: ["front", "inside"] },
        { section: { first: 30, second: 30 }, from: 250, to: "foot", keeping: [] },
      ],
      turn: deg(10),
      topSquare: true,
      timber: { species: "red-oak", moisture: 10, density: 640 },
    });
  });

  test("a turned post", () => {
    const lines =
      "round 38\nat 430 out 190, back 40\ntaper 22 from 300 to foot\nshape at top round 30\nshape at foot round 20\nshape at 200 44 x 40";
    expect(post(lines)).toMatchObject({
      round: 38,
      place: { station: 430, out: 190, back: 40 },
      tapers: [{ section: { first: 22, second: 22 }, from: 300, to: "foot" }],
      shape: [
        { station: "foot", first: 20, second: 20 },
        { station: 200, first: 44, second: 40 },
        { station: "top", first: 30, second: 30 },
      ],
    });
  });

  test("placed by its top, standing on a rail, and with a tenon into one", () => {
    expect(post("section 40 x 40\ntop back 30, out 200")).toMatchObject({
      place: { station: "top", out: 200, back: 30 },
    });
    expect(post("stand on r at 1/3")).toMatchObject({
      standsOn: { rail: { name: "r" }, station: { share: 1 / 3 } },
    });
    expect(post("stand on r at 25%")).toMatchObject({ standsOn: { station: { share: 0.25 } } });
    expect(post("stand on r at 120")).toMatchObject({ standsOn: { station: { mm: 120 } } });
    expect(post("stand on r at 12", "cm")).toMatchObject({ standsOn: { station: { mm: 120 } } });
    expect(post("top into r with j")).toMatchObject({ topInto: { rail: { name: "r" }, joint: "j" } });
    expect(post("top into r")).toMatchObject({ topInto: { rail: { name: "r" } } });
  });

  test("the rake of the whole post is given once", () => {
    const text =
      "post p {\n  rake 2deg\n  rake 3deg\n  section 40 x 40\n  foot out 0, back 0\n  height 400\n}\n";
    expect(faults(text)).toEqual(["given-twice: 3deg"]);
    expect(faults(text.replace("rake 3deg\n", "splay 1deg\n").replace("2deg", "2deg over 40"))).toEqual([
      "nothing-to-curve: 40",
    ]);
  });

  test("a post needs a height unless a rail lies over it", () => {
    const text = "post p pair {\n  section 40 x 40\n  foot out 200, back 0\n}\n";
    expect(faults(text)).toEqual(["missing-property: post"]);
    expect(faults(`${text}rail r {\n  over p\n  section 20 x 60\n  up 700\n}\n`)).toEqual([]);
  });
});

const frame =
  "post front pair {\n  section 40 x 40\n  foot out 200, back 20\n  height 430\n}\npost back pair {\n  section 40 x 40\n  foot out 180, back 450\n  height 900\n}\njoint j {\n}\njoint k {\n}\n";

function rail(lines: string, header = "rail r"): unknown {
  return values(read(`${frame}${header} {\n${lines}\n}\n`).rails.get("r"));
}

describe("rails", () => {
  test("what is assumed", () => {
    const design = read(`${frame}rail r {\n  across front\n  section 22 x 70\n  up 400\n}\n`);
    expect(values(design.rails.get("r"))).toEqual({
      is: "rail",
      name: "r",
      pair: false,
      course: { is: "across", of: { name: "front" } },
      section: { first: 22, second: 70 },
      ups: [400],
      face: { is: "centred", inset: 0 },
      stand: "plumb",
      rests: [],
      halved: [],
      arches: [],
      tapers: [],
      shape: [],
      ends: [],
    });
    expect(design.rails.get("r")?.face.assumed).toBe(true);
    expect(design.rails.get("r")?.stand.assumed).toBe(true);
  });

  test("everything said", () => {
    const lines = [
      "from front to back",
      "section 22 x 70",
      "up 400",
      "fall 15",
      "lie flat",
      "face inset 3",
      "stand with posts",
      "arch 14 below",
      "arch 5 above",
      "bow 22 back",
      "taper 18 x 60 to ends",
      "joined j",
      "timber red-oak",
      "end back {\n  tenon square\n  shoulders top 4\n  joined k\n}",
      "end front {\n  over\n  overhang 35\n}",
    ];
    expect(rail(lines.join("\n"), "rail r pair")).toEqual({
      is: "rail",
      name: "r",
      pair: true,
      course: { is: "from-to", from: { name: "front" }, to: { name: "back" } },
      section: { first: 22, second: 70 },
      ups: [400],
      fall: 15,
      flat: true,
      face: { is: "inset", inset: 3 },
      stand: "with posts",
      rests: [],
      halved: [],
      arches: [
        { rise: 14, edge: "below" },
        { rise: 5, edge: "above" },
      ],
      bow: { rise: 22, towards: "back" },
      tapers: [{ section: { first: 18, second: 60 }, towards: "ends" }],
      shape: [],
      joined: "j",
      timber: { species: "red-oak" },
      ends: [
        { which: "back", joined: "k", joint: { line: "square", shoulderTop: 4 } },
        { which: "front", joint: {}, over: { overhang: 35 } },
      ],
    });
  });

  test("halved over others, with a joint or without", () => {
    const cross = (name: string, line = "") =>
      `rail ${name} {\n  from front.left to back.right\n  section 20 x 40\n  up 200\n${line}}\n`;
    const over = "  halved over a with j\n  halved over b\n";
    const design = read(`${frame}${cross("a")}${cross("b")}${cross("r", over)}`);
    expect(values(design.rails.get("r")?.halved)).toEqual([
      { over: { name: "a" }, joint: "j" },
      { over: { name: "b" } },
    ]);
  });

  test("courses", () => {
    const others = "rail a pair {\n  from front to back\n  round 20\n  up 300\n}\n";
    const course = (line: string) =>
      (
        values(
          read(`${frame}${others}rail r {\n  ${line}\n  overhang 30\n  round 22\n  up 200\n}\n`).rails.get(
            "r",
          ),
        ) as { course?: unknown }
      ).course;
    expect(course("across a at 1/2")).toEqual({ is: "across", of: { name: "a" }, station: { share: 0.5 } });
    expect(course("across a at 120")).toEqual({ is: "across", of: { name: "a" }, station: { mm: 120 } });
    expect(course("over back")).toEqual({ is: "over", of: { name: "back" }, overhang: 30 });
    expect(course("from front.left to a.right at 1/3 of rail")).toEqual({
      is: "from-to",
      from: { name: "front", side: "left" },
      to: { name: "a", side: "right" },
      stationTo: { share: 1 / 3 },
    });
    expect(course("from a.left at 40 to back.left")).toMatchObject({ stationFrom: { mm: 40 } });
  });

  test("round, sloping, flush, and tapering to one end", () => {
    const lines = "across back\nround 22\nup 300\nslope 1:20\nface flush\ntaper 18 x 18 to end";
    expect(rail(lines)).toMatchObject({
      round: 22,
      slope: Math.atan(1 / 20),
      face: { is: "flush" },
      tapers: [{ towards: "end" }],
    });
  });

  test("a ladder counts from below", () => {
    expect(rail("across back\nround 22\nup 700, 500, 600")).toMatchObject({ ups: [500, 600, 700] });
    expect(rail("across back\nround 22\ncount 4 even from 560 to 920")).toMatchObject({
      ups: [560, 680, 800, 920],
    });
  });

  test("an overhang needs an end that lies over", () => {
    expect(
      faults(
        `${frame}rail r {\n  across front\n  round 20\n  up 300\n  end left {\n    overhang 5\n  }\n}\n`,
      ),
    ).toEqual(["needs-over: 5"]);
  });

  test("a rail between posts needs its height", () => {
    expect(faults(`${frame}rail r {\n  across front\n  round 20\n}\n`)).toEqual(["missing-property: rail"]);
  });
});

const rails = `${frame}rail low {\n  across back\n  section 20 x 40\n  up 500\n}\nrail high {\n  across back\n  section 20 x 60\n  up 880\n}\n`;

describe("slats, blocks, the seat", () => {
  test("slats", () => {
    const slat = (lines: string) => values(read(`${rails}slat s {\n${lines}\n}\n`).slats.get("s"));
    expect(
      slat(
        "from low to high\ncount 4 even\nsection 9 x 38\nbow 12 back\njoined j\ntimber red-oak\nend high {\n  joined k\n}",
      ),
    ).toEqual({
      is: "slat",
      name: "s",
      from: { name: "low" },
      to: { name: "high" },
      count: 4,
      section: { first: 9, second: 38 },
      bow: { rise: 12, towards: "back" },
      joined: "j",
      timber: { species: "red-oak" },
      ends: [{ which: "high", joined: "k", joint: {} }],
    });
    expect(slat("from low to high\nat 60, 1/2, 240\nround 14")).toMatchObject({
      stations: [{ mm: 60 }, { share: 0.5 }, { mm: 240 }],
      round: 14,
    });
  });

  test("blocks", () => {
    const block = (lines: string) => values(read(`${rails}block b {\n${lines}\n}\n`).blocks.get("b"));
    expect(block("in front\nalong 60\nthick 30\nup 420\nscrewed\ntimber red-oak")).toEqual({
      is: "block",
      name: "b",
      in: { name: "front" },
      along: 60,
      thick: 30,
      up: 420,
      fixing: "screwed",
      timber: { species: "red-oak" },
    });
    expect(block("in front.left\nalong 60\nthick 30\nglued")).toMatchObject({
      in: { name: "front", side: "left" },
      fixing: "glued",
    });
  });

  test("the seat", () => {
    const text = `${rails}# Cherry, oiled.\nseat board {\n  on low, high\n  thick 18\n  proud 15\n  sag 2\n  overhang out 10, front 15\n  timber cherry\n}\n`;
    const seat = read(text).seat;
    expect(values(seat)).toEqual({
      is: "seat",
      kind: "board",
      description: "Cherry, oiled.",
      on: [{ name: "low" }, { name: "high" }],
      thick: 18,
      proud: 15,
      sag: 2,
      overhang: { out: 10, front: 15, back: 0 },
      timber: { species: "cherry" },
    });
    expect(seat && textAt(text, seat)).toBe("board");
  });
});

describe("joints", () => {
  const joint = (lines: string) => values(read(`joint j {\n${lines}\n}\n`).joints.get("j"));

  test("a tenon with everything", () => {
    const lines = [
      "tenon thick 1/3 of rail, wide 40, long 2/3 of post",
      "tenon square",
      "tenon with bow",
      "set 6 from outside",
      "shoulders bottom 6, top 12",
      "haunch long 10 wide 11 sloped",
      "mitre gap 1",
      "through wedged",
      "peg 8 draw 1.5 count 2 setback 12",
      "dowels 2 round 10 long 50",
      "twin gap 20",
      "bridle",
      "glue hide",
      "fit -0.1",
    ];
    expect(joint(lines.join("\n"))).toEqual({
      is: "joint",
      name: "j",
      tenonThick: { share: 1 / 3, of: "rail" },
      tenonWide: { mm: 40 },
      tenonLong: { share: 2 / 3, of: "post" },
      line: "square",
      withBow: true,
      set: { from: "outside", distance: 6 },
      shoulderTop: 12,
      shoulderBottom: 6,
      haunch: { long: 10, wide: 11, sloped: true },
      mitre: { gap: 1 },
      through: { wedged: true },
      peg: { diameter: 8, draw: 1.5, count: 2, setback: 12 },
      dowels: { count: 2, diameter: 10, long: 50 },
      twin: { gap: 20 },
      bridle: true,
      glue: "hide",
      fit: -0.1,
    });
  });

  test("a few words only", () => {
    expect(
      joint("tenon thick full\nset centred\nmitre\nthrough\npeg 8\nhaunch long 9\ntenon in-line"),
    ).toEqual({
      is: "joint",
      name: "j",
      tenonThick: "full",
      set: { from: "centred" },
      mitre: { gap: 0 },
      through: { wedged: false },
      peg: { diameter: 8, draw: 0, count: 1 },
      haunch: { long: 9 },
      line: "in-line",
    });
    expect(joint("round 16, long 25")).toMatchObject({ round: { diameter: 16, long: { mm: 25 } } });
  });

  test("a part of something that is not a size", () => {
    expect(faults("joint j {\n  tenon thick 1/3 of seat\n}\n")).toEqual(["unknown-name: seat"]);
  });
});

describe("the whole chair", () => {
  const whole = (text: string): Design => read(text);

  test("title, units, timber, description", () => {
    const design = whole('# Eight off.\nchair "Mess chair"\nunits in\ntimber white-ash moisture 9%\n');
    expect(values(design.title)).toBe("Mess chair");
    expect(design.titleAt).toEqual({ start: 13, end: 18 });
    expect(design.units).toBe("in");
    expect(values(design.timber)).toEqual({ species: "white-ash", moisture: 9 });
    expect(whole("units mm\nlet a = 3\n").titleAt).toEqual({ start: 0, end: 8 });
    expect(whole("").titleAt).toEqual({ start: 0, end: 0 });
  });

  test("sitters", () => {
    const sitter = (text: string) => values(whole(text).sitter);
    expect(sitter("")).toEqual({ is: "adult" });
    expect(whole("").sitter.assumed).toBe(true);
    expect(sitter("sitter adult women\n")).toEqual({ is: "adult", group: "women" });
    expect(sitter("sitter child 3 to 5\n")).toEqual({ is: "child", from: 3, to: 5 });
    expect(sitter("sitter school-mark 4\n")).toEqual({ is: "school-mark", mark: 4 });
    expect(sitter("sitter {\n  popliteal-height 41cm\n  weight 74kg\n}\n")).toEqual({
      is: "named",
      measures: { "popliteal-height": 410, weight: 74 },
    });
  });

  test("angles", () => {
    const angle = (lines: string) => values(read(`${rails}angle a {\n${lines}\n}\n`).angles.get("a"));
    expect(angle("between seat, back above 530 seen from side\nlimit 5deg to 7deg")).toEqual({
      is: "angle",
      name: "a",
      between: [{ is: "seat" }, { is: "part", part: { name: "back" }, above: 530 }],
      seenFrom: "side",
      limit: { low: deg(5), high: deg(7) },
    });
    expect(angle("between front.left below 200, floor\nlimit at most 3deg")).toMatchObject({
      between: [{ is: "part", part: { name: "front", side: "left" }, below: 200 }, { is: "floor" }],
      limit: { high: deg(3) },
    });
    expect(angle("between front above 200, seat seen from front")).toMatchObject({
      between: [{ is: "part", part: { name: "front" }, above: 200 }, { is: "seat" }],
      seenFrom: "front",
    });
    expect(angle("between low, high\nlimit at least 1deg")).toMatchObject({ limit: { low: deg(1) } });
    expect(faults(`${rails}angle a {\n  between back\n}\n`)).toEqual(["needs-two: back"]);
    expect(faults(`${rails}angle a {\n  between back, front, floor\n}\n`)).toEqual([
      "needs-two: back, front, floor",
    ]);
  });

  test("trims, limits, requires, accepts, notes, boards", () => {
    const text = `${rails}let lean = 6deg
trim front.left, back 8
limit rake-over-limit to 8deg
limit tenon-too-thin at least 1/4 of rail
limit joints-too-near from 10 to 20mm
require weight at most 5.5kg
require low.left.tenon-thick >= 6
require lean < 7deg
require lean + 1deg at most 8deg
require seat.slope from 1deg to 4deg
accept tenon-too-thin on low because "dry"
accept tenon-too-thin on low.left to back.left because "dry"
note 2026-03-14 "Too upright."
board plank {
  size 2400 x 180 x 32
}
`;
    const design = read(text);
    expect(design.problems).toEqual([]);
    expect(values(design.trims)).toEqual([
      { posts: [{ name: "front", side: "left" }, { name: "back" }], length: 8 },
    ]);
    expect(values(design.limits)).toEqual([
      { rule: "rake-over-limit", bound: { dimension: "angle", low: deg(8), high: deg(8) } },
      { rule: "tenon-too-thin", bound: { dimension: "share", low: 0.25 } },
      { rule: "joints-too-near", bound: { dimension: "length", low: 10, high: 20 } },
    ]);
    expect(values(design.requires)).toEqual([
      { subject: "weight", bound: { dimension: "mass", high: 5.5 } },
      { subject: "low.left.tenon-thick", bound: { dimension: "length", low: 6 } },
      {
        subject: "lean",
        computed: { dimension: "angle", number: deg(6) },
        bound: { dimension: "angle", high: deg(7), strict: true },
      },
      {
        subject: "lean + 1deg",
        computed: { dimension: "angle", number: deg(7) },
        bound: { dimension: "angle", high: deg(8) },
      },
      { subject: "seat.slope", bound: { dimension: "angle", low: deg(1), high: deg(4) } },
    ]);
    expect(values(design.accepts)).toEqual([
      { rule: "tenon-too-thin", on: "low", because: "dry" },
      { rule: "tenon-too-thin", on: "low.left to back.left", because: "dry" },
    ]);
    expect(values(design.notes)).toEqual([{ date: "2026-03-14", text: "Too upright." }]);
    expect([...design.boards.keys()]).toEqual(["plank"]);
    expect([...design.names.keys()]).toEqual(["front", "back", "j", "k", "low", "high", "lean", "plank"]);
  });

  test("facts stand at the narrowest text that gives them", () => {
    const text = `${frame}# The front one.\nrail r {\n  across front\n  section 22 x 70\n  up 430 - 12\n  arch 14 below\n  joined j\n}\n`;
    const r = read(text).rails.get("r");
    expect(r?.description).toBe("The front one.");
    const places = [r?.course, r?.section, r?.ups[0], r?.arches[0], r?.joined].map(
      (fact) => fact && textAt(text, fact),
    );
    expect(places).toEqual(["front", "22 x 70", "430 - 12", "14", "j"]);
    expect(r && textAt(text, r)).toBe("r");
    const back = read(text).posts.get("back")?.place;
    expect(back && textAt(text, back)).toMatch(/180.*450/);
  });
});
