import { beyond, hull, type Solid } from "./manifold.ts";
import { direction, inner, outer, plus, times, type V } from "./vectors.ts";

/** What a socket right through a slab is: a cone or a cylinder about a line, between the slab's two faces. */
export interface OwnSocket {
  /** Where the line meets the face that the socket begins in, and the way it goes into the wood. */
  at: V;
  run: V;
  /** Square to the face, into the wood, and how thick that is. */
  into: V;
  thick: number;
  /** Its diameters where the line meets the two faces. */
  first: number;
  last: number;
}

const FLATS = 96;

/** A figure of 96 corners on its circles. */
export function ownSocket({ at, run, into, thick, first, last }: OwnSocket): Solid {
  const long = thick / inner(run, into);
  const u = direction(outer(run, [1, 0, 0]));
  const w = outer(run, u);
  const ring = (by: number) =>
    Array.from({ length: FLATS }, (_, k): V => {
      const r = (first + (last - first) * (by / long)) / 2;
      const a = (2 * Math.PI * k) / FLATS;
      return plus(plus(plus(at, run, by), u, r * Math.cos(a)), w, r * Math.sin(a));
    });
  const whole = hull([...ring(-30), ...ring(long + 30)]);
  return beyond(beyond(whole, at, into), plus(at, into, thick), times(into, -1));
}
