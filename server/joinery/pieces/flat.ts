/**
 * Parts that are marked out in plan: corner blocks and seats.
 */
import type { Block, Chair, SeatSurface } from "../../chair/chair.ts";
import { height } from "../../geometry/plane.ts";
import type { Plane, Vec3 } from "../../geometry/solid.ts";
import { cross, distance, dot, squareTo, sub, unit } from "../../geometry/vec.ts";
import type { Cast } from "./alike.ts";
import type { Piece, Spot } from "./piece.ts";
import { planeTowards, sideIn } from "./squared.ts";

export interface FlatPart {
  piece: Piece;
  cast: Cast;
  design: unknown;
}

/** Points nearer than this are one, mm. */
const SAME = 1e-4;

/** The seat, where it is of wood, and the corner blocks. */
export function flatParts(chair: Chair): FlatPart[] {
  const blocks = [...chair.blocks.values()].flatMap((block) => blockPart(block) ?? []);
  const seat = chair.seat && seatPart(chair.seat);
  return seat ? [...blocks, seat] : blocks;
}

function blockPart(block: Block): FlatPart | undefined {
  const solid = block.body.pieces[0];
  if (!solid) return undefined;
  const top = planeTowards(solid, [0, 0, 1]);
  const ring = sideIn(solid, top);
  if (!ring) return undefined;
  const longest = ring.reduce((best, _, k) => (edge(ring, k) > edge(ring, best) ? k : best), 0);
  const x = unit(sub(ring[(longest + 1) % ring.length]!, ring[longest]!));
  const thick = Math.max(...solid.points.map((p) => -height(top, p)));
  const timber = block.timber?.species;
  return {
    piece: flatPiece({ name: block.name, is: "block", timber }, planOf(ring, top, x), thick, "its top"),
    cast: {
      points: solid.points.map((at) => ({ tag: "corner", at })),
      frame: [x, cross(top.normal, x), top.normal],
    },
    design: block.design,
  };
}

const edge = (ring: readonly Vec3[], k: number): number => distance(ring[k]!, ring[(k + 1) % ring.length]!);

/** A board or the frame of a drop-in or upholstered seat, by its upper outline; a woven one is no piece. */
function seatPart(seat: SeatSurface): FlatPart | undefined {
  if (seat.design.kind === "woven") return undefined;
  const ring = upperRing(seat) ?? seat.outline;
  const x = unit(squareTo([1, 0, 0], seat.plane.normal));
  const thick = seat.design.thick?.value ?? 0;
  const timber = seat.timber?.species;
  return {
    piece: flatPiece(
      { name: "seat", is: "seat", timber },
      planOf(ring, seat.plane, x),
      thick,
      "from above, the front below",
    ),
    cast: { points: [], frame: [x, x, x] },
    design: seat.design,
  };
}

/** The edge of the sitting surface, notched round the posts; undefined when its lines do not close to one ring. */
function upperRing({ body, plane }: SeatSurface): Vec3[] | undefined {
  const level = (p: Vec3) => Math.abs(height(plane, p)) < 1e-3;
  const left = body.edges.filter(({ a, b }) => level(a) && level(b) && distance(a, b) > SAME);
  const first = left.shift();
  if (!first) return undefined;
  const ring = [first.a, first.b];
  while (left.length > 0) {
    const end = ring[ring.length - 1]!;
    const next = left.findIndex(({ a, b }) => distance(a, end) < SAME || distance(b, end) < SAME);
    if (next < 0) return undefined;
    const [{ a, b }] = left.splice(next, 1) as [(typeof left)[number]];
    ring.push(distance(a, end) < SAME ? b : a);
  }
  const closed = distance(ring.pop()!, ring[0]!) < SAME;
  return closed ? ring : undefined;
}

/** The ring as it is looked down on, anticlockwise, from its lower left corner. */
function planOf(ring: readonly Vec3[], plane: Plane, x: Vec3): Spot[] {
  const y = cross(plane.normal, x);
  const spots = ring.map((p): Spot => [dot(p, x), dot(p, y)]);
  const [left, low] = [Math.min(...spots.map(([u]) => u)), Math.min(...spots.map(([, v]) => v))];
  const moved = spots.map(([u, v]): Spot => [u - left, v - low]);
  const area = moved.reduce((sum, [u, v], k) => {
    const [p, q] = moved[(k + 1) % moved.length]!;
    return sum + u * q - p * v;
  }, 0);
  const turned = area < 0 ? [...moved].reverse() : moved;
  const first = turned.reduce(
    (best, [u, v], k) => (u + v < turned[best]![0] + turned[best]![1] ? k : best),
    0,
  );
  return [...turned.slice(first), ...turned.slice(0, first)];
}

function flatPiece(
  { name, is, timber }: { name: string; is: "block" | "seat"; timber: string | undefined },
  ring: Spot[],
  thick: number,
  seen: string,
): Piece {
  const reach = (axis: 0 | 1) => Math.max(...ring.map((spot) => spot[axis]));
  return {
    name,
    is,
    parts: [{ name, mirrored: false }],
    ...(timber ? { timber } : {}),
    size: { long: reach(0), wide: reach(1), thick },
    faces: [],
    plan: { ring, seen },
    datums: [],
    ends: [],
    mortises: [],
    notes: [],
  };
}
