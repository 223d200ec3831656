/**
 * Where mortises are set out, on random frames, against manifold-3d 3.5.4 (Apache-2.0), an independent library of exact set operations on
 * solids: the tenon is cut by a thin slice of the post just under each face, and the slice measured from the foot and from the post's
 * own sides. The number of frames comes from SEATWRIGHT_RUNS, some dozens without it.
 */
import fc from "fast-check";
import { afterEach, expect, test } from "vitest";
import type { Joint, Post } from "../../../server/chair/chair.ts";
import { piecesOf } from "../../../server/joinery/pieces/pieces.ts";
import { studied } from "../../check.ts";
import { beyond, corners, hull, type Solid, sweepSolids } from "../solids/manifold.ts";
import { direction, inner, minus, times, type V } from "../solids/vectors.ts";

const RUNS = Number(process.env.SEATWRIGHT_RUNS ?? 40);
/** Depth of the slice under the face, mm, and how near the figures must come. */
const SKIN = 1e-4;
const CLOSE = 1e-3;

afterEach(sweepSolids);

const frames = fc
  .record({
    front: fc.integer({ min: 180, max: 230 }),
    back: fc.integer({ min: 140, max: 220 }),
    post: fc.integer({ min: 34, max: 48 }),
    splay: fc.integer({ min: -6, max: 8 }),
    rake: fc.integer({ min: -6, max: 8 }),
    turn: fc.integer({ min: -6, max: 6 }),
    thick: fc.integer({ min: 6, max: 12 }),
    long: fc.integer({ min: 12, max: 24 }),
    fall: fc.integer({ min: 0, max: 30 }),
    square: fc.boolean(),
    stand: fc.boolean(),
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
  turn ${f.turn}deg
  taper ${f.post - 8} x ${f.post - 8} from 200 to foot
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
  face inset 4
${f.stand ? "  stand with posts\n" : ""}  joined plain
}
rail seat-side pair {
  from front to back
  section 22 x 60
  up 430
  fall ${f.fall}
  face inset 4
  joined plain
}
rail stretcher pair {
  from front to back
  section 18 x 36
  up 150
  joined plain
}
`,
  );

test("mortises lie where the tenons go through the faces", { timeout: 300_000 }, () => {
  let compared = 0;
  fc.assert(
    fc.property(frames, (text) => {
      const { chair } = studied(text);
      for (const piece of piecesOf(chair)) {
        const post = chair.posts.get(piece.parts[0]!.name);
        if (!post) continue;
        for (const mortise of piece.mortises) {
          const joint = chair.joints.get(`${mortise.for} to ${post.name}`)!;
          const found = sliceOf(post, joint, mortise.face, mortise.gaugedFrom);
          if (!found) continue;
          const told = [
            Math.min(...mortise.from),
            Math.max(...mortise.to),
            Math.min(...mortise.near, ...mortise.far),
            Math.max(...mortise.near, ...mortise.far),
            mortise.deep!,
          ];
          for (const [k, value] of told.entries())
            expect(Math.abs(value - found[k]!), `${piece.name} ${mortise.letter}, figure ${k}`).toBeLessThan(
              CLOSE,
            );
          compared++;
        }
      }
      sweepSolids();
    }),
    { numRuns: RUNS, seed: 20260512 },
  );
  expect(compared).toBeGreaterThan(RUNS);
});

/** From, to, near, far and deep of a joint's mouth in the named face, by slicing. */
function sliceOf(post: Post, joint: Joint, face: string, gaugedFrom: string): number[] | undefined {
  const piece = post.pieces.find(({ from, to }) => joint.root[2] >= from && joint.root[2] <= to)!;
  // The wood by its corners alone; its sides are found again from them.
  const wood = hull(piece.solid.points.map((p) => [...p] as V));
  const sides = [...sidesOf(wood)].filter(({ out }) => Math.abs(inner(out, [...piece.direction] as V)) < 0.3);
  const looks: Record<string, V> = {
    front: [0, -1, 0],
    back: [0, 1, 0],
    outside: [1, 0, 0],
    inside: [-1, 0, 0],
  };
  const towards = (name: string) =>
    sides.reduce((best, side) =>
      inner(side.out, looks[name]!) > inner(best.out, looks[name]!) ? side : best,
    );
  const own = towards(face);
  const gauge = towards(gaugedFrom);
  const tenon = hull(joint.tenon.flatMap(({ points }) => points.map((p) => [...p] as V)));
  const under = beyond(tenon, minus(own.at, times(own.out, SKIN)), own.out);
  const mouth = corners(under);
  if (mouth.length === 0) return undefined;
  const foot = [...post.foot] as V;
  const stick = direction([...piece.direction] as V);
  const along = mouth.map((p) => inner(minus(p, foot), stick));
  // Square to the arris that both faces share, in the face.
  const sine = Math.sqrt(1 - inner(own.out, gauge.out) ** 2);
  const across = mouth.map((p) => -inner(minus(p, gauge.at), gauge.out) / sine);
  const deep = Math.max(...corners(tenon).map((p) => -inner(minus(p, own.at), own.out)));
  return [Math.min(...along), Math.max(...along), Math.min(...across), Math.max(...across), deep];
}

/** The flat sides of a convex solid, by the triangles of its hull. */
function* sidesOf(solid: Solid): Generator<{ at: V; out: V }> {
  const { vertProperties, triVerts, numProp } = solid.getMesh();
  const corner = (k: number): V =>
    [0, 1, 2].map((axis) => vertProperties[triVerts[k]! * numProp + axis]!) as V;
  for (let t = 0; t < triVerts.length; t += 3) {
    const [a, b, c] = [corner(t), corner(t + 1), corner(t + 2)];
    const [u, v] = [minus(b, a), minus(c, a)];
    const out = direction([u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]]);
    yield { at: a, out };
  }
}
