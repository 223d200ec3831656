import { describe, expect, test } from "vitest";
import { type Folder, faults, read } from "./read.ts";

const mess = `chair "Mess chair"
units mm
sitter adult
timber white-ash moisture 9%
let seat-height = 440 within 420 to 470
joint tenon {
  tenon thick 1/3 of rail, long 28
  shoulders top 12, bottom 6
}
# Two off.
post front pair {
  section 40 x 40
  foot out 205, back 20
  height seat-height - 12
  taper 30 x 30 from 250 to foot
}
post back pair {
  section 36 x 36
  foot out 175, back 452
  height 930
  rake 6deg above 475
}
rail seat-front {
  across front
  section 22 x 70
  up seat-height - 12
  joined tenon
}
rail seat-side pair {
  from front to back
  section 22 x 70
  up seat-height - 12
  joined tenon
  end back {
    tenon square
  }
}
seat drop-in {
  on seat-front, seat-side
  thick 40
  proud 12
}
trim front, back 10
require weight at most 5.5kg
require seat.slope from 1deg to 4deg
limit rake-over-limit to 8deg
accept tenon-too-thin because "dry"
note 2026-03-14 "Too upright."
`;

const folder = { "mess.chair": mess };
const like = 'like "mess.chair"\n';

describe("like", () => {
  test("starts from all of the other chair but its notes and accepts", () => {
    const design = read(like, folder);
    expect(design.problems).toEqual([]);
    expect(design.title?.value).toBe("Mess chair");
    expect(design.title?.file).toBe("mess.chair");
    expect([...design.names.keys()]).toEqual([
      "seat-height",
      "tenon",
      "front",
      "back",
      "seat-front",
      "seat-side",
    ]);
    expect(design.posts.get("front")).toMatchObject({
      file: "mess.chair",
      description: "Two off.",
      pair: true,
    });
    expect(design.posts.get("front")?.height).toMatchObject({ value: 428, file: "mess.chair" });
    expect(design.seat?.on).toHaveLength(2);
    expect(design.requires.map(({ subject }) => subject)).toEqual(["weight", "seat.slope"]);
    expect(design.limits).toHaveLength(1);
    expect(design.accepts).toEqual([]);
    expect(design.notes).toEqual([]);
    expect(design.links).toEqual([
      { kind: "like", path: "mess.chair", at: { start: 5, end: 17 }, found: true },
    ]);
  });

  test("what this file says replaces property by property", () => {
    const text = `${like}chair "Child's"\nsitter child 3 to 5\nlet seat-height = 300\n# Lighter.\npost front {\n  section 30 x 30\n  splay 2deg\n}\npost rear {\n  section 30 x 30\n  foot out 0, back 300\n  height 300\n}\n`;
    const design = read(text, folder);
    expect(design.problems).toEqual([]);
    expect(design.title).toMatchObject({ value: "Child's" });
    expect(design.title?.file).toBeUndefined();
    expect(design.sitter.value).toEqual({ is: "child", from: 3, to: 5 });
    const front = design.posts.get("front");
    expect(front).toMatchObject({ pair: true, description: "Lighter." });
    expect(front?.file).toBeUndefined();
    expect(front?.section).toEqual({
      value: { first: 30, second: 30 },
      at: { start: text.indexOf("30 x 30"), end: text.indexOf("30 x 30") + 7 },
    });
    expect(front?.height).toMatchObject({ value: 288, file: "mess.chair" });
    expect(front?.tapers).toHaveLength(1);
    expect(design.rails.get("seat-front")?.ups[0]?.value).toBe(288);
    expect([...design.posts.keys()]).toEqual(["front", "back", "rear"]);
  });

  test("one line of a property that may be repeated replaces all of the other file's", () => {
    const design = read(`${like}post front {\n  taper 34 x 34 from 200 to foot\n}\n`, folder);
    expect(design.posts.get("front")?.tapers.map(({ value }) => value.section.first)).toEqual([34]);
  });

  test("ends by name, requires by value, limits by rule, trims by post", () => {
    const text = `${like}rail seat-side {\n  end front {\n    fit 0.2\n  }\n  end back {\n    fit 0.1\n  }\n}\ntrim back 4\nrequire weight at most 3kg\nlimit rake-over-limit to 9deg\n`;
    const design = read(text, folder);
    expect(design.problems).toEqual([]);
    const ends = design.rails
      .get("seat-side")
      ?.ends.map(({ which, joint }) => [which.value, joint.line?.value, joint.fit?.value]);
    expect(ends).toEqual([
      ["back", "square", 0.1],
      ["front", undefined, 0.2],
    ]);
    expect(
      design.trims.map(({ posts, length }) => [posts.map(({ value }) => value.name), length.value]),
    ).toEqual([
      [["front"], 10],
      [["back"], 4],
    ]);
    expect(design.requires.map(({ subject, bound }) => [subject, bound?.value.high])).toEqual([
      ["seat.slope", (4 * Math.PI) / 180],
      ["weight", 3],
    ]);
    expect(design.limits).toHaveLength(1);
  });

  test("a part of another kind takes the place of the other's wholly", () => {
    const design = read(
      `${like}rail back {\n  across front\n  section 20 x 40\n  up 100\n}\nwithout seat-side\n`,
      folder,
    );
    expect(design.posts.has("back")).toBe(false);
    expect(design.rails.get("back")?.section?.value).toEqual({ first: 20, second: 40 });
  });

  test("without takes away", () => {
    const design = read(`${like}without seat, seat-side, seat.slope, rake-over-limit, trim\n`, folder);
    expect(design.problems).toEqual([]);
    expect(design.seat).toBeUndefined();
    expect(design.rails.has("seat-side")).toBe(false);
    expect(design.requires).toHaveLength(1);
    expect(design.limits).toEqual([]);
    expect(design.trims).toEqual([]);
    expect(faults(`${like}without arm\n`, folder)).toEqual(["unknown-name: arm"]);
  });

  test("taking away what the rest needs is told once, at the file's name", () => {
    expect(faults(`${like}without tenon\n`, folder)).toEqual(['faulty-file: "mess.chair"']);
    expect(read(`${like}without tenon\n`, folder).problems[0]?.message).toBe(
      "mess.chair has 2 errors; the first is in line 27 (unknown name).",
    );
  });

  test("bare lengths of the other file keep its units", () => {
    const design = read(`units in\n${like}post front {\n  section 2 x 2\n}\n`, folder);
    expect(design.units).toBe("in");
    expect(design.posts.get("front")?.section?.value).toEqual({ first: 50.8, second: 50.8 });
    expect(design.posts.get("front")?.height?.value).toBe(428);
    const inch = { "inch.chair": "units in\nlet tall = 17 1/2\nlet half = tall / 2\n" };
    expect(
      read(
        'use "inch.chair"\nunits mm\npost p {\n  section 40 x 40\n  height tall\n  foot out half - 10, back 1\n}\n',
        inch,
      ).posts.get("p"),
    ).toMatchObject({
      height: { value: 444.5 },
      place: { value: { out: 212.25, back: 1 } },
    });
    expect(read(like, folder).units).toBe("mm");
    expect(
      read('like "inch.chair"\npost p {\n  section 2 x 2\n}\n', inch).posts.get("p")?.section?.value.first,
    ).toBe(50.8);
  });

  test("what a part still lacks after merging is told", () => {
    const text = `${like}post extra {\n  section 30 x 30\n}\n`;
    expect(faults(text, folder)).toEqual(["missing-property: post", "missing-property: post"]);
  });

  test("of three files the nearest speaks last", () => {
    const files = { ...folder, "two.chair": `${like}let seat-height = 400\npost back {\n  height 800\n}\n` };
    const design = read('like "two.chair"\npost back {\n  section 30 x 30\n}\n', files);
    expect(design.problems).toEqual([]);
    expect(design.posts.get("back")).toMatchObject({
      height: { value: 800, file: "two.chair" },
      section: { value: { first: 30 } },
    });
    expect(design.posts.get("front")?.height?.value).toBe(388);
  });
});

