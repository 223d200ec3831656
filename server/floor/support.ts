import type { Vec3 } from "../geometry/solid.ts";

/** A place on the floor: [x to the sitter's left, y back], mm. */
export type Spot = readonly [number, number];

/** A line on the floor over which a chair can go: from one foot's edge to another's, with the direction it goes over. */
export interface TippingLine {
  from: Spot;
  to: Spot;
  /** Unit, outwards from the feet. */
  outward: Spot;
  way: Way;
}

type Way = "front" | "back" | "left" | "right";

/** A force on the chair, N, where it acts, mm as it stands. Down is negative z. */
export interface Load {
  at: Vec3;
  force: Vec3;
}

/** The outline of the feet on the floor, anticlockwise from above: Andrew's monotone chain. */
export function supportOutline(spots: readonly Spot[]): Spot[] {
  const sorted = [...spots].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const chain = (points: readonly Spot[]): Spot[] => {
    const hull: Spot[] = [];
    for (const p of points) {
      while (hull.length >= 2 && turn(hull[hull.length - 2]!, hull[hull.length - 1]!, p) <= 1e-9) hull.pop();
      hull.push(p);
    }
    return hull;
  };
  const lower = chain(sorted);
  const upper = chain(sorted.reverse());
  return [...lower.slice(0, -1), ...upper.slice(0, -1)];
}

/** The lines a chair can go over, one for each side of the outline of its feet. */
export function tippingLines(outline: readonly Spot[]): TippingLine[] {
  if (outline.length < 3) return [];
  return outline.map((from, i) => {
    const to = outline[(i + 1) % outline.length]!;
    const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
    const outward: Spot = [(to[1] - from[1]) / length, (from[0] - to[0]) / length];
    return { from, to, outward, way: wayOf(outward) };
  });
}

/** How far inside a tipping line a place is, mm; negative when it is past it. */
export function insideBy(line: TippingLine, spot: Spot): number {
  return (line.from[0] - spot[0]) * line.outward[0] + (line.from[1] - spot[1]) * line.outward[1];
}

/**
 * Moments about a tipping line, N·mm: what holds the chair down and what lifts it over. A downward force inside the line
 * holds, outside it lifts; a level force outwards lifts by its height, inwards holds.
 */
export function momentsAbout(
  line: TippingLine,
  loads: readonly Load[],
): { holding: number; lifting: number } {
  let holding = 0;
  let lifting = 0;
  const add = (moment: number) => {
    if (moment >= 0) holding += moment;
    else lifting -= moment;
  };
  for (const { at, force } of loads) {
    add(-force[2] * insideBy(line, [at[0], at[1]]));
    add(-(force[0] * line.outward[0] + force[1] * line.outward[1]) * at[2]);
  }
  return { holding, lifting };
}

/** Holding over lifting; 1 is the point of going over, without bound when nothing lifts. */
export function margin(line: TippingLine, loads: readonly Load[]): number {
  const { holding, lifting } = momentsAbout(line, loads);
  return lifting > 0 ? holding / lifting : Number.POSITIVE_INFINITY;
}

/** How far, in radians, a free body can be tilted over a line before its centre of gravity stands above it. */
export function tiltToGoOver(line: TippingLine, centre: Vec3): number {
  return Math.atan2(insideBy(line, [centre[0], centre[1]]), centre[2]);
}

function wayOf(outward: Spot): Way {
  if (Math.abs(outward[1]) >= Math.abs(outward[0])) return outward[1] > 0 ? "back" : "front";
  return outward[0] > 0 ? "left" : "right";
}

function turn(a: Spot, b: Spot, c: Spot): number {
  return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
}
