/**
 * Overlaps of tenons inside their posts on random frames against manifold-3d 3.5.4 (Apache-2.0), an independent library of exact set
 * operations on solids; and the wood between them against the same library's least distance. The number of frames comes from
 * SEATWRIGHT_RUNS, some dozens without it.
 */
import fc from "fast-check";
import Module from "manifold-3d";
import { expect, test } from "vitest";
import { meetingsInside, mortiseSolids } from "../../../server/joinery/inside.ts";
import { studied } from "../../check.ts";

const wasm = await Module();
wasm.setup();
const { Manifold } = wasm;
const RUNS = Number(process.env.SEATWRIGHT_RUNS ?? 40);

const frames = fc
  .record({
    front: fc.integer({ min: 180, max: 230 }),
    back: fc.integer({ min: 140, max: 220 }),
    post: fc.integer({ min: 30, max: 48 }),
    splay: fc.integer({ min: -6, max: 8 }),
    rake: fc.integer({ min: -6, max: 8 }),
    thick: fc.integer({ min: 6, max: 12 }),
    long: fc.integer({ min: 12, max: 34 }),
    drop: fc.integer({ min: 0, max: 70 }),
    square: fc.boolean(),
  })
  .map(
    (f) => `joint plain {
  tenon thick ${f.thick}, long ${f.long}
  shoulders top 8, bottom 6
${f.square ? "  tenon square\n" : ""}}
post front pair {
  section ${f.post} x ${f.post}
  top out ${f.front}, back 20
  height 440
  splay ${f.splay}deg
  rake ${f.rake}deg
  taper ${f.post - 8} x ${f.post - 8} from 250 to foot
}
post back pair {
  section ${f.post} x ${f.post}
  top out ${f.back}, back 400
  height 440
}
rail seat-front {
  across front
  section 22 x 60
  up 430
  joined plain
}
rail seat-side pair {
  from front to back
  section 22 x 60
  up ${430 - f.drop}
  joined plain
}
rail seat-back {
  across back
  section 22 x 60
  up 430
  joined plain
}
`,
  );

test(`${RUNS} frames: what tenons share and the wood between them`, () => {
  fc.assert(
    fc.property(frames, (text) => {
      for (const { a, b, overlap, wall } of meetingsInside(studied(text).chair)) {
        const [one, other] = [a, b].map((joint) =>
          Manifold.union(
            mortiseSolids(joint).map(({ points }) =>
              Manifold.hull(points.map((p) => [...p] as [number, number, number])),
            ),
          ),
        ) as [InstanceType<typeof Manifold>, InstanceType<typeof Manifold>];
        const both = one.intersect(other);
        // Manifold keeps its corners in single precision.
        expect(Math.abs(both.volume() - overlap)).toBeLessThan(0.05 + 1e-4 * overlap);
        if (overlap === 0) expect(Math.abs(one.minGap(other, 100) - wall)).toBeLessThan(0.01);
        for (const solid of [one, other, both]) solid.delete();
      }
    }),
    { numRuns: RUNS, seed: 4 },
  );
}, 600_000);
