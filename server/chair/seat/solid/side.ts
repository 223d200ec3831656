import type { SeatWidth } from "../../../design/solid-seat-design.ts";
import { type Curve, splineThrough } from "./spline.ts";

/**
 * Half a seat's width by the distance behind its front edge: a spline through the stations between which no straight is asked for, and the
 * straights; a spline leaves a straight along it. Stations grow from the first to the last, two at least.
 */
export function sideThrough(widths: readonly SeatWidth[]): Curve {
  const knots = widths.map(({ at, wide }) => ({ x: at, y: wide / 2 }));
  const straightInto = (k: number) => widths[k]?.straight === true;
  const slopeInto = (k: number) => (knots[k]!.y - knots[k - 1]!.y) / (knots[k]!.x - knots[k - 1]!.x);
  const runs: { to: number; curve: Curve }[] = [];
  let from = 0;
  while (from < knots.length - 1) {
    let to = from + 1;
    if (straightInto(to)) {
      runs.push({ to: knots[to]!.x, curve: splineThrough(knots.slice(from, to + 1)) });
    } else {
      while (to + 1 < knots.length && !straightInto(to + 1)) to++;
      const ends = {
        ...(from > 0 && { first: slopeInto(from) }),
        ...(to + 1 < knots.length && { last: slopeInto(to + 1) }),
      };
      runs.push({ to: knots[to]!.x, curve: splineThrough(knots.slice(from, to + 1), ends) });
    }
    from = to;
  }
  const curveAt = (x: number): Curve => (runs.find(({ to }) => x <= to) ?? runs[runs.length - 1]!).curve;
  return { at: (x) => curveAt(x).at(x), slope: (x) => curveAt(x).slope(x) };
}
