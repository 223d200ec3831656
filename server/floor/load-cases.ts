import type { Vec3 } from "../geometry/solid.ts";
import type { Edition } from "./editions.ts";
import { insideBy, type Load, margin, momentsAbout, type Spot, type TippingLine } from "./support.ts";

/** What the standards' loads act on, as the chair stands, mm. */
export interface Loaded {
  /** Outline of the sitting surface, anticlockwise from above. */
  seat: Vec3[];
  /** Height of the middle of the seat with a sitter on it. */
  seatHeight: number;
  /** The same with nobody on it. */
  unloadedHeight: number;
  /** Where the back meets the sitting surface, on the centre line, how high the back goes and where its top is; nothing for a stool. */
  back?: { junction: number; top: number; topAt: number };
  /** Outer edges of the arms: one place each, at its middle. */
  arms: { outer: Vec3 }[];
  weight: Load;
}

/** One way of loading a chair and how it stands up to it. */
export interface TipCase {
  way: "front" | "back" | "side";
  /** A load of the standards, or one beyond them: a child kneeling, somebody leaning back on the back legs. */
  kind: "standard" | "child" | "leaning";
  name: string;
  line: TippingLine;
  loads: Load[];
  /** Holding over lifting; goes over below 1. */
  margin: number;
  /** How much further out the tipping line would have to be for a margin of 1, mm; 0 when it holds. */
  short: number;
  /** The same for any margin, mm. */
  outFor: (margin: number) => number;
  /** For `leaning`: how far chair and sitter can be tilted, rad. */
  tilt?: number;
}

/**
 * The worst case of each way a chair can go over under the loads of an edition: forwards and sideways with the load near the
 * seat's edge, rearwards with a push on the back. A chair without a back is loaded at its back edge as at the others.
 * A calculation on a rigid chair on a level floor with stopped feet; not a test.
 */
export function tipCases(lines: readonly TippingLine[], loaded: Loaded, edition: Edition): TipCase[] {
  const cases = lines.flatMap((line) => {
    if (line.way === "back" && loaded.back) return [rearwards(line, loaded, loaded.back, edition)];
    if ((line.way === "left" || line.way === "right") && loaded.arms.length > 0)
      return [withArms(line, loaded, edition)];
    return [nearTheEdge(line, loaded, edition)];
  });
  const worst = new Map<string, TipCase>();
  for (const one of cases) {
    const known = worst.get(one.way);
    if (!known || one.margin < known.margin) worst.set(one.way, one);
  }
  return [...worst.values()];
}

function nearTheEdge(line: TippingLine, loaded: Loaded, edition: Edition): TipCase {
  const spot = worstSpot(line, inset(loaded.seat, edition.edgeDistance));
  const at: Vec3 = [spot[0], spot[1], loaded.seatHeight];
  return tipCase(line, "a load near the seat's edge", [
    loaded.weight,
    { at, force: [0, 0, -edition.seatLoad] },
    { at, force: outwards(line, edition.outward) },
  ]);
}

function withArms(line: TippingLine, loaded: Loaded, edition: Edition): TipCase {
  const middle = centreOf(loaded.seat);
  const arm = loaded.arms.reduce((a, b) => (inside(line, b.outer) < inside(line, a.outer) ? b : a)).outer;
  return tipCase(line, "a load on the arm and the seat", [
    loaded.weight,
    {
      at: [
        middle[0] + line.outward[0] * edition.armSeatDistance,
        middle[1] + line.outward[1] * edition.armSeatDistance,
        loaded.seatHeight,
      ],
      force: [0, 0, -edition.armSeatLoad],
    },
    {
      at: [arm[0] - Math.sign(arm[0]) * edition.armDistance, arm[1], arm[2]],
      force: [0, 0, -edition.armLoad],
    },
  ]);
}

function rearwards(
  line: TippingLine,
  loaded: Loaded,
  back: NonNullable<Loaded["back"]>,
  edition: Edition,
): TipCase {
  const from = edition.backHeightFrom === "loaded seat" ? loaded.seatHeight : loaded.unloadedHeight;
  const height = Math.min(from + edition.backHeight, back.top);
  return tipCase(line, "a sitter leaning back", [
    loaded.weight,
    { at: [0, back.junction - edition.rearPoint, loaded.seatHeight], force: [0, 0, -edition.rearSeatLoad] },
    { at: [0, back.junction, height], force: [0, edition.backForce(loaded.seatHeight), 0] },
  ]);
}

/** Calculates one case from its loads. */
export function tipCase(
  line: TippingLine,
  name: string,
  loads: Load[],
  kind: TipCase["kind"] = "standard",
): TipCase {
  const { holding, lifting } = momentsAbout(line, loads);
  const down = loads.reduce((sum, load) => sum - load.force[2], 0);
  return {
    way: line.way === "front" || line.way === "back" ? line.way : "side",
    kind,
    name,
    line,
    loads,
    margin: margin(line, loads),
    short: Math.max(0, (lifting - holding) / down),
    outFor: (low) => outBy(line, loads, low),
  };
}

/** No chair's feet stand further out than this, mm. */
const FURTHEST = 2000;

/** How far out the tipping line would have to come for a margin, mm: halved down to, as the margin grows all the way out. */
function outBy(line: TippingLine, loads: readonly Load[], low: number): number {
  const moved = (by: number): TippingLine => {
    const out = ([x, y]: Spot): Spot => [x + line.outward[0] * by, y + line.outward[1] * by];
    return { ...line, from: out(line.from), to: out(line.to) };
  };
  let near = 0;
  let far = FURTHEST;
  while (far - near > 1e-3) {
    const by = (near + far) / 2;
    if (margin(moved(by), loads) >= low) far = by;
    else near = by;
  }
  return far;
}

function outwards(line: TippingLine, force: number): Vec3 {
  return [line.outward[0] * force, line.outward[1] * force, 0];
}

function inside(line: TippingLine, place: Vec3): number {
  return insideBy(line, [place[0], place[1]]);
}

function worstSpot(line: TippingLine, spots: readonly Spot[]): Spot {
  return spots.reduce((a, b) => (insideBy(line, b) < insideBy(line, a) ? b : a));
}

function centreOf(outline: readonly Vec3[]): Spot {
  const n = outline.length;
  return [outline.reduce((sum, p) => sum + p[0], 0) / n, outline.reduce((sum, p) => sum + p[1], 0) / n];
}

/** Corners of a convex outline, seen from above, moved in by a distance from every edge. */
export function inset(outline: readonly Vec3[], distance: number): Spot[] {
  const edges = outline.map((a, i) => {
    const b = outline[(i + 1) % outline.length]!;
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1;
    const inward: Spot = [-(b[1] - a[1]) / length, (b[0] - a[0]) / length];
    return { inward, offset: a[0] * inward[0] + a[1] * inward[1] + distance };
  });
  return edges.map((edge, i) => {
    const last = edges[(i + edges.length - 1) % edges.length]!;
    const det = edge.inward[0] * last.inward[1] - edge.inward[1] * last.inward[0];
    if (Math.abs(det) < 1e-9) {
      return [outline[i]![0] + edge.inward[0] * distance, outline[i]![1] + edge.inward[1] * distance];
    }
    return [
      (edge.offset * last.inward[1] - last.offset * edge.inward[1]) / det,
      (edge.inward[0] * last.offset - last.inward[0] * edge.offset) / det,
    ];
  });
}
