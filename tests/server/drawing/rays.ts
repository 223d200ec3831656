/**
 * Hidden lines of a view against rays cast at the solids, which know nothing of how the lines were found.
 */
import type { Chair } from "../../../server/chair/chair.ts";
import { see } from "../../../server/drawing/hidden-lines.ts";
import { type Eye, sightFrom } from "../../../server/drawing/pictorial/eye.ts";
import { sceneOf } from "../../../server/drawing/scene.ts";
import { motionInto } from "../../../server/drawing/sight.ts";
import { lineThrough } from "../../../server/geometry/convex.ts";
import { inverse, movePoint } from "../../../server/geometry/motion.ts";
import type { Convex, Vec3 } from "../../../server/geometry/solid.ts";
import { dot } from "../../../server/geometry/vec.ts";

/** Places so near a surface lie on it, mm: a warped face of bent wood is made of flats that stray by as much. */
const ON_SURFACE = 0.012;

interface Compared {
  /** Places of arrises that nothing hides, and those that wood hides. */
  shown: number;
  hidden: number;
  /** Places that are seen but not drawn, and lines that are drawn but lie behind wood. */
  wrong: string[];
}

/** Places along each arris that are looked at. */
const SHARES = [0.21, 0.5, 0.83];

/** Compares a view; of the arrises and of the drawn lines each `every`-th is looked at. */
export function againstRays(chair: Chair, eye: Eye, every = 1): Compared {
  const parts = sceneOf(chair);
  const solids = parts.flatMap(({ body }) => body.pieces);
  const into = motionInto(sightFrom(eye), chair.stance);
  const towards = into.rotation[2];
  const { lines } = see(
    parts.map(({ body }) => body),
    into,
  );
  const found: Compared = { shown: 0, hidden: 0, wrong: [] };
  const isDrawn = (u: number, v: number) =>
    lines.some(({ a, b }) => {
      const run = [b[0] - a[0], b[1] - a[1]] as const;
      const size = Math.hypot(...run);
      const along = ((u - a[0]) * run[0] + (v - a[1]) * run[1]) / size;
      const off = Math.abs((u - a[0]) * run[1] - (v - a[1]) * run[0]) / size;
      return off < 0.02 && along > -0.1 && along < size + 0.1;
    });
  let turn = 0;
  for (const { name, body } of parts)
    for (const { a, b, is, normals } of body.edges) {
      if (is !== "arris" || !normals.some((n) => dot(n, towards) > 1e-3)) continue;
      if (turn++ % every !== 0) continue;
      for (const share of SHARES) {
        const p = [0, 1, 2].map((k) => a[k]! + (b[k]! - a[k]!) * share) as unknown as Vec3;
        const depth = coverAt(solids, p, towards);
        const [u, v] = movePoint(into, p);
        // Another line may be seen just there; only the middle of the wood is sure.
        if (depth > 0.5) found.hidden += 1;
        if (depth > 0.001) continue;
        found.shown += 1;
        if (!isDrawn(u, v)) found.wrong.push(`${name}: ${u.toFixed(2)}, ${v.toFixed(2)} is not drawn`);
      }
    }
  const out = inverse(into);
  const laid = parts.map(({ body }) =>
    body.edges.map(({ a, b }) => [movePoint(into, a), movePoint(into, b)] as const),
  );
  for (const [k, { body, a, b }] of lines.entries()) {
    if (k % every !== 0) continue;
    const middle: [number, number] = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
    const isSeen = laid[body]!.some(([p, q]) => {
      const size = Math.hypot(q[0] - p[0], q[1] - p[1]);
      if (size < 0.05) return false;
      const share = ((middle[0] - p[0]) * (q[0] - p[0]) + (middle[1] - p[1]) * (q[1] - p[1])) / size ** 2;
      const off = Math.abs((middle[0] - p[0]) * (q[1] - p[1]) - (middle[1] - p[1]) * (q[0] - p[0])) / size;
      if (off > 0.02 || share < 0 || share > 1) return false;
      const at = movePoint(out, [middle[0], middle[1], p[2] + (q[2] - p[2]) * share]);
      return coverAt(solids, at, towards, ON_SURFACE) < 0.1;
    });
    if (!isSeen)
      found.wrong.push(
        `${parts[body]!.name}: a line at ${middle.map((x) => x.toFixed(2)).join(", ")} is hidden`,
      );
  }
  return found;
}

/**
 * How deep wood lies before a place, along the line towards the eye, mm. Wood that the place lies in counts when it is deeper in it than
 * `skin`, square to the face by which the line comes out.
 */
function coverAt(solids: readonly Convex[], p: Vec3, towards: Vec3, skin = 0): number {
  let deepest = 0;
  for (const solid of solids) {
    const through = lineThrough(solid, p, towards);
    if (!through || through[1] <= 0) continue;
    if (through[0] <= 0 && depthUnder(solid, p, towards) <= skin) continue;
    deepest = Math.max(deepest, through[1] - Math.max(0, through[0]));
  }
  return deepest;
}

/** How deep a place lies under the nearest face that looks at the eye, mm. */
function depthUnder({ planes }: Convex, p: Vec3, towards: Vec3): number {
  let depth = Infinity;
  for (const { normal, offset } of planes)
    if (dot(normal, towards) > 0) depth = Math.min(depth, offset - dot(normal, p));
  return depth;
}
