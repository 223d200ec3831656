/**
 * Rails that cross and are halved over each other.
 */
import type { Steps } from "../../../../grammar/steps.ts";
import type { Design, PartRef } from "../../../design/design.ts";
import { jointName } from "../../../design/identity.ts";
import { bodyOf, drawnLater } from "../../../geometry/body.ts";
import { clip, intersect, volume } from "../../../geometry/convex.ts";
import { flipped, planeAt } from "../../../geometry/plane.ts";
import type { Convex, Plane, Vec3 } from "../../../geometry/solid.ts";
import { along, angleBetween, cross, dot, negate, scale, sub, unit } from "../../../geometry/vec.ts";
import type { Joint, Member, Notch, Rail } from "../../chair.ts";
import type { Fault, HalvingTrouble } from "../../fault.ts";
import { shapeOf, spotOn } from "../../rails/rail-outline.ts";
import { hostOf } from "../hosting.ts";
import { type ChosenJoint, namedJoint } from "../joint-facts.ts";
import { spanIn } from "../wood.ts";

/** Rails that cross at less than this run side by side, radians (the language's own figure: "halved over"). */
const FLATTEST = (20 * Math.PI) / 180;
/** Solids smaller than this are none, mm³. */
const CRUMB = 1e-6;
/** Rounds in which the places where two curved rails come nearest are found. */
const ROUNDS = 6;

/** Facets of a round rail turn by less than this, radians. */
const SMOOTH = 0.4;

/**
 * The halvings that the text asks for, put beside the other joints; the bodies of their rails are notched when all are found. A line that
 * names several rails (a pair, a row) is of those that this one meets.
 */
export function* halvingSteps(
  design: Design,
  members: ReadonlyMap<string, Member>,
  joints: Map<string, Joint>,
  faults: Fault[],
): Steps<void> {
  const cut = new Map<Rail, Notch[]>();
  for (const rail of members.values()) {
    if (rail.is !== "rail" || rail.design.is !== "rail") continue;
    for (const line of rail.design.halved) {
      yield;
      const others = meant(rail, line.value.over, members);
      const made = others.map((other) => ({
        other,
        found: halve(rail, other, namedJoint(design, line.value.joint, line.at)),
      }));
      const good = made.flatMap(({ other, found }) => ("joint" in found ? [{ other, found }] : []));
      for (const { other, found } of good) keep(rail, other, found, line.at);
      const [first] = made;
      if (good.length > 0 || !first || "joint" in first.found) continue;
      faults.push({ is: "not-halved", part: rail.name, at: line.at, over: first.other.name, ...first.found });
    }
  }
  for (const [rail, notches] of cut) notch(rail, notches);

  function keep(rail: Rail, other: Rail, { joint, notches }: Halving, at: Fault["at"]): void {
    const back = [...joints.values()].some(
      ({ kind, part, entered }) => kind === "halving" && part === other.name && entered.name === rail.name,
    );
    if (back) {
      faults.push({ is: "not-halved", part: rail.name, at, over: other.name, why: "said-twice" });
      return;
    }
    joints.set(joint.name, joint);
    cut.set(rail, [...(cut.get(rail) ?? []), notches[0]]);
    cut.set(other, [...(cut.get(other) ?? []), notches[1]]);
  }
}

/** The rails that a reference means: of a pair the one on the same side, where this is one of a pair too. */
function meant(rail: Rail, ref: PartRef, members: ReadonlyMap<string, Member>): Rail[] {
  return [...members.values()].filter((other): other is Rail => {
    if (other.is !== "rail" || other === rail || other.id.stem !== ref.name) return false;
    const side = ref.side ?? (rail.side === "middle" ? undefined : rail.side);
    return side === undefined || other.side === "middle" || other.side === side;
  });
}

function notch(rail: Rail, notches: Notch[]): void {
  const { body } = rail;
  const pieces = notches.reduce<Rail["body"]["pieces"]>(notched, body.pieces);
  rail.uncut ??= body;
  rail.notches = notches;
  rail.body = drawnLater(pieces, () => bodyOf(pieces, rail.round === undefined ? SMOOTH / 2 : SMOOTH).edges);
}

interface Halving {
  joint: Joint;
  /** What is cut out of the rail that keeps its top, and of the one that keeps its bottom. */
  notches: [Notch, Notch];
}

/** Where a rail is met: how far along, the middle of its section there, and the way its centre line runs. */
interface Spot {
  x: number;
  at: Vec3;
  run: Vec3;
}

/**
 * Two rails that cross, each cut half through: `upper` keeps its top, `lower` its bottom. They meet where their centre lines are nearest;
 * the height they share there, on the line square to both, is cut at its middle, parallel to both, as long in each as the other is thick.
 */
