/**
 * What has to be made anew: parts whose solid is another, parts that only stand elsewhere, and what lies on the bench for them.
 */
import type { Chair, Post, Rail } from "../chair/chair.ts";
import { railsAndSlats } from "../chair/member.ts";
import type { TimberDesign } from "../design/design.ts";
import { twinName } from "../design/identity.ts";
import { printLength } from "../design/units.ts";
import { movePoint } from "../geometry/motion.ts";
import type { Body } from "../geometry/solid.ts";
import { distance } from "../geometry/vec.ts";
import { type Cast, likeness } from "../joinery/pieces/alike.ts";
import { flatParts } from "../joinery/pieces/flat.ts";
import type { Piece } from "../joinery/pieces/piece.ts";
import { castOf, pieceOf } from "../joinery/pieces/pieces.ts";
import { type Difference, howDifferent } from "./how-different.ts";
import { type Called, dotted } from "./spelled.ts";
import { stockBetween } from "./stock.ts";

export interface Anew {
  /** Full name; of a part that is gone its old one; empty for what the whole chair needs. */
  part: string;
  is: "changed" | "moved" | "added" | "gone" | "papers";
  why: string;
}

/** A part as it can be compared. */
interface Made {
  name: string;
  body: Body;
  timber: TimberDesign | undefined;
  /** Thickness, width, diameter: what the corners of the cast leave unsaid of round and bent stuff. */
  sizes: readonly number[];
  cast(): Cast;
  piece(): Piece | undefined;
}

/** A place that differs by less than this is the same, mm: no saw tells it. */
const SAME = 0.05;

/** Goes through the parts of two chairs; `called` gives the new names of renamed parts. */
export function anewBetween(old: Chair, now: Chair, called: Called): Anew[] {
  const before = new Map(partsOf(old).map((part) => [dotted(part.name, called), part]));
  const { units } = now.design;
  const found: Anew[] = [];
  const { blanks, stale } = stockBetween(old, now, called);
  const told = new Map<string, { was: Made; now: Made; how: Difference }>();
  /** A part that is the mirror image of its twin, before and now, differs as the twin does: half the measuring. */
  const differs = (was: Made, part: Made): Difference => {
    const twin = told.get(twinName(part.name));
    const mirrored = (one: Made, other: Made) => likeness(one.cast(), other.cast()).mirrored;
    const alike = twin !== undefined && mirrored(twin.was, was) && mirrored(twin.now, part);
    const how = alike ? twin.how : howDifferent(was.piece(), part.piece(), units);
    told.set(part.name, { was, now: part, how });
    return how;
  };
  for (const part of partsOf(now)) {
    const was = before.get(part.name);
    before.delete(part.name);
    if (was === undefined) {
      found.push({ part: part.name, is: "added", why: "new part: make it, with its sheet" });
      continue;
    }
    const wood = woodChanged(was.timber, part.timber);
    if (isSameSolid(was, part)) {
      if (wood !== undefined)
        found.push({ part: part.name, is: "changed", why: `${wood}; stock is another` });
      else {
        const by = furthest(was.body, part.body, old, now);
        if (by > SAME)
          found.push({ part: part.name, is: "moved", why: `only moved, by up to ${printLength(by, units)}` });
      }
      continue;
    }
    const how = differs(was, part);
    const papers =
      how.templates.length > 0 ? `sheet and template (${how.templates.join(", ")}) stale` : "sheet stale";
    const blank = blanks.get(part.name);
    const why = [
      ...(wood === undefined ? [] : [wood]),
      ...how.says,
      ...(blank === undefined ? [] : [blank]),
      papers,
    ].join("; ");
    found.push({ part: part.name, is: "changed", why });
  }
  for (const part of before.values()) {
    found.push({ part: part.name, is: "gone", why: "no longer there; its sheet is void" });
  }
  if (found.length > 0) {
    found.push({
      part: "",
      is: "papers",
      why: "views and full-size rods stale: parts differ or stand elsewhere",
    });
  }
  if (stale !== "") found.push({ part: "", is: "papers", why: stale });
  return found;
}

function woodChanged(was: TimberDesign | undefined, now: TimberDesign | undefined): string | undefined {
  if (was?.species === now?.species) return undefined;
  return `timber ${was?.species ?? "not said"} → ${now?.species ?? "not said"}`;
}

function isSameSolid(was: Made, now: Made): boolean {
  if (was.sizes.length !== now.sizes.length) return false;
  if (was.sizes.some((size, k) => Math.abs(size - now.sizes[k]!) > SAME)) return false;
  return likeness(was.cast(), now.cast()).same;
}

function partsOf(chair: Chair): Made[] {
  const sticks = [...chair.posts.values(), ...railsAndSlats(chair)];
  const flat = flatParts(chair);
  const made = sticks.map(
    (part): Made => ({
      name: part.name,
      body: part.body,
      timber: (part.design.timber ?? chair.design.timber)?.value,
      sizes: sizesOf(part),
      cast: () => castOf(chair, part),
      piece: () => pieceOf(chair, part),
    }),
  );
  const bodies = new Map([...chair.blocks].map(([name, { body }]) => [name, body]));
  if (chair.seat) bodies.set("seat", chair.seat.body);
  for (const { piece, cast } of flat) {
    const body = bodies.get(piece.name);
    if (body === undefined) continue;
    // The cast of a seat says nothing; its outline does.
    const ring = (piece.plan?.ring ?? []).map(([x, y]) => ({ tag: "ring", at: [x, y, 0] as const }));
    const design = piece.is === "seat" ? chair.seat?.design : chair.blocks.get(piece.name)?.design;
    made.push({
      name: piece.name,
      body,
      timber: (design?.timber ?? chair.design.timber)?.value,
      sizes: [piece.size.long, piece.size.wide, piece.size.thick],
      cast: () =>
        cast.points.length > 0
          ? cast
          : {
              points: ring,
              frame: [
                [1, 0, 0],
                [0, 1, 0],
                [0, 0, 1],
              ],
            },
      piece: () => piece,
    });
  }
  return made;
}

function sizesOf(part: Post | Rail): number[] {
  if (part.is === "post") return part.pieces.flatMap(({ radii }) => radii ?? []);
  return [part.thick, part.wide, part.round ?? 0, part.roundLength ?? 0, part.length];
}

/** How far the furthest place of a part has moved, as the chairs stand, mm. */
function furthest(was: Body, now: Body, old: Chair, chair: Chair): number {
  const before = was.pieces.flatMap(({ points }) => points.map((p) => movePoint(old.stance, p)));
  const after = now.pieces.flatMap(({ points }) => points.map((p) => movePoint(chair.stance, p)));
  if (before.length !== after.length) return boxesApart(before, after);
  return before.reduce((most, p, k) => Math.max(most, distance(p, after[k]!)), 0);
}

type Points = readonly (readonly [number, number, number])[];

function boxesApart(before: Points, after: Points): number {
  const ends = (points: Points) =>
    [0, 1, 2].flatMap((k) => [
      points.reduce((low, p) => Math.min(low, p[k]!), Number.POSITIVE_INFINITY),
      points.reduce((high, p) => Math.max(high, p[k]!), Number.NEGATIVE_INFINITY),
    ]);
  const [a, b] = [ends(before), ends(after)];
  return Math.max(...a.map((end, k) => Math.abs(end - b[k]!)));
}
