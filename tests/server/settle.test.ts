import { describe, expect, test } from "vitest";
import { chairOf, settled, value } from "./chair/from-text.ts";

const posts = `
units mm
post front pair {
  section 40 x 40
  foot out 200, back 0
  height 440
}
post back pair {
  section 40 x 40
  foot out 170, back 400
  height 900
}
`;
const rail = (name: string, course: string, up: string, more = "") =>
  `rail ${name} {\n  ${course}\n  section 20 x 60\n  up ${up}\n  ${more}\n}\n`;

describe("values in the text", () => {
  test("one rail takes its height from another's length", () => {
    const text = `${posts}${rail("seat-front", "across front", "440")}${rail("low", "across front", "seat-front.length / 2")}`;
    const chair = chairOf(text);
    // 400 between centre lines less 40.
    expect(value(chair, "seat-front.length")).toBeCloseTo(360, 9);
    expect(chair.rails.get("low")?.start[2]).toBeCloseTo(180, 9);
  });

  test("through a let, and through several links", () => {
    const text = `${posts}let half = first.length / 2
${rail("first", "across front", "440")}${rail("second", "across front", "half")}${rail("third", "across back", "second.left.face-bevel / 1deg * 3mm")}`;
    const chair = chairOf(text);
    expect(chair.rails.get("second")?.start[2]).toBeCloseTo(180, 9);
    // 90° as a number of degrees, in threes.
    expect(chair.rails.get("third")?.start[2]).toBeCloseTo(270, 9);
  });

  test("a rail above the seat may depend on the seat's height, which the trim moves", () => {
    const text = `${posts}${rail("seat-front", "across front", "430")}${rail("seat-back", "across back", "430")}
${rail("seat-side pair", "from front to back", "430")}${rail("crest", "across back", "seat.height + 400")}
seat board {
  on seat-front, seat-side, seat-back
  thick 20
}
trim back 8
`;
    const chair = chairOf(text);
    expect(value(chair, "seat.slope")).toBeGreaterThan(1);
    expect(chair.rails.get("crest")?.start[2]).toBeCloseTo(value(chair, "seat.height") + 400, 6);
  });
});

describe("circles", () => {
  test("a rail that depends on its own length is told, with what it depends on", () => {
    const text = `${posts}${rail("seat-front", "across front", "seat-front.length")}`;
    const { problems, chair } = settled(text);
    expect(problems.map((p) => p.code)).toEqual(["circular-value"]);
    expect(text.slice(problems[0]!.start, problems[0]!.end)).toBe("seat-front.length");
    expect(chair.rails.has("seat-front")).toBe(false);
    // The rest of the chair stands.
    expect(chair.posts.size).toBe(4);
  });

  test("two rails that depend on each other", () => {
    const { problems } = settled(
      `${posts}${rail("a", "across front", "b.length")}${rail("b", "across back", "a.length")}`,
    );
    expect(problems.map((p) => p.code)).toEqual(["circular-value", "circular-value"]);
  });

  test("a trim that depends on the seat it tilts", () => {
    const text = `${posts}${rail("seat-front", "across front", "430")}${rail("seat-back", "across back", "430")}
seat board {
  on seat-front, seat-back
  thick 20
}
trim back seat.height / 50
`;
    const { problems, chair } = settled(text);
    expect(problems.map((p) => p.code)).toEqual(["circular-value"]);
    expect(chair.seat).toBeDefined();
  });

  test.each(["front.foot-bevel", "back.left.foot-bevel"])(
    "a trim that depends on %s, which it tilts",
    (bevel) => {
      const { problems } = settled(`${posts}trim back ${bevel} / 1deg * 0.1mm\n`);
      expect(problems.map((p) => p.code)).toEqual(["circular-value"]);
    },
  );
});

describe("a trim", () => {
  test.each(["", "trim front 5\n"])(
    "may depend on the length of a post that it does not shorten, %s",
    (other) => {
      const { problems, chair } = settled(`${posts}${other}trim back front.length / 100\n`);
      expect(problems).toEqual([]);
      expect(chair.design.trims.at(-1)?.length.value).toBeCloseTo(value(chair, "front.left.length") / 100, 6);
    },
  );

  test("of a hundredth of the post as it is left", () => {
    const whole = value(chairOf(posts), "back.left.length");
    const { problems, chair } = settled(`${posts}trim back back.length / 100\n`);
    expect(problems).toEqual([]);
    expect(value(chair, "back.left.length")).toBeCloseTo(whole / 1.01, 1);
  });
});

describe("names of nothing", () => {
  test("an end that a rail has not is an unknown name", () => {
    const { problems } = settled(
      `${posts}${rail("a", "across front", "430")}${rail("b", "across back", "a.top.face-bevel / 1deg * 1mm")}`,
    );
    expect(problems.map((p) => p.code)).toEqual(["unknown-name"]);
  });
});