describe("use", () => {
  test("brings in joints, lets and limits only", () => {
    const design = read('use "mess.chair"\n', folder);
    expect(design.problems).toEqual([]);
    expect([...design.names.keys()]).toEqual(["seat-height", "tenon"]);
    expect(design.limits).toHaveLength(1);
    expect(design.title).toBeUndefined();
    expect(design.requires).toEqual([]);
  });

  test("paths start at the file they stand in", () => {
    const files = {
      "library/all.chair": 'use "tenons.chair"\n',
      "library/tenons.chair": "joint t {\n  fit 0.1\n}\n",
    };
    expect(read('use "library/all.chair"\n', files).joints.get("t")).toMatchObject({
      fit: { value: 0.1 },
      file: "library/tenons.chair",
    });
  });
});

describe("files with something wrong", () => {
  test("one that is not there", () => {
    const design = read('use "gone.chair"\nlike "also.chair"\n');
    expect(design.problems.map(({ code }) => code)).toEqual(["missing-file", "missing-file"]);
    expect(design.links.map(({ found }) => found)).toEqual([false, false]);
    expect(faults('use "gone.chair"\npost p {\n  section 4 x 4\n}\n')[0]).toBe('missing-file: "gone.chair"');
  });

  test("circles", () => {
    expect(faults('like "here.chair"\n')).toEqual(['circular-file: "here.chair"']);
    const files = { "a.chair": 'like "b.chair"\n', "b.chair": 'like "a.chair"\n' };
    expect(faults('like "a.chair"\n', files)).toEqual(['circular-file: "a.chair"']);
    expect(read('like "a.chair"\n', files).problems[0]?.message).toContain("a.chair → b.chair → a.chair");
  });

  test("errors inside are said once, whichever stage finds them", () => {
    expect(faults('use "bad.chair"\n', { "bad.chair": "joint {\n" })).toEqual(['faulty-file: "bad.chair"']);
    const bad = { "bad.chair": "let a = 3mm + 2deg\nlet b = nothing\n" };
    expect(faults('use "bad.chair"\n', bad)).toEqual(['faulty-file: "bad.chair"']);
    expect(read('use "bad.chair"\n', bad).problems[0]?.message).toContain("has 2 errors");
    expect(faults('like "mid.chair"\n', { "mid.chair": 'use "bad.chair"\n', ...bad })).toEqual([
      'faulty-file: "mid.chair"',
    ]);
  });

  test("are reported by file and line, and nothing of their text is repeated", () => {
    const message = (files: Folder) => read('use "a.chair"\n', files).problems.map((each) => each.message);
    expect(message({ "a.chair": "let b = 1\nsecret\n" })).toEqual([
      "a.chair has an error; it is in line 2 (unknown word).",
    ]);
    expect(message({ "a.chair": 'use "b.chair"\n', "b.chair": "\n\nlet secret = secret2\n" })).toEqual([
      "a.chair leads to b.chair, which has an error; it is in line 3 (unknown name).",
    ]);
    for (const path of ["secret.chair", "secret", "b.chair"]) {
      const files = { "a.chair": `use "${path}"\n`, "b.chair": "$ecret\nsecret {\n" };
      expect(message(files)).toHaveLength(1);
      expect(message(files)[0]).not.toMatch(/secret|ecret/);
    }
  });
});

