/**
 * Parts that are marked out in plan: corner blocks and seats.
 */
import type { Block, Chair, SeatSurface } from "../../chair/chair.ts";
import { slabRings } from "../../chair/seat/seat-solid.ts";
import { hollowContours, insetOutline } from "../../chair/seat/solid/relief.ts";
import { height } from "../../geometry/plane.ts";
import type { Edge, Vec3 } from "../../geometry/solid.ts";
import { cross, distance, dot, negate, squareTo, sub, unit } from "../../geometry/vec.ts";
import type { Cast } from "./alike.ts";
import type { Piece, Plan, PlanLayer, Spot } from "./piece.ts";
import { seatBores } from "./seat-bores.ts";
import { planeTowards, sideIn } from "./squared.ts";

interface FlatPart {
  piece: Piece;
  cast: Cast;
  design: unknown;
}

/** Points nearer than this are one, mm. */
const SAME = 1e-4;

/** The seat, where it is of wood, and the corner blocks. */
export function flatParts(chair: Chair): FlatPart[] {
  const blocks = [...chair.blocks.values()].flatMap((block) => blockPart(block) ?? []);
  const seat = chair.seat && seatPart(chair, chair.seat);
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
  const below = sideIn(solid, planeTowards(solid, negate(top.normal)));
  const under = below && fellows(ring, below, block.body.edges);
  const layer: Slab = {
    name: "block",
    from: 0,
    to: thick,
    top: ring,
    ...(under ? { under } : {}),
    openings: [],
  };
  const timber = block.timber?.species;
  return {
    piece: flatPiece(
      { name: block.name, is: "block", timber },
      planOf([layer], top.normal, x, { seen: "its top", grain: block.grain }),
      thick,
    ),
    cast: {
      points: solid.points.map((at) => ({ tag: "corner", at })),
      frame: [x, cross(top.normal, x), top.normal],
    },
    design: block.design,
  };
}

/** The corner of a lower outline that an edge leads to from each of the upper one; nothing unless there is one for each. */
function fellows(ring: readonly Vec3[], below: readonly Vec3[], edges: readonly Edge[]): Vec3[] | undefined {
  const under = ring.flatMap((p) => {
    const down = edges.flatMap(({ a, b }) =>
      distance(a, p) < SAME ? [b] : distance(b, p) < SAME ? [a] : [],
    );
    const found = below.find((q) => down.some((end) => distance(end, q) < SAME));
    return found ? [found] : [];
  });
  return under.length === ring.length ? under : undefined;
}

const edge = (ring: readonly Vec3[], k: number): number => distance(ring[k]!, ring[(k + 1) % ring.length]!);

/** A board or the frame of a drop-in or upholstered seat, slab by slab; a woven one is not a piece. */
function seatPart(chair: Chair, seat: SeatSurface): FlatPart | undefined {
  if (seat.design.kind === "woven") return undefined;
  const x = unit(squareTo([1, 0, 0], seat.plane.normal));
  const posts = seat.plan ? [] : [...chair.posts.values()];
  const names = seat.layers.length > 1 ? ["upper", "lower"] : ["seat"];
  const slabs =
    bevelledSlabs(seat) ??
    seat.layers.flatMap((layer, k): Slab[] => {
      const rings = slabRings(layer, seat.plane, posts, seat.clearance);
      return rings
        ? [
            {
              name: names[k] ?? `slab ${k + 1}`,
              from: layer.from,
              to: layer.to,
              ...rings.edge,
              openings: rings.openings,
            },
          ]
        : [];
    });
  const thick = seat.design.thick?.value ?? 0;
  const plain: Slab[] = [{ name: "seat", from: 0, to: thick, top: seat.outline, openings: [] }];
  const seen = "from above, the front below";
  return {
    piece: flatPiece(
      { name: "seat", is: "seat", timber: seat.timber?.species },
      {
        ...planOf(slabs.length ? slabs : plain, seat.plane.normal, x, { seen, grain: seat.grain }),
        ...(seat.plan && { bores: seatBores(chair, seat) }),
        ...hollowOf(seat),
      },
      thick,
    ),
    cast: { points: [], frame: [x, x, x] },
    design: seat.design,
  };
}

