/** A point of a seat's plan: out from its middle line, and behind its front edge. */
export type Spot = readonly [number, number];

/**
 * The front or the back edge of a seat in plan, symmetrical about the middle line: a straight, or the arc of a circle through both corners
 * and the middle. It looks to the front (`way` −1) or to the back (+1).
 */
export interface EndEdge {
  way: 1 | -1;
  /** Where it crosses the middle line. */
  middle: number;
  /** Radius of its arc; undefined when it is straight. */
  radius?: number;
  /** Half of its width, corner to corner. */
  half: number;
}

/** Through corners half a width out that lie `rise` inside the middle. */
export function edgeThrough(way: 1 | -1, middle: number, half: number, rise: number): EndEdge {
  const edge: EndEdge = { way, middle, half };
  if (rise > FLAT) edge.radius = (half * half + rise * rise) / (2 * rise);
  return edge;
}

/** An edge that rises by less than this is straight, mm. */
const FLAT = 1e-6;

/** The middle of its circle, on the middle line. */
export const centreOf = ({ way, middle, radius = 0 }: EndEdge): number => middle - way * radius;

/** How far inside the edge a point is, mm. */
export function insideEdge(edge: EndEdge, [x, y]: Spot): number {
  if (edge.radius === undefined) return edge.way * (edge.middle - y);
  return edge.radius - Math.hypot(x, y - centreOf(edge));
}

/** The point of the edge that is this far out. */
export function onEdge(edge: EndEdge, x: number): Spot {
  if (edge.radius === undefined) return [x, edge.middle];
  const rise = edge.radius - Math.sqrt(Math.max(0, edge.radius ** 2 - x * x));
  return [x, edge.middle - edge.way * rise];
}

/** The point of the edge nearest to a point inside it. */
export function nearestOnEdge(edge: EndEdge, [x, y]: Spot): Spot {
  if (edge.radius === undefined) return [x, edge.middle];
  const centre = centreOf(edge);
  const away = Math.hypot(x, y - centre);
  return [(x * edge.radius) / away, centre + ((y - centre) * edge.radius) / away];
}