function halve(upper: Rail, lower: Rail, chosen: ChosenJoint): Halving | HalvingTrouble {
  const [a, b] = nearest(upper, lower);
  const lean = angleBetween(a.run, b.run);
  const angle = Math.min(lean, Math.PI - lean);
  if (angle < FLATTEST) return { why: "side-by-side", found: angle, allowed: FLATTEST };
  const beyond = Math.max(pastEnd(upper, a.x), pastEnd(lower, b.x));
  if (beyond > 0) return { why: "does-not-reach", found: beyond, allowed: 0 };
  const square = unit(cross(a.run, b.run));
  const up = square[2] < 0 ? negate(square) : square;
  const half = Math.min(thickAt(upper, a.x), thickAt(lower, b.x)) / 2;
  const miss = Math.abs(dot(sub(a.at, b.at), up));
  const [[lowA, highA], [lowB, highB]] = [heights(upper, a.at, up), heights(lower, a.at, up)];
  const shared = Math.min(highA, highB) - Math.max(lowA, lowB);
  if (shared <= 0) return { why: "no-shared-height", found: -shared, allowed: 0 };
  if (miss > half) return { why: "misses", found: miss, allowed: half };
  const root = along(a.at, up, Math.min(highA, highB) - shared / 2);
  const floor = planeAt(root, up);
  const both = upper.body.pieces.flatMap((one) =>
    lower.body.pieces.flatMap((other) => intersect(one, other) ?? []),
  );
  const [kept, left] = [halfOf(both, flipped(floor)), halfOf(both, floor)];
  const [thick, wide] = [thickAt(upper, a.x), thickAt(lower, b.x) / Math.sin(angle)];
  const across = unit(cross(up, a.run));
  const [upperSides, lowerSides] = [sidesOf(upper, a, up), sidesOf(lower, b, up)];
  // It closes along the line that lies in the side faces of both, which leaning rails need not have square to them.
  const line = unit(cross(upperSides[0].normal, lowerSides[0].normal));
  return {
    joint: {
      name: jointName(upper.name, lower.name),
      part: upper.name,
      end: lower.id.stem,
      entered: { kind: "rail", name: lower.name },
      facts: chosen.facts,
      ...(chosen.design === undefined ? {} : { design: chosen.design }),
      at: chosen.at,
      kind: "halving",
      shape: "rectangular",
      thick,
      wide,
      long: shared / 2,
      direction: dot(line, up) > 0 ? negate(line) : line,
      root,
      acrossThick: across,
      acrossWide: a.run,
      shoulders: { outside: 0, inside: 0, top: 0, bottom: 0 },
      tenon: kept,
      socket: left,
      sections: [{ thick: [-thick / 2, thick / 2], wide: [-wide / 2, wide / 2] }],
      volume: kept.reduce((sum, solid) => sum + volume(solid), 0),
      // What is left of each under its notch.
      mortiseWall: Math.min(highA, highB) - shared / 2 - lowB,
      socketWall: highA - (Math.min(highA, highB) - shared / 2),
      depthThere: shared,
      // The floors of the notches lie on each other, long grain on both.
      glueArea: thick * wide,
    },
    notches: [
      { by: lower.name, sides: lowerSides, floor },
      { by: upper.name, sides: upperSides, floor: flipped(floor) },
    ],
  };
}

/** Both nearest places, found along the straights first and then along the curves. */
function nearest(a: Rail, b: Rail): [Spot, Spot] {
  let [one, other] = [spotAt(a, a.length / 2), spotAt(b, b.length / 2)];
  for (let round = 0; round < ROUNDS; round++) {
    const apart = sub(other.at, one.at);
    const lean = dot(one.run, other.run);
    const det = 1 - lean * lean;
    if (det < 1e-9) break;
    const s = (dot(apart, one.run) - lean * dot(apart, other.run)) / det;
    const t = (lean * dot(apart, one.run) - dot(apart, other.run)) / det;
    one = spotAt(a, one.x + s * dot(one.run, a.along));
    other = spotAt(b, other.x + t * dot(other.run, b.along));
  }
  return [one, other];
}

function spotAt(rail: Rail, x: number): Spot {
  const shape = shapeOf(rail);
  const middle = (at: number): Vec3 =>
    spotOn(
      rail,
      at,
      (shape.outside(at) + shape.inside(at)) / 2,
      // An arch is cut out of straight stuff: its centre line stays straight.
      (shape.top(at) + shape.straightBottom(at)) / 2,
    );
  return { x, at: middle(x), run: unit(sub(middle(x + 0.01), middle(x - 0.01))) };
}

const pastEnd = (rail: Rail, x: number): number => Math.max(-x, x - rail.length);

const thickAt = (rail: Rail, x: number): number => shapeOf(rail).outside(x) - shapeOf(rail).inside(x);

/** From where to where a rail stands on a line through a point, mm along it. */
function heights(rail: Rail, at: Vec3, up: Vec3): [number, number] {
  const spans = rail.body.pieces.flatMap((piece) => {
    const span = spanIn(piece, at, up);
    return span ? [span] : [];
  });
  return [Math.min(...spans.map(([low]) => low)), Math.max(...spans.map(([, high]) => high))];
}

const halfOf = (solids: readonly Convex[], floor: Plane): Convex[] =>
  solids.flatMap((solid) => {
    const half = clip(solid, floor);
    return half && volume(half) > CRUMB ? [half] : [];
  });

/** The planes of a rail's two side faces where it is met, looking out of it: the ends of the other rail's notch. */
function sidesOf(rail: Rail, { x, run }: Spot, up: Vec3): [Plane, Plane] {
  const across = unit(cross(up, run));
  const host = hostOf(rail, x);
  const point = spotAt(rail, x).at;
  return [host.face(across, point), host.face(scale(across, -1), point)];
}

/** What is left of a body beside its notches, and what is cut out. */
function notched(pieces: readonly Convex[], { sides, floor }: Notch): Convex[] {
  return pieces.flatMap((piece) => {
    const left: Convex[] = [];
    let rest: Convex | null = piece;
    for (const plane of [...sides, floor]) {
      if (!rest) break;
      const outside: Convex | null = clip(rest, flipped(plane));
      if (outside && volume(outside) > CRUMB) left.push(outside);
      rest = clip(rest, plane);
    }
    return rest && volume(rest) > CRUMB ? left : [piece];
  });
}
