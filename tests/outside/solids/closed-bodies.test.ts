/**
 * Every part's body is one closed solid, whatever pieces it is made of: its surface is in one piece, each edge is in two faces, Euler and
 * Poincaré's formula holds, and its volume is that of the union of the pieces made by manifold-3d (Apache-2.0), an independent library
 * of set operations on solids.
 */
import fc from "fast-check";
import { afterEach, describe, expect, test } from "vitest";
import type { Chair } from "../../../server/chair/chair.ts";
import { shellCount, shellEdges, shellOf, shellVolume } from "../../../server/geometry/shell.ts";
import type { Body } from "../../../server/geometry/solid.ts";
import { studied } from "../../check.ts";
import { chairs } from "../joinery/random-chairs.ts";
import { sampleNames, studiedSample } from "../samples.ts";
import { hull, sweepSolids, together } from "./manifold.ts";

afterEach(sweepSolids);

const bodiesOf = (chair: Chair): [string, Body][] => [
  ...[...chair.posts, ...chair.rails, ...chair.slats, ...chair.blocks].map(
    ([name, { body }]): [string, Body] => [name, body],
  ),
  ...(chair.seat ? [["seat", chair.seat.body] as [string, Body]] : []),
];

function isOneSolid(name: string, { pieces }: Body): void {
  const shell = shellOf(pieces);
  const edges = shellEdges(shell);
  expect(edges, `${name}: every edge in two faces`).toBeDefined();
  expect(shellCount(shell), `${name}: surfaces`).toBe(1);
  const holes = shell.faces.reduce((sum, face) => sum + face.holes.length, 0);
  const genus = 1 - (shell.points.length - edges!.length + shell.faces.length - holes) / 2;
  expect(Number.isInteger(genus) && genus >= 0, `${name}: ${genus} holes through it`).toBe(true);
  const union = together(pieces.map((piece) => hull(piece.points.map(([x, y, z]) => [x, y, z]))));
  expect(Math.abs(shellVolume(shell) / union.volume() - 1), `${name}: volume`).toBeLessThan(1e-6);
}

describe("every body is one closed solid", () => {
  for (const name of sampleNames)
    test(name, () => {
      const { chair } = studiedSample(name);
      for (const [part, body] of bodiesOf(chair)) isOneSolid(part, body);
    });

  test("random chairs", () => {
    fc.assert(
      fc.property(chairs, (text) => {
        for (const [part, body] of bodiesOf(studied(text).chair)) isOneSolid(part, body);
      }),
      { numRuns: 5, seed: 20 },
    );
  });

  const mm = (min: number, max: number) => fc.double({ min, max, noNaN: true });
  const post = fc.record({
    section: fc.oneof(
      mm(28, 46).map((diameter) => `round ${diameter.toFixed(1)}`),
      fc.tuple(mm(28, 46), mm(28, 46)).map(([a, b]) => `section ${a.toFixed(1)} x ${b.toFixed(1)}`),
    ),
    taper: mm(18, 27),
    from: mm(100, 300),
    knee: mm(330, 500),
    over: mm(0, 160),
    rake: mm(-10, 12),
    splay: mm(-8, 8),
    turn: mm(-20, 20),
  });
  test("random posts: bent, tapered, splayed, turned in their place", () => {
    fc.assert(
      fc.property(post, ({ section, taper, from, knee, over, rake, splay, turn }) => {
        const round = section.startsWith("round");
        const text = `post leg pair {
  ${section}
  at 400 out 200, back 300
  height 800
  splay ${splay.toFixed(2)}deg
  rake ${rake.toFixed(2)}deg above ${knee.toFixed(1)} over ${over.toFixed(1)}
  ${round ? "" : `turn ${turn.toFixed(1)}deg`}
  taper ${round ? taper.toFixed(1) : `${taper.toFixed(1)} x ${taper.toFixed(1)}`} from ${from.toFixed(1)} to foot
}
`;
        const { chair } = studied(text);
        expect([...chair.posts.keys()]).toEqual(["leg.left", "leg.right"]);
        isOneSolid(text, chair.posts.get("leg.left")!.body);
      }),
      { numRuns: 12, seed: 21 },
    );
  });
});
