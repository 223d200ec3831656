import { describe, expect, it } from "vitest";
import { studied } from "../../check.ts";

const post = (name: string, place: string) =>
  `post ${name} {\n  section 40 x 40\n  ${place}\n  height 430\n}\n`;
const rail = (name: string, course: string) =>
  `rail ${name} {\n  ${course}\n  section 22 x 60\n  up 420\n  joined plain\n}\n`;
const joint = "joint plain {\n  tenon thick 8, long 20\n  shoulders top 10, bottom 6\n}\n";
const seat = (on: string) => `seat board {\n  on ${on}\n  thick 20\n}\n`;

/** The area of a level outline by the shoelace formula, mm². */
function areaOf(ring: readonly (readonly number[])[]): number {
  const twice = ring.reduce((sum, [x, y], k) => {
    const [nextX, nextY] = ring[(k + 1) % ring.length]!;
    return sum + x! * nextY! - nextX! * y!;
  }, 0);
  return Math.abs(twice) / 2;
}

describe("a seat on a ring of rails", () => {
  it("cornerwise: a square stood on its corner, its front corner in front", () => {
    const { chair } = studied(
      joint +
        post("front", "foot out 0, back 0") +
        post("side pair", "foot out 300, back 300") +
        post("back", "foot out 0, back 600") +
        rail("fore pair", "from front to side") +
        rail("aft pair", "from side to back") +
        seat("fore, aft"),
    );
    const { outline, front, back, body } = chair.seat!;
    expect(outline).toHaveLength(4);
    expect(front.middle[0]).toBeCloseTo(0, 6);
    expect(back.middle[1] - front.middle[1]).toBeCloseTo(front.left[0] - front.right[0], 6);
    // By hand: a square with half-diagonals of 300 and half a rail's thickness on the slant, 11 · √2, added.
    expect(front.left[0]).toBeCloseTo(300 + 11 * Math.SQRT2, 6);
    expect(areaOf(outline)).toBeCloseTo(2 * (300 + 11 * Math.SQRT2) ** 2, 3);
    expect(body.pieces.length).toBeGreaterThan(0);
    expect(chair.values.get("seat.depth")!.number).toBeCloseTo(2 * (300 + 11 * Math.SQRT2), 6);
  });

  it("three-sided: a rail in front and one post behind", () => {
    const { chair } = studied(
      joint +
        post("front pair", "foot out 250, back 0") +
        post("back", "foot out 0, back 400") +
        rail("fore", "across front") +
        rail("side pair", "from front to back") +
        seat("fore, side"),
    );
    const { outline, front, back } = chair.seat!;
    expect(outline).toHaveLength(3);
    // The front edge is the rail's outside face.
    expect(front.left[1]).toBeCloseTo(-11, 6);
    expect(front.left[1]).toBeCloseTo(front.right[1], 9);
    expect(back.middle[0]).toBeCloseTo(0, 6);
    // Similar triangles: the sides' outside faces stand 11 mm off the lines between the posts' centres, 250 across and 400 back.
    expect(back.middle[1]).toBeCloseTo(400 + (11 * Math.hypot(250, 400)) / 250, 3);
  });

  it("five-sided: the front edge where the front rail is", () => {
    const { chair } = studied(
      joint +
        post("front pair", "foot out 150, back 0") +
        post("side pair", "foot out 250, back 250") +
        post("back", "foot out 0, back 420") +
        rail("fore", "across front") +
        rail("cheek pair", "from front to side") +
        rail("aft pair", "from side to back") +
        seat("fore, cheek, aft"),
    );
    const { outline, front } = chair.seat!;
    expect(outline).toHaveLength(5);
    expect(front.middle).toEqual([expect.closeTo(0, 6), expect.closeTo(-11, 6), expect.any(Number)]);
  });
});
