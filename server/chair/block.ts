import { sentence } from "../../grammar/sentences/sentence.ts";
import type { BlockDesign, Design } from "../design/design.ts";
import { type PartId, partName } from "../design/identity.ts";
import { bodyOf } from "../geometry/body.ts";
import { fromPlanes, measure, reachIn, slice } from "../geometry/convex.ts";
import { flipped, levelAt, planeAt, threePlanes } from "../geometry/plane.ts";
import type { Convex, Plane, Vec3 } from "../geometry/solid.ts";
import { add, along, dot, negate, sub, unit } from "../geometry/vec.ts";
import { attempt } from "./attempt.ts";
import type { Block, Post, Rail, Side } from "./chair.ts";
import type { Fault } from "./fault.ts";
import { spanIn } from "./joints/wood.ts";
import { shapeOf } from "./rails/rail-outline.ts";

/**
 * Corner blocks: one against the inside of the two rails that meet in each post named. Its long side runs from `along` on one rail to
 * `along` on the other, measured on the inside faces from where they would meet; it stays clear of the post's corner.
 */
export function buildBlocks(
  design: Design,
  block: BlockDesign,
  posts: Map<string, Post>,
  rails: Map<string, Rail>,
  faults: Fault[],
): Block[] {
  const where = block.in?.value;
  const leg = block.along?.value;
  const thick = block.thick?.value;
  if (!where || !leg || !thick) return [];
  const pair = design.posts.get(where.name)?.pair ?? false;
  const sides: Side[] = pair ? (where.side ? [where.side] : ["left", "right"]) : ["middle"];
  return sides.flatMap((side): Block[] => {
    const post = posts.get(partName({ stem: where.name, side }));
    if (!post) return [];
    const id: PartId = { stem: block.name, side: pair && !where.side ? side : "middle" };
    const name = partName(id);
    const corner = post && cornerOf(post, rails, block.up?.value);
    if (!corner) {
      faults.push({
        is: "not-buildable",
        part: name,
        at: block.in!.at,
        message: sentence("fault.block-no-rails", { post: post.name }),
      });
      return [];
    }
    const solid = solidOf(post, corner, { leg, thick });
    const grain = unit(sub(corner.runs[1], corner.runs[0]));
    if (!solid) {
      faults.push({
        is: "no-room",
        part: name,
        at: block.along!.at,
        message: sentence("fault.block-short", { post: post.name }),
      });
      return [];
    }
    const made = attempt(name, block.at, faults, (): Block => {
      return {
        is: "block",
        id,
        name,
        side,
        design: block,
        ...(block.timber && { timber: block.timber.value }),
        body: bodyOf([solid]),
        centreLine: lineThrough(solid, grain),
        grain,
        faces: [
          { name: "top", plane: levelAt(corner.top) },
          { name: "bottom", plane: flipped(levelAt(corner.top - thick)) },
        ],
      };
    });
    return made ? [made] : [];
  });
}

/** The two rails of a corner: their inside faces, looking at the chair's middle, the level way along each from the post, the block's top. */
interface Corner {
  faces: [Plane, Plane];
  runs: [Vec3, Vec3];
  top: number;
}

interface Arm {
  face: Plane;
  run: Vec3;
  low: number;
  high: number;
}

function cornerOf(post: Post, rails: Map<string, Rail>, up: number | undefined): Corner | undefined {
  const arms: Arm[] = [];
  for (const rail of rails.values()) {
    for (const which of [0, 1] as const)
      if (rail.ends[which].entered?.name === post.name) arms.push(armOf(rail, which));
  }
  let best: Corner | undefined;
  for (const a of arms) {
    for (const b of arms) {
      if (a === b || Math.abs(dot(a.run, b.run)) > 0.9) continue;
      const top = up ?? Math.min(a.high, b.high);
      if (top <= Math.max(a.low, b.low) || top > Math.min(a.high, b.high) + 1e-6) continue;
      if (!best || top > best.top) best = { faces: [a.face, b.face], runs: [a.run, b.run], top };
    }
  }
  return best;
}

function armOf(rail: Rail, which: 0 | 1): Arm {
  const shape = shapeOf(rail);
  const x = which === 0 ? 0 : rail.length;
  const run = which === 0 ? rail.along : negate(rail.along);
  const inside = along(along(rail.start, rail.along, x), rail.outward, shape.inside(x));
  const heights = rail.ends[which].corners.map((c) => c[2]);
  return {
    face: planeAt(inside, negate(rail.outward)),
    run: unit([run[0], run[1], 0]),
    low: Math.min(...heights),
    high: Math.max(...heights),
  };
}

function solidOf(post: Post, { faces, runs, top }: Corner, { leg, thick }: { leg: number; thick: number }) {
  const corner = threePlanes(faces[0], faces[1], levelAt(top));
  if (!corner) return null;
  const a = along(corner, runs[0], leg);
  const b = along(corner, runs[1], leg);
  const inward = unit(add(runs[0], runs[1]));
  const across = unit(sub(b, a));
  const long = planeAt(a, unit([across[1], -across[0], 0]));
  const out = dot(long.normal, sub(corner, a)) < 0 ? long : flipped(long);
  const near = nearCorner(post, inward, top - thick, top);
  return fromPlanes(
    [
      flipped(faces[0]),
      flipped(faces[1]),
      levelAt(top),
      flipped(levelAt(top - thick)),
      out,
      flipped({ normal: inward, offset: near }),
    ],
    corner,
    4 * leg + 4 * thick,
  );
}

/** From where a line through a solid's middle comes in to where it goes out. */
function lineThrough(solid: Convex, direction: Vec3): Vec3[] {
  const { centroid } = measure(solid);
  const [from, to] = spanIn(solid, centroid, direction) ?? [0, 0];
  return [along(centroid, direction, from), along(centroid, direction, to)];
}

/** How far the post reaches towards the chair's middle between two heights. */
function nearCorner(post: Post, inward: Vec3, low: number, high: number): number {
  let reach = -Infinity;
  for (const piece of post.pieces) {
    const part = slice(piece.solid, low, high);
    if (part) reach = Math.max(reach, reachIn(part, inward));
  }
  return reach;
}
