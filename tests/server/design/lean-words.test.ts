import { describe, expect, it } from "vitest";
import { checkOf, fixed, studied } from "../../check.ts";

const post = (line: string, place = "foot out 200, back 20") =>
  `post front pair {\n  section 40 x 40\n  ${place}\n  height 430\n  ${line}\n}\n`;
const check = checkOf("sign-beside-words", "given-twice");

/** How far the top stands from the foot: towards the sitter's left, back. */
function topFromFoot(line: string, place?: string): [number, number] {
  const front = studied(post(line, place)).chair.posts.get("front.left")!;
  return [front.top[0] - front.foot[0], front.top[1] - front.foot[1]].map(
    (mm) => Math.round(mm * 100) / 100,
  ) as [number, number];
}

describe("rake and splay name the end that goes", () => {
  // Over 430 mm, plumb: 430 · tan 3° = 22.54.
  it.each([
    ["rake 3deg", [0, 22.54]],
    ["rake 3deg top back", [0, 22.54]],
    ["rake 3deg foot forward", [0, 22.54]],
    ["rake 3deg top forward", [0, -22.54]],
    ["rake 3deg foot back", [0, -22.54]],
    ["splay 3deg", [-22.54, 0]],
    ["splay 3deg foot out", [-22.54, 0]],
    ["splay 3deg top in", [-22.54, 0]],
    ["splay 3deg foot in", [22.54, 0]],
    ["splay 3deg top out", [22.54, 0]],
  ] as const)("%s", (line, moves) => {
    expect(topFromFoot(line)).toEqual(moves);
    expect(topFromFoot(line, "top out 200, back 20")).toEqual(moves);
  });

  it("a minus beside the words is a finding that offers the plain form", () => {
    check(post("rake -3deg foot forward\n  #    ^^^^^^^^^^^^^^^^^^ sign-beside-words"));
    expect(
      fixed(post("rake -3deg foot forward"), "sign-beside-words", "Write it without a minus: foot back"),
    ).toBe(post("rake 3deg foot back"));
  });
});
