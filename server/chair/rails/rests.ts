/**
 * What a loose seat rests in or on: rebates and grooves cut along a rail, strips fixed to its face. They follow its curve and taper.
 */

import type { Given, RestDesign, SeatDesign } from "../../design/design.ts";
import { bodyOf, drawnLater } from "../../geometry/body.ts";
import { clip, intersect, prism, volume } from "../../geometry/convex.ts";
import { less } from "../../geometry/less.ts";
import { flipped } from "../../geometry/plane.ts";
import type { Convex, Vec3 } from "../../geometry/solid.ts";
import { along, between, dot, negate, sub } from "../../geometry/vec.ts";
import type { Rail } from "../chair.ts";
import type { RailFrame } from "./rail-frame.ts";
import { shapeOf, spotOn } from "./rail-outline.ts";
import type { Box, RailCut, RailStrip } from "./rest-wood.ts";
import { sweep } from "./sweep.ts";

/** A cut begins so far outside the wood that it is open there, mm. */
const OPEN = 100;
/** Facets of a curved rail turn by less than this, radians. */
const SMOOTH = 0.2;
/** Places along a rail nearer than this are one, mm. */
const SAME = 1e-6;
/** Less than this shared is none, mm³. */
const NONE = 1;

/** Cuts what the text says along a rail and fixes its strips; `stations` are those of its body. */
export function setRests(rail: Rail, frame: RailFrame, stations: readonly number[]): void {
  if (rail.design.is !== "rail" || rail.design.rests.length === 0) return;
  const cuts = rail.design.rests.flatMap((design) => cutOf(rail, design) ?? []);
  const strips = rail.design.rests.flatMap((design) => stripOf(rail, design, frame, stations) ?? []);
  rail.uncut = rail.body;
  if (cuts.length > 0) rail.cuts = cuts;
  if (strips.length > 0) rail.strips = strips;
  const wood = cuts.reduce(
    (pieces, cut) => pieces.flatMap((piece) => withoutCut(rail, piece, cut)),
    rail.uncut.pieces,
  );
  const { uncut } = rail;
  putTogether(rail, wood, () => (cuts.length > 0 ? bodyOf(wood, SMOOTH).edges : uncut.edges));
}

/** A rail's body of its own wood and its strips. */
function putTogether(rail: Rail, wood: Convex[], edges: () => Rail["body"]["edges"]): void {
  const strips = rail.strips ?? [];
  rail.body = drawnLater([...wood, ...strips.flatMap(({ pieces }) => pieces)], () => [
    ...edges(),
    ...strips.flatMap(({ pieces }) => bodyOf(pieces, SMOOTH).edges),
  ]);
}

function cutOf(rail: Rail, { value, ...given }: Given<RestDesign>): RailCut | undefined {
  const shape = shapeOf(rail);
  const inner = (x: number, deep: number): readonly [number, number] => [
    shape.inside(x) - OPEN,
    shape.inward(x, shape.thick(x) - deep),
  ];
  const outer = (x: number, deep: number): readonly [number, number] => [
    shape.inward(x, deep),
    shape.outside(x) + OPEN,
  ];
  const edge = (x: number, which: "top" | "bottom", deep: number): readonly [number, number] =>
    which === "top"
      ? [-deep, shape.top(x) + OPEN]
      : [shape.straightBottom(x) - OPEN, shape.straightBottom(x) + deep];
  if (value.is === "rebate") {
    const { wide, deep, face, from, to } = value;
    return {
      design: { ...given, value },
      section: (x) => ({ out: (face === "inside" ? inner : outer)(x, wide), up: edge(x, value.edge, deep) }),
      ...(from === undefined || to === undefined ? {} : { reach: [from, to] }),
    };
  }
  if (value.is === "strip") return undefined;
  const { wide, deep, face, at } = value;
  const section = (x: number): Box =>
    face === "inside" || face === "outside"
      ? { out: (face === "inside" ? inner : outer)(x, deep), up: [-at - wide, -at] }
      : { out: [shape.inward(x, at + wide), shape.inward(x, at)], up: edge(x, face, deep) };
  return { design: { ...given, value }, section };
}

function stripOf(
  rail: Rail,
  { value, ...given }: Given<RestDesign>,
  frame: RailFrame,
  stations: readonly number[],
): RailStrip | undefined {
  if (value.is !== "strip") return undefined;
  const shape = shapeOf(rail);
  const { wide, thick, at, face } = value;
  const near = (x: number) => (face === "inside" ? shape.inside(x) : shape.inward(x, -thick));
  const far = (x: number) => (face === "inside" ? shape.inward(x, shape.thick(x) + thick) : shape.outside(x));
  // An arch bends no strip, and a taper only where it turns.
  const bends = shape.bow
    ? stations
    : stations.filter((x, k) => k === 0 || k === stations.length - 1 || Math.abs(x - rail.length / 2) < SAME);
  const own = { ...shape, outside: near, inside: far, top: () => -at, bottom: () => -at - wide };
  return {
    design: { ...given, value },
    section: (x) => ({ out: [far(x), near(x)], up: [-at - wide, -at] }),
    pieces: sweep(own, frame, bends).pieces,
    ends: [...frame.cuts],
    butts: [undefined, undefined],
  };
}

