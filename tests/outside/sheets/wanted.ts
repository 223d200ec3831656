/**
 * What a part of a chair should be, by the chair's own solids, put where the cutter's piece lies.
 */
import type { Chair, Joint, Post, Rail } from "../../../server/chair/chair.ts";
import type { Convex, Vec3 } from "../../../server/geometry/solid.ts";
import { stickOfPost, stickOfRail } from "../../../server/joinery/pieces/stick-of.ts";
import { hull, type Solid } from "../solids/manifold.ts";
import { across, direction, inner, minus, outer, plus, times, type V } from "../solids/vectors.ts";
import type { Wanted } from "./compare.ts";

/** Carries a place of the chair to where the piece lies. */
export interface Pose {
  origin: V;
  ways: readonly [V, V, V];
}

const v = (p: Vec3): V => [...p] as V;
const placed = ({ origin, ways }: Pose, p: V): V => {
  const off = minus(p, origin);
  return [inner(off, ways[0]), inner(off, ways[1]), inner(off, ways[2])];
};

/** Where a squared part lies: its own datum, its line, and the ways its first two faces look. */
export function poseOf(chair: Chair, part: Post | Rail): Pose | undefined {
  const found = part.is === "post" ? stickOfPost(chair, part, 25) : stickOfRail(chair, part, 25);
  if (!found) return undefined;
  const { stick, runs, main } = found;
  const run = runs.find(({ from, to }) => main >= from && main <= to) ?? runs[0]!;
  const along = v(stick.stretches[main]!.direction);
  const first = part.is === "post" ? v(stick.stretches[main]!.planes[0].normal) : v(part.upward);
  const face = direction(across(first, along));
  return { origin: v(run.origin), ways: [along, face, outer(along, face)] };
}

export function wantedOf(chair: Chair, part: Post | Rail, pose: Pose): Wanted {
  const put = (solid: Convex): Solid => hull(solid.points.map((p) => placed(pose, v(p))));
  // The bodies of rails that cross have their notches already.
  const joints = [...chair.joints.values()].filter(({ kind }) => kind !== "halving");
  const own = joints.filter((joint) => joint.part === part.name);
  const into = joints.filter(({ entered }) => entered.name === part.name);
  const tenons = own.flatMap((joint) => (isLetInBoth(joint) ? [] : solidsOf(joint)));
  return {
    wood: [...part.body.pieces, ...tenons].map(put),
    out: [
      ...into.flatMap((joint) => chopped(joint).map((points) => hull(points.map((p) => placed(pose, p))))),
      ...own
        .filter(isLetInBoth)
        .flatMap((joint) => backwards(joint).map((points) => hull(points.map((p) => placed(pose, p))))),
    ],
  };
}

/** Nothing stands beyond the shoulder: dowels and separate tongues are let into this end too. */
const isLetInBoth = ({ facts }: Joint): boolean =>
  facts.dowels !== undefined || facts.looseTenon !== undefined;

const solidsOf = (joint: Joint): Convex[] => (joint.haunch ? [...joint.tenon, joint.haunch] : joint.tenon);

/**
 * A mortise is chopped to one depth and a hole bored square to itself: where a tenon's end is mitred or slants, the hole that holds it goes to
 * the deepest of it all over.
 */
function chopped(joint: Joint): V[][] {
  const way = v(joint.direction);
  const root = v(joint.root);
  const bored = joint.shape === "round";
  const face = bored ? way : mouthNormal(joint);
  return solidsOf(joint).map((solid) => {
    const points = solid.points.map(v);
    const out = (p: V) => plus(p, way, -OUT / inner(way, mouthNormal(joint)));
    const mouths = points.filter((p) => inner(minus(p, root), mouthNormal(joint)) < 1e-3);
    // Into the mortise beside it a little, so that no skin is left between them.
    if (solid === joint.haunch)
      return [...points, ...mouths.map(out)].flatMap((p) => [p, plus(p, v(joint.acrossWide), -0.05)]);
    const deepest = Math.max(...points.map((p) => inner(minus(p, root), face)));
    const rate = inner(way, face);
    const on = (p: V, deep: number) => plus(p, way, (deep - inner(minus(p, root), face)) / rate);
    return [...mouths.map(out), ...mouths.map((p) => on(p, deepest))];
  });
}

/** A hole begins so far outside the wood: its mouth is no wall of it, mm. */
const OUT = 5;

/** Into the member entered, square to the face. */
function mouthNormal(joint: Joint): V {
  const way = v(joint.direction);
  const planes = joint.tenon[0]!.planes.filter(
    ({ normal, offset }) =>
      inner(v(normal), way) < -0.05 && Math.abs(inner(v(normal), v(joint.root)) - offset) < 1e-3,
  );
  return times(v(planes[0]!.normal), -1);
}

/** The other half of a dowel or tongue: as deep in its own part. */
function backwards(joint: Joint): V[][] {
  const way = v(joint.direction);
  const face = mouthNormal(joint);
  return joint.tenon.map((solid) => {
    const mouth = solid.points.map(v).filter((p) => inner(minus(p, v(joint.root)), face) < 1e-3);
    const deepest =
      Math.min(...mouth.map((p) => inner(minus(p, v(joint.root)), way))) - joint.long / inner(way, face);
    const deep = (p: V) => plus(p, way, deepest - inner(minus(p, v(joint.root)), way));
    return [...mouth.map((p) => plus(p, way, OUT)), ...mouth.map(deep)];
  });
}