describe("files without end", () => {
  const told = (text: string, folder: (name: string) => string | undefined) =>
    read(
      text,
      new Proxy({} as Folder, {
        ownKeys: () => [],
        get: (_, name) => (typeof name === "string" ? folder(name) : undefined),
      }),
    ).problems.map(({ message }) => message);
  const rank = (name: string) => Number(/\d+/.exec(name)?.[0] ?? 0);
  const beyond = (what: string) => [
    `The files that this one starts from ${what}; what goes beyond that is not read.`,
  ];
  const small = (name: string) => `let a${rank(name)} = 1\n`;
  const row = (length: number) => (name: string) =>
    rank(name) === length ? "let a = 1\n" : `like "${rank(name) + 1}.chair"\n`;

  test("that each name the next four times are read once each", () => {
    const files = (name: string) =>
      rank(name) > 20 ? small(name) : `use "${rank(name) + 1}.chair"\n`.repeat(4);
    expect(told('use "1.chair"\n', files)).toEqual([]);
  });

  test("in a row are followed 64 deep", () => {
    expect(told('like "1.chair"\n', row(64))).toEqual([]);
    expect(told('like "1.chair"\n', row(65))).toEqual(beyond("each name the next, more than 64 deep"));
  });

  test("are 500 at most, 8 MB and 100,000 words and signs", () => {
    const named = (count: number) => Array.from({ length: count }, (_, at) => `use "${at}.chair"\n`).join("");
    expect(told(named(500), small)).toEqual([]);
    expect(told(named(501), small)).toEqual(beyond("are more than 500"));
    const long = (name: string) => `# ${"x".repeat(3_000_000)}\n${small(name)}`;
    expect(told(named(2), long)).toEqual([]);
    expect(told(named(3), long)).toEqual(beyond("are longer than 8 MB together"));
    const lets = "let a = 1\n".repeat(12_000);
    expect(told(named(1), () => lets)).toHaveLength(1);
    expect(told(named(2), () => lets)).toContainEqual(
      beyond("hold more than 100,000 words and signs together")[0],
    );
  });

  test("that take each other over again and again are put together only so often", () => {
    const files = (name: string) =>
      rank(name) > 40
        ? Array.from({ length: 2_000 }, (_, at) => `let a${at} = 1\n`).join("")
        : Array.from({ length: 41 - rank(name) }, (_, at) => `use "${rank(name) + at + 1}.chair"\n`).join("");
    expect(told('use "1.chair"\n', files)).toEqual(beyond("name the same files too often"));
  });
});