/** What a cut leaves of one straight stretch of a rail's body. */
function withoutCut(rail: Rail, piece: Convex, { section, reach }: RailCut): Convex[] {
  const xs = piece.points.map((p) => dot(sub(p, rail.start), rail.along));
  const [low, high] = [Math.max(0, Math.min(...xs)), Math.min(rail.length, Math.max(...xs))];
  const rings = [low, Math.max(high, low + 1e-3)].map((x, k) =>
    ringOf(rail, section(k === 1 && high <= low ? low : x), x),
  );
  const span = Math.max(high, low + 1e-3) - low;
  const ring = (x: number) => rings[0]!.map((p, k) => between(p, rings[1]![k]!, (x - low) / span));
  const from = reach ? Math.max(reach[0], Math.min(...xs) - 1) : Math.min(...xs) - 1;
  const to = reach ? Math.min(reach[1], Math.max(...xs) + 1) : Math.max(...xs) + 1;
  return from < to ? less(piece, prism(ring(from), ring(to))) : [piece];
}

/** The corners of a section, anticlockwise as seen from the rail's second end. */
function ringOf(rail: Rail, { out, up }: Box, x: number): Vec3[] {
  const ring = [
    spotOn(rail, x, out[1], up[1]),
    spotOn(rail, x, out[0], up[1]),
    spotOn(rail, x, out[0], up[0]),
    spotOn(rail, x, out[1], up[0]),
  ];
  return isForward(rail) ? ring : ring.reverse();
}

const isForward = ({ along: run, outward, upward }: Rail): boolean =>
  outward[0] * (upward[1] * run[2] - upward[2] * run[1]) +
    outward[1] * (upward[2] * run[0] - upward[0] * run[2]) +
    outward[2] * (upward[0] * run[1] - upward[1] * run[0]) >
  0;

/**
 * Where two strips would be in one place in a corner, one is cut short and butts against the other's face: the one whose rail the seat
 * names later, and of rails that it does not name the later by name. The order of the text's statements says nothing.
 */
export function fitStrips(rails: Iterable<Rail>, seat: SeatDesign | undefined): void {
  const fitted: Rail[] = [];
  const named = (seat?.on ?? []).map(({ value }) => value.name);
  const place = ({ id }: Rail) => (named.includes(id.stem) ? named.indexOf(id.stem) : named.length);
  const inTurn = [...rails].sort((a, b) => place(a) - place(b) || (a.name < b.name ? -1 : 1));
  for (const rail of inTurn) {
    if (!rail.strips || !rail.uncut) continue;
    const before = new Set(rail.strips.flatMap(({ pieces }) => pieces));
    const changed = rail.strips.map((strip) => butted(rail, strip, fitted)).some(Boolean);
    if (changed) {
      const wood = rail.body.pieces.filter((piece) => !before.has(piece));
      const { uncut, cuts } = rail;
      putTogether(rail, wood, () => (cuts ? bodyOf(wood, SMOOTH).edges : uncut.edges));
    }
    fitted.push(rail);
  }
}

function butted(rail: Rail, strip: RailStrip, fitted: readonly Rail[]): boolean {
  let changed = false;
  for (const other of fitted) {
    for (const { pieces, design } of other.strips ?? []) {
      const look = design.value.face === "inside" ? negate(other.outward) : other.outward;
      const hit = pieces.find((piece) => strip.pieces.some((own) => sharedBy(piece, own)));
      if (!hit) continue;
      const face = hit.planes.reduce((best, plane) =>
        dot(plane.normal, look) > dot(best.normal, look) ? plane : best,
      );
      const which = dot(face.normal, rail.along) > 0 ? 0 : 1;
      strip.pieces = strip.pieces.flatMap((piece) => clip(piece, flipped(face)) ?? []);
      strip.ends[which] = face;
      strip.butts[which] = other.name;
      changed = true;
    }
  }
  return changed;
}

function sharedBy(a: Convex, b: Convex): boolean {
  const both = intersect(a, b);
  return both !== null && volume(both) > NONE;
}

/** The four corners of a strip at one of its ends: where it lies on the rail and at its far side, at its top; then the same below. */
export function stripCorners(
  rail: Rail,
  { section, ends, design }: RailStrip,
  which: 0 | 1,
): [Vec3, Vec3, Vec3, Vec3] {
  const plane = ends[which];
  const x = which === 0 ? 0 : rail.length;
  const step = which === 0 ? 1 : -1;
  const corner = (side: 0 | 1, level: 0 | 1): Vec3 => {
    const at = (place: number) => {
      const { out, up } = section(place);
      return spotOn(rail, place, out[side], up[level]);
    };
    const [a, b] = [at(x), at(x + step)];
    const run = sub(b, a);
    return along(a, run, (plane.offset - dot(plane.normal, a)) / dot(plane.normal, run));
  };
  const on = design.value.face === "inside" ? 1 : 0;
  const far = on === 1 ? 0 : 1;
  return [corner(on, 1), corner(far, 1), corner(on, 0), corner(far, 0)];
}
