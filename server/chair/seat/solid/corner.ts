import { type EndEdge, insideEdge, nearestOnEdge, type Spot } from "./edge.ts";
import type { Curve } from "./spline.ts";

/** A corner rounded by an arc that touches both edges from inside. */
export interface Corner {
  centre: Spot;
  radius: number;
  /** Where it touches the front or back edge, and the side. */
  onEdge: Spot;
  onSide: Spot;
}

/** Steps in which a side is searched for the place that a corner touches. */
const STEPS = 64;
const HALVINGS = 60;

/**
 * The arc of that radius in the corner of an end edge and a side that runs from `from` (at the corner) to `to`; undefined when the two
 * cannot hold it. A radius of 0 gives the corner itself.
 */
export function cornerBetween(
  edge: EndEdge,
  side: Curve,
  from: number,
  to: number,
  radius: number,
): Corner | undefined {
  const corner: Spot = [side.at(from), from];
  if (radius <= 0) return { centre: corner, radius: 0, onEdge: corner, onSide: corner };
  const centreFrom = (s: number): Spot => {
    const slope = side.slope(s);
    const size = Math.hypot(1, slope);
    return [side.at(s) - radius / size, s + (radius * slope) / size];
  };
  // Less than 0 while the circle that touches the side there still reaches past the edge.
  const clear = (s: number) => insideEdge(edge, centreFrom(s)) - radius;
  if (clear(from) >= 0) return undefined;
  // Near together by the corner: where side and edge are nearly in line, the circle is clear over some mm alone.
  const stations = Array.from({ length: STEPS }, (_, k) => from + (to - from) * ((k + 1) / STEPS) ** 2);
  const first = stations.findIndex((s) => clear(s) >= 0);
  if (first < 0) return undefined;
  let [low, high] = [stations[first - 1] ?? from, stations[first]!];
  for (let k = 0; k < HALVINGS; k++) {
    const s = (low + high) / 2;
    if (clear(s) >= 0) high = s;
    else low = s;
  }
  const centre = centreFrom(high);
  const onEdge = nearestOnEdge(edge, centre);
  if (!(centre[0] >= 0 && onEdge[0] >= 0 && onEdge[0] <= corner[0] + 1e-6)) return undefined;
  return { centre, radius, onEdge, onSide: [side.at(high), high] };
}
