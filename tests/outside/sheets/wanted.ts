/**
 * What a part of a chair should be, by the chair's own solids, put where the cutter's piece lies.
 */
import type { Block, Bow, Chair, Joint, Post, Rail, SeatSurface } from "../../../server/chair/chair.ts";
import type { Convex, Vec3 } from "../../../server/geometry/solid.ts";
import { stickOfPost, stickOfRail } from "../../../server/joinery/pieces/stick-of.ts";
import { turnedPost } from "../../../server/joinery/pieces/turned.ts";
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

/** Where a stick lies: its own datum, its line, and the way its first face looks. */
export function poseOf(chair: Chair, part: Post | Rail): Pose | undefined {
  const squared = part.is === "post" ? stickOfPost(chair, part, 25) : stickOfRail(chair, part, 25);
  if (squared) {
    const { stick, runs, main } = squared;
    const run = runs.find(({ from, to }) => main >= from && main <= to) ?? runs[0]!;
    const first = part.is === "post" ? v(stick.stretches[main]!.planes[0].normal) : v(part.upward);
    return posed(v(run.origin), v(stick.stretches[main]!.direction), first);
  }
  if (part.is !== "post") return posed(v(part.start), v(part.along), v(part.outward));
  const run = turnedPost(chair, part)?.runs.find(({ datum }) => !datum.place);
  return run && posed(v(run.origin), v(run.direction), [0, -1, 0]);
}

function posed(origin: V, along: V, first: V): Pose {
  const face = direction(across(first, along));
  return { origin, ways: [along, face, outer(along, face)] };
}

/** A bow: from the middle between its ends, to the left and up from there in its plane. */
export function poseOfBow(bow: Bow): Pose {
  const [left, right] = [v(bow.spot(0)), v(bow.spot(bow.path.length))];
  const x = direction(minus(left, right));
  const normal = v(bow.normal);
  return { origin: times(plus(left, right), 1 / 2), ways: [x, outer(normal, x), normal] };
}

/** A corner block or a seat in plan: from the lower left of its upper face. */
export function poseOfFlat(flat: Block | SeatSurface): Pose {
  const up = flat.is === "seat" ? v(flat.plane.normal) : ([0, 0, 1] as V);
  const [pieces] = [flat.body.pieces];
  const ring = flat.is === "seat" ? flat.outline.map(v) : topOf(pieces[0]!);
  const x = flat.is === "seat" ? direction(across([1, 0, 0], up)) : longestOf(ring);
  const y = outer(up, x);
  // A solid seat's plan begins at its outline, which a bevel above leaves under the top.
  const level = flat.is === "seat" && !flat.plan ? pieces.flatMap(({ points }) => points.map(v)) : ring;
  const depth = Math.max(...level.map((p) => inner(p, up)));
  const upper = level.filter((p) => Math.abs(inner(p, up) - depth) < 1e-3);
  const least = (way: V) => Math.min(...upper.map((p) => inner(p, way)));
  return { origin: plus(plus(times(x, least(x)), y, least(y)), up, depth), ways: [x, y, up] };
}

export function wantedFlat(chair: Chair, flat: Block | SeatSurface): Wanted {
  const pose = poseOfFlat(flat);
  return {
    wood: flat.body.pieces.map(({ points }) => hull(points.map((p) => placed(pose, v(p))))),
    out: [...chair.joints.values()]
      .filter(({ entered }) => entered.name === flat.name)
      .flatMap((joint) => chopped(joint))
      .map((points) => hull(points.map((p) => placed(pose, p)))),
  };
}

function topOf(solid: Convex): V[] {
  const points = solid.points.map(v);
  const high = Math.max(...points.map(([, , z]) => z));
  const face = solid.faces.find((ring) => ring.every((k) => Math.abs(points[k]![2] - high) < 1e-6))!;
  return face.map((k) => points[k]!);
}

function longestOf(ring: readonly V[]): V {
  const edges = ring.map((p, k) => minus(ring[(k + 1) % ring.length]!, p));
  const longest = edges.reduce((best, each) => (inner(each, each) > inner(best, best) ? each : best));
  return direction(longest);
}

export function wantedOf(chair: Chair, part: Post | Rail | Bow, pose: Pose): Wanted {
  const put = (solid: Convex): Solid => hull(solid.points.map((p) => placed(pose, v(p))));
  // The bodies of rails that cross have their notches already.
  const joints = [...chair.joints.values()].filter(
    // One that cannot be made has no wood of its own.
    ({ kind, tenon }) => kind !== "halving" && tenon.length > 0,
  );
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
  // What only passes is drawn beyond both faces already.
  if (joint.kind === "passing") return joint.tenon.map(({ points }) => points.map(v));
  const way = v(joint.direction);
  const root = v(joint.root);
  const bored = joint.shape === "round";
  const face = bored ? way : mouthNormal(joint);
  return solidsOf(joint).map((solid) => {
    const points = solid.points.map(v);
    const out = (p: V) => plus(p, way, -OUT / inner(way, mouthNormal(joint)));
    const mouths = points.filter((p) => inner(minus(p, root), mouthNormal(joint)) < 1e-3);
    const tip = joint.sections[0]?.tip;
    // A reamed socket goes on as it narrows: through, out of the far face; blind, to the deepest of its tenon all over.
    if (tip !== undefined) {
      const narrows = (joint.thick * (1 - tip) * inner(way, mouthNormal(joint))) / 2 / joint.long;
      const deep = (p: V) => inner(minus(p, root), way);
      const deepest = Math.max(...points.map(deep));
      const on = (p: V) => {
        const by = joint.facts.through ? OUT : deepest - deep(p);
        return plus(plus(p, way, by), direction(minus(plus(root, way, deep(p)), p)), narrows * by);
      };
      return [...points, ...mouths.map(out), ...points.filter((p) => !mouths.includes(p)).map(on)];
    }
    // Into the mortise beside it a little, so that no skin is left between them; each corner once, since the library dents a hull of points so near each other.
    if (solid === joint.haunch) {
      const over = v(joint.acrossWide);
      const middle = points.reduce((sum, p) => sum + inner(p, over), 0) / points.length;
      const beside = points.map((p) => (inner(p, over) < middle ? plus(p, over, -0.05) : p));
      return [...beside, ...beside.filter((_, k) => mouths.includes(points[k]!)).map(out)];
    }
    const own = Math.max(...points.map((p) => inner(minus(p, root), face)));
    const isOpen = joint.facts.through !== undefined || joint.shape === "forked";
    // What is mitred may end before it is through.
    const isThrough = isOpen && (!joint.facts.mitre || own > joint.depthThere - 0.5);
    const deepest = own + (isThrough ? OUT : 0);
    const rate = inner(way, face);
    const on = (p: V, deep: number) => plus(p, way, (deep - inner(minus(p, root), face)) / rate);
    return [...mouths.map(out), ...mouths.map((p) => on(p, deepest))];
  });
}

/** A hole begins so far outside the wood: its mouth does not count as a wall, mm. */
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
