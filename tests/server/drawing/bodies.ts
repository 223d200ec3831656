/**
 * Bodies made by hand, and lines as seen told plainly.
 */
import { see } from "../../../server/drawing/hidden-lines.ts";
import { motionInto, sights } from "../../../server/drawing/sight.ts";
import { bodyOf, loft } from "../../../server/geometry/body.ts";
import { box, prism } from "../../../server/geometry/convex.ts";
import { STILL } from "../../../server/geometry/motion.ts";
import type { Body, Vec3 } from "../../../server/geometry/solid.ts";

export const boxBody = (low: Vec3, high: Vec3): Body => bodyOf([box(low, high)]);

/** An upright round post of so many flats, a corner of it at the front and one at each side when the count divides by four. */
export function roundPost(radius: number, height: number, flats: number): Body {
  const ring = (z: number): Vec3[] =>
    Array.from({ length: flats }, (_, k) => {
      const bearing = (2 * Math.PI * k) / flats;
      return [radius * Math.cos(bearing), radius * Math.sin(bearing), z];
    });
  return loft([prism(ring(0), ring(height))], [[ring(0), ring(height)]], { round: true });
}

/** A rail along x from −half to half, its lower edge hollowed by `rise` in the middle, in so many straight pieces. */
export function archedRail(half: number, thick: number, wide: number, rise: number, count: number): Body {
  const under = (x: number) => rise * (1 - (x / half) ** 2);
  const pieces = Array.from({ length: count }, (_, k) => {
    const [from, to] = [-half + (2 * half * k) / count, -half + (2 * half * (k + 1)) / count];
    const ring = (x: number): Vec3[] => [
      [x, 0, under(x)],
      [x, thick, under(x)],
      [x, thick, wide],
      [x, 0, wide],
    ];
    return prism(ring(from), ring(to));
  });
  return bodyOf(pieces, 0.3);
}

/** A rail along x bowed to the back by `rise`. */
export function bowedRail(half: number, thick: number, wide: number, rise: number, count: number): Body {
  const back = (x: number) => rise * (1 - (x / half) ** 2);
  const pieces = Array.from({ length: count }, (_, k) => {
    const [from, to] = [-half + (2 * half * k) / count, -half + (2 * half * (k + 1)) / count];
    const ring = (x: number): Vec3[] => [
      [x, back(x), 0],
      [x, back(x) + thick, 0],
      [x, back(x) + thick, wide],
      [x, back(x), wide],
    ];
    return prism(ring(from), ring(to));
  });
  return bodyOf(pieces, 0.3);
}

/** Every line of one body that is seen, as `outline 50,100 150,100`, ends and lines in order. */
export function seen(bodies: Body[], view: keyof typeof sights, which: number): string[] {
  const spot = ([x, y]: readonly [number, number]) => `${round(x)},${round(y)}`;
  return see(bodies, motionInto(sights[view], STILL))
    .lines.filter(({ body }) => body === which)
    .map(({ is, a, b }) => {
      const [from, to] =
        a[0] < b[0] - 1e-9 || (Math.abs(a[0] - b[0]) <= 1e-9 && a[1] < b[1]) ? [a, b] : [b, a];
      return `${is} ${spot(from)} ${spot(to)}`;
    })
    .sort();
}

const round = (value: number): number => Math.round(value * 10) / 10 + 0;