/** A bevelled solid seat as slabs: each bevel is one that narrows; undefined without bevels. */
function bevelledSlabs(seat: SeatSurface): Slab[] | undefined {
  const thick = seat.design.thick?.value ?? 0;
  const bevels = seat.design.solid?.bevels.map(({ value }) => value) ?? [];
  if (bevels.length === 0 || !seat.plan) return undefined;
  const narrowed = (wide: number) => insetOutline(seat, wide);
  const [above, below] = (["above", "below"] as const).map((face) =>
    bevels.find((bevel) => bevel.face === face),
  );
  const slab = (name: string, from: number, to: number, top: Vec3[], under?: Vec3[]): Slab => ({
    name,
    from,
    to,
    top,
    ...(under && { under }),
    openings: [],
  });
  const [high, low] = [above?.deep ?? 0, thick - (below?.deep ?? 0)];
  return [
    slab("seat", high, low, seat.outline),
    ...(above ? [slab("upper bevel", 0, high, narrowed(above.wide), seat.outline)] : []),
    ...(below ? [slab("lower bevel", low, thick, seat.outline, narrowed(below.wide))] : []),
  ];
}

/** The contours of a seat's hollow on its plan, from the lower left corner of the box about its outline. */
function hollowOf(seat: SeatSurface): Pick<Plan, "hollow"> {
  const contours = hollowContours(seat);
  if (contours.length === 0) return {};
  const left = Math.min(...seat.outline.map(([x]) => -x));
  // Seen from above with the front below: the sitter's left is on the right.
  return {
    hollow: contours.map(({ deep, ring }) => ({ deep, ring: ring.map(([x, s]): Spot => [x - left, s]) })),
  };
}

/** A slab with its upper and lower outline in the chair. */
interface Slab {
  name: string;
  from: number;
  to: number;
  top: Vec3[];
  under?: Vec3[];
  openings: { top: Vec3[]; under: Vec3[] }[];
}

/** Outlines that differ by less than this are one, mm. */
const ALIKE = 0.05;

/** The slabs as they are looked down on, anticlockwise, from the lower left corner of the box about the first; `x` runs to the right. */
function planOf(
  slabs: readonly Slab[],
  up: Vec3,
  x: Vec3,
  { seen, grain }: { seen: string; grain: Vec3 },
): Plan {
  const y = cross(up, x);
  const spot = (p: Vec3): Spot => [dot(p, x), dot(p, y)];
  const first = slabs[0]!.top.map(spot);
  const [left, low] = [Math.min(...first.map(([u]) => u)), Math.min(...first.map(([, v]) => v))];
  const layers = slabs.map(({ name, from, to, top, under, openings }): PlanLayer => {
    const moved = (ring: readonly Vec3[]) => ring.map(spot).map(([u, v]): Spot => [u - left, v - low]);
    const ring = moved(top);
    const below = under && moved(under);
    const order = inOrder(ring);
    const own = below && order.map((k) => below[k]!);
    const start = order.map((k) => ring[k]!);
    const differs = own?.some(([u, v], k) => Math.hypot(u - start[k]![0], v - start[k]![1]) > ALIKE);
    const inside = openings.map((each) => ({ top: moved(each.top), under: moved(each.under) }));
    return { name, from, to, top: start, ...(own && differs ? { under: own } : {}), openings: inside };
  });
  return { ring: layers[0]!.top, seen, grain: Math.atan2(dot(grain, y), dot(grain, x)), layers };
}

/** The corners anticlockwise from the one at the lower left. */
function inOrder(ring: readonly Spot[]): number[] {
  const area = ring.reduce((sum, [u, v], k) => {
    const [p, q] = ring[(k + 1) % ring.length]!;
    return sum + u * q - p * v;
  }, 0);
  const order = ring.map((_, k) => k);
  if (area < 0) order.reverse();
  const at = order.reduce(
    (best, k, place) =>
      ring[k]![0] + ring[k]![1] < ring[order[best]!]![0] + ring[order[best]!]![1] ? place : best,
    0,
  );
  return [...order.slice(at), ...order.slice(0, at)];
}

function flatPiece(
  { name, is, timber }: { name: string; is: "block" | "seat"; timber: string | undefined },
  plan: Plan,
  thick: number,
): Piece {
  const spots = plan.layers.flatMap(({ top, under = [] }) => [...top, ...under]);
  const reach = (axis: 0 | 1) =>
    Math.max(...spots.map((spot) => spot[axis])) - Math.min(...spots.map((spot) => spot[axis]));
  return {
    name,
    is,
    parts: [{ name, mirrored: false }],
    ...(timber ? { timber } : {}),
    size: { long: reach(0), wide: reach(1), thick },
    faces: [],
    plan,
    datums: [],
    ends: [],
    mortises: [],
    notes: [],
  };
}
