import { describe, expect, test } from "vitest";
import { wantedProblems } from "../../../server/design/wanted.ts";
import { read } from "./read.ts";

const posts =
  "post front pair {\n  section 40 x 40\n  foot out 200, back 20\n  height 430\n}\npost back pair {\n  section 40 x 40\n  foot out 180, back 400\n  height 900\n}\n";
const front = "rail seat-front {\n  across front\n  section 22 x 70\n  up 400\n}\n";

describe("worked-out values in expressions", () => {
  const text = `${posts}${front}rail low {\n  across back\n  section 22 x seat-front.length / 10\n  up 300\n}\n`;

  test("are asked for until they are known", () => {
    const first = read(text);
    expect(first.problems).toEqual([]);
    expect([...first.wanted.keys()]).toEqual(["seat-front.length"]);
    expect(first.rails.get("low")?.section).toBeUndefined();
    const then = read(text, {}, { "seat-front.length": { number: 360, dimension: "length" } });
    expect(then.wanted.size).toBe(0);
    expect(then.rails.get("low")?.section?.value).toEqual({ first: 22, second: 36 });
  });

  test("of right-hand twins, and of a pair by its bare name, are those of the left", () => {
    const known = { "front.left.length": { number: 428, dimension: "length" as const } };
    for (const name of ["front.left.length", "front.right.length", "front.length"]) {
      expect(read(`${posts}let l = ${name}\n`, {}, known).lets.get("l")?.value?.value).toEqual(
        known["front.left.length"],
      );
    }
  });

  test("a declared angle is a value", () => {
    const angle = `${posts}angle lean {\n  between back, floor\n}\nlet l = lean\n`;
    expect([...read(angle).wanted.keys()]).toEqual(["lean"]);
  });

  test("a require by name alone waits for the rules", () => {
    expect(read(`${posts}require front.length at least 400\n`).wanted.size).toBe(0);
    const sum = read(
      `${posts}require front.length + 20 at least 400\n`,
      {},
      { "front.left.length": { number: 428, dimension: "length" } },
    );
    expect(sum.requires[0]).toMatchObject({
      subject: "front.length + 20",
      computed: { number: 448, dimension: "length" },
    });
  });
});

describe("what is still wanted at the end", () => {
  const told = (text: string, values: string[] = []) =>
    wantedProblems(read(text), values).map(({ code, message }) => `${code}: ${message}`);

  test("a value that shapes itself is a circle", () => {
    const own = `${posts}${front.replace("22 x 70", "22 x seat-front.length / 5")}`;
    expect(told(own)).toEqual([
      expect.stringMatching(/^circular-value: .*seat-front\.length → seat-front → seat-front\.length/),
    ]);
  });

  test("also by way of a let, a post, and another rail", () => {
    const byPost = `let w = seat-front.length / 9\n${posts.replace("section 40 x 40", "section w x 40")}${front}`;
    expect(told(byPost)).toEqual([
      expect.stringMatching(/^circular-value: .*seat-front\.length → w → seat-front\.length/),
    ]);
    const two = `${posts}${front.replace("22 x 70", "22 x low.length / 5")}rail low {\n  across back\n  section 22 x seat-front.length / 5\n  up 300\n}\n`;
    expect(told(two)).toEqual([
      expect.stringMatching(
        /^circular-value: .*low\.length → low → seat-front\.length → seat-front → low\.length/,
      ),
      expect.stringMatching(
        /^circular-value: .*seat-front\.length → seat-front → low\.length → low → seat-front\.length/,
      ),
    ]);
    expect(told(`${posts}${front}trim front seat.slope / 1deg * 1mm\n`)).toEqual([
      expect.stringMatching(/^circular-value: .*seat\.slope → trim → seat\.slope/),
    ]);
  });

  test("an end that does not exist is an unknown name, anything else depends on what is missing", () => {
    const text = `${posts}${front}let b = seat-front.middle.face-bevel\n`;
    expect(told(text, ["seat-front.left.face-bevel", "seat-front.length"])).toEqual([
      "unknown-name: There is no value seat-front.middle.face-bevel; did you mean seat-front.left.face-bevel?",
    ]);
    expect(told(`${posts}${front}let b = seat-front.length\n`)).toEqual([
      "unknown-name: seat-front.length cannot be worked out, because something that it depends on is missing or wrong.",
    ]);
  });
});
