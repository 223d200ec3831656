/** Parallels inside a seat's outline against clipper2's offsets: tails and waists narrower than what is taken off both sides among them. */
import { areaD, EndType, inflatePathsD, JoinType } from "clipper2-ts";
import { expect, it } from "vitest";
import type { Spot } from "../../../server/chair/seat/solid/edge.ts";
import { insetThrough } from "../../../server/chair/seat/solid/inset.ts";
import { studied } from "../../check.ts";
import { notSeat } from "./laws.ts";

/** The whole ring of its right half, from the middle of the front edge to the middle behind. */
const whole = (half: readonly Spot[]): Spot[] => [
  ...half,
  ...half
    .filter(([x]) => x > 0)
    .map(([x, s]): Spot => [-x, s])
    .reverse(),
];

const outlines: Record<string, Spot[]> = {
  "a tail shorter than it is wide": whole([
    [0, 0],
    [150, 0],
    [150, 373],
    [45, 373],
    [45, 413],
    [0, 413],
  ]),
  "a tail longer than it is wide": whole([
    [0, 0],
    [150, 0],
    [150, 373],
    [45, 366],
    [45, 460],
    [0, 460],
  ]),
  "a waist": whole([
    [0, 0],
    [180, 0],
    [180, 90],
    [60, 200],
    [180, 310],
    [180, 400],
    [0, 400],
  ]),
};

const area = (ring: readonly Spot[]): number =>
  ring.reduce((sum, [x, y], k) => {
    const [u, v] = ring[(k + 1) % ring.length]!;
    return sum + (x * v - u * y) / 2;
  }, 0);

it.each(
  Object.entries(outlines).flatMap(([what, ring]) =>
    [20, 44, 46, 54, 63, 70].map((by) => ({ what, ring, by })),
  ),
)("$what, $by inside", ({ ring, by }) => {
  const rings = insetThrough(ring, [0, by]).left;
  const paths = inflatePathsD(
    [ring.map(([x, y]) => ({ x, y }))],
    -by,
    JoinType.Round,
    EndType.Polygon,
    2,
    6,
    0.01,
  );
  const ours = rings.reduce((sum, each) => sum + area(each), 0);
  const theirs = paths.reduce((sum, path) => sum + Math.abs(areaD(path)), 0);
  expect(rings.every((each) => area(each) > 0)).toBe(true);
  // About an inward corner the parallel is an arc, made here of chords that turn by 12° at most and lie outside it.
  expect(Math.abs(ours / theirs - 1)).toBeLessThan(0.003);
});

it("passes over all that lies between the outline and its parallel, each bit once", () => {
  for (const ring of Object.values(outlines)) {
    const { strips, left } = insetThrough(ring, [0, 30, 50, 70]);
    const passed = strips.reduce((sum, { corners }) => sum + area(corners.map(({ at }) => at)), 0);
    const kept = left.reduce((sum, each) => sum + area(each), 0);
    expect(passed + kept).toBeCloseTo(area(ring), 3);
  }
});

it("passes over the left and the right alike, corner for corner", () => {
  const key = (corners: readonly (readonly [number, number, number])[]) =>
    [...corners]
      .map((corner) => corner.map((figure) => figure || 0).join(" "))
      .sort()
      .join(", ");
  for (const ring of Object.values(outlines)) {
    const { strips, left } = insetThrough(ring, [0, 30, 50, 70]);
    const rings = [
      ...strips.map(({ corners }) => corners.map(({ at: [x, s], moved }) => [x, s, moved] as const)),
      ...left.map((each) => each.map(([x, s]) => [x, s, 0] as const)),
    ];
    const own = rings.map((each) => key(each)).sort();
    const other = rings.map((each) => key(each.map(([x, s, moved]) => [-x, s, moved] as const))).sort();
    expect(other).toEqual(own);
  }
});

it.each([
  { out: 0, back: 200, deep: 12 },
  { out: 110, back: 200, deep: 12 * Math.sin((Math.PI / 2) * ((200 - 110 - 50) / 100)) ** 2 },
])("a plumb leg $out mm out is bored as deep as the hollow leaves wood", ({ out, back, deep }) => {
  const { chair } = studied(`units mm
timber american-elm moisture 9%
joint socket {
  round 24
  through
}
seat solid {
  up 430
  thick 44
  deep 400
  wide 400 at 0
  wide 400 at 400
  hollow 12 over 100, rim 50
}
post leg${out > 0 ? " pair" : ""} {
  into seat at out ${out}, back ${back}
  rake 0deg foot back
  round 34
  joined socket
}
`);
  const name = out > 0 ? "leg.left" : "leg";
  expect(chair.values.get(`${name}.bore-depth`)?.number).toBeCloseTo(44 - deep, 6);
});

it.each(["rim 54", "rim 44", "open front, rim 60"])(
  "a seat with a tail and a hollow of %s holds its wood",
  (rim) => {
    const { chair } = studied(`units mm
timber american-elm moisture 9%
seat solid {
  up 455
  thick 42
  deep 373
  wide 376 at 12
  wide 406 at 149
  wide 349 at 268
  wide 266 at 328
  corner 15
  tail 90 x 40
  hollow 15 over 95${rim.startsWith("open") ? " " : ", "}${rim}
}
`);
    expect(notSeat(chair)).toEqual([]);
  },
);
