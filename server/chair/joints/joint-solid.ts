import { prism } from "../../geometry/convex.ts";
import { lineMeets, offsetBy } from "../../geometry/plane.ts";
import type { Convex, Plane, Vec3 } from "../../geometry/solid.ts";
import { along, dot } from "../../geometry/vec.ts";
import type { SectionBox } from "../chair.ts";
import { facetRadius, facetsOf } from "../facets.ts";

/** Where a tenon lies and which way it goes. */
export interface TenonFrame {
  /** Middle of the tenon at the shoulder. */
  root: Vec3;
  /** Unit, into the member entered. */
  direction: Vec3;
  /** Unit, square to it and to each other: out of the cheek at the part's outside, and up the tenon's width. */
  acrossThick: Vec3;
  acrossWide: Vec3;
  /** The face entered, looking out of the member entered. */
  shoulder: Plane;
}

/**
 * The prism of a tenon from the shoulder plane in. Its end is parallel to the face entered and `depth` mm behind it, so that the whole end
 * lies equally deep and a mortise of one depth fits, whatever the angle at which the tenon goes in; its volume is that of a tenon
 * ended square to itself at the same depth on its middle.
 * Undefined when the tenon runs along the face.
 */
export function tenonPrism(frame: TenonFrame, box: SectionBox, depth: number): Convex | undefined {
  return slopedPrism(frame, box, depth, depth);
}

/** The same with an end that rises from `low` at the lower edge of its width to `high` at the upper: a sloped haunch. */
export function slopedPrism(
  frame: TenonFrame,
  box: SectionBox,
  low: number,
  high: number,
): Convex | undefined {
  const [inner, outer] = box.thick;
  const [bottom, top] = box.wide;
  const corners: [number, number, number][] = [
    [outer, bottom, low],
    [outer, top, high],
    [inner, top, high],
    [inner, bottom, low],
  ];
  return between(
    frame,
    corners.map(([t, w]) => along(along(frame.root, frame.acrossThick, t), frame.acrossWide, w)),
    corners.map(([, , depth]) => depth),
  );
}

/**
 * A turned tenon as a prism of flats with the circle's area; one that tapers is a cone's stretch about the same axis, as thick as it says
 * where that axis meets the shoulder and the end.
 */
export function roundTenon(
  frame: TenonFrame,
  { thick, wide, tip = 1 }: SectionBox,
  depth: number,
): Convex | undefined {
  const diameter = thick[1] - thick[0];
  const off = { thick: (thick[0] + thick[1]) / 2, wide: (wide[0] + wide[1]) / 2 };
  const facets = facetsOf(diameter / 2);
  const r = facetRadius(diameter / 2, facets);
  const ring = Array.from({ length: facets }, (_, k) => {
    const angle = (2 * Math.PI * k) / facets;
    return along(
      along(frame.root, frame.acrossThick, off.thick + r * Math.cos(angle)),
      frame.acrossWide,
      off.wide + r * Math.sin(angle),
    );
  });
  const run = depth / Math.abs(dot(frame.direction, frame.shoulder.normal));
  const ways = ring.map((_, k) => {
    const angle = (2 * Math.PI * k) / facets;
    const inward = (-r * (1 - tip)) / run;
    const leant = along(frame.direction, frame.acrossThick, inward * Math.cos(angle));
    return along(leant, frame.acrossWide, inward * Math.sin(angle));
  });
  return between(
    frame,
    ring,
    ring.map(() => depth),
    ways,
  );
}

/** From the shoulder to each corner's own depth, along the tenon unless a corner has a way of its own. */
function between(frame: TenonFrame, ring: Vec3[], depths: number[], ways?: Vec3[]): Convex | undefined {
  const start: Vec3[] = [];
  const end: Vec3[] = [];
  for (const [k, point] of ring.entries()) {
    const way = ways?.[k] ?? frame.direction;
    const a = lineMeets(frame.shoulder, point, way);
    const b = lineMeets(offsetBy(frame.shoulder, -depths[k]!), point, way);
    if (!a || !b) return undefined;
    start.push(a);
    end.push(b);
  }
  return prism(start, end);
}
