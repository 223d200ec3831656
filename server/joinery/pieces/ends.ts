/**
 * The ends of a stick: where each arris is cut, the bevels to set, and the tenon beyond.
 */
import type { Joint } from "../../chair/chair.ts";
import { height, planeAt, threePlanes } from "../../geometry/plane.ts";
import type { Plane, Vec3 } from "../../geometry/solid.ts";
import { angleBetween, cross, dot, negate, squareTo, sub, unit } from "../../geometry/vec.ts";
import type { LaidStick } from "./lay.ts";
import type { CutEnd, Mark, Panel } from "./piece.ts";
import { measured, type Run, runAt } from "./runs.ts";
import { gaugeOf, rolled, type SquaredStick } from "./squared.ts";
import { place } from "./strip.ts";
import { tenonOf } from "./tenon.ts";

export interface EndSite {
  name: string;
  /** 0 the first end of the stick, 1 the last. */
  which: 0 | 1;
  /** The plane it is cut to. */
  cut: Plane;
  /** The arrises there, that between each face and the next in order, when they are known better than by the planes. */
  corners?: Vec3[];
  /** The way each arris runs there, along the stick, in the same order; of a curve the tangent. */
  arrises?: Vec3[];
  /** How far a point lies inside a face, where that is known better than by the faces' planes. */
  inside?: (face: number, at: Vec3) => number;
  joint?: Joint;
  hollowed?: CutEnd["hollowed"];
}

/** One end of a squared stick as it is cut. */
export function cutEnd(stick: SquaredStick, runs: readonly Run[], site: EndSite): CutEnd {
  const at = site.which === 0 ? 0 : stick.stretches.length - 1;
  const stretch = stick.stretches[at]!;
  const run = runAt(runs, at);
  const inward = site.which === 0 ? stretch.direction : negate(stretch.direction);
  const corners =
    site.corners ??
    [0, 1, 2, 3].map(
      (k) =>
        threePlanes(stretch.planes[k as 0], stretch.planes[((k + 1) % 4) as 0], site.cut) ?? stretch.start,
    );
  const arrises =
    site.arrises ??
    [0, 1, 2, 3].map((k) => {
      const run = unit(cross(stretch.planes[k as 0].normal, stretch.planes[((k + 1) % 4) as 0].normal));
      return dot(run, stretch.direction) < 0 ? negate(run) : run;
    });
  const bevels = [0, 1, 2, 3].map((face) => {
    const stock = gaugeOf(stick, face);
    // The arris shared with the gauged face, and the other one of this face.
    const [near, far] = stock === (face + 1) % 4 ? [face, (face + 3) % 4] : [(face + 3) % 4, face];
    const arris = arrises[near]!;
    return {
      face: stick.names[face as 0],
      from: stick.names[stock as 0],
      angle: angleBetween(site.which === 0 ? arris : negate(arris), sub(corners[far]!, corners[near]!)),
    };
  });
  return {
    name: site.name,
    ...(site.joint ? { enters: site.joint.entered.name } : {}),
    datum: run.datum.name,
    cuts: corners.map((corner, k) => ({
      arris: `${stick.names[k as 0]} ${stick.names[((k + 1) % 4) as 0]}`,
      at: measured(run, corner),
    })),
    bevels,
    ...(site.hollowed ? { hollowed: site.hollowed } : {}),
    ...tenonOf(site.joint, {
      names: stick.names,
      ways: rolled(unit(squareTo(stretch.planes[0].normal, stretch.direction)), stretch.direction),
      outward: negate(inward),
      inside: site.inside ?? ((face, at) => -height(stretch.planes[face as 0], at)),
    }),
  };
}

/** The tenon and haunch as they are seen beyond the shoulder on each face: the corners to be wrapped round, in no order. */
export function tenonMarks(
  stick: SquaredStick,
  laid: LaidStick,
  site: EndSite,
): { face: number; mark: Mark }[] {
  const { joint, which } = site;
  if (!joint) return [];
  const stretch = which === 0 ? 0 : stick.stretches.length - 1;
  const solids = [
    ...joint.tenon.map((solid) => ({ is: "tenon" as const, solid })),
    ...(joint.haunch ? [{ is: "haunch" as const, solid: joint.haunch }] : []),
  ];
  return laid.faces.flatMap((face, k) => {
    const at = laid.panelOf(k, stretch);
    const panel = face.panels[at] && levelled(face.panels[at]!, stick, k, site);
    if (!panel) return [];
    return solids.map(({ is, solid }) => ({
      face: k,
      mark: { is, spots: solid.points.map((p) => place(panel, p)), closed: true as const },
    }));
  });
}

/**
 * The face at its end as it is seen square to the stick's own side: an arched edge may slope there, and its tenon does not slope with it.
 * Where all of a face lies in one plane that is the panel itself.
 */
function levelled(panel: Panel, stick: SquaredStick, face: number, { which }: EndSite): Panel {
  const { planes, direction } = stick.stretches[which === 0 ? 0 : stick.stretches.length - 1]!;
  const beside = planes[((face + 1) % 4) as 0].normal;
  const normal = unit(squareTo(cross(beside, direction), direction));
  const out = dot(normal, panel.normal) < 0 ? negate(normal) : normal;
  if (dot(out, panel.normal) > 1 - 1e-9) return panel;
  return { ...panel, along: direction, normal: out, across: cross(out, direction) };
}

/** The datums squared round, as they lie on each face. */
export function datumMarks(
  stick: SquaredStick,
  laid: LaidStick,
  runs: readonly Run[],
): { face: number; mark: Mark }[] {
  return runs.flatMap(({ from, origin, direction, datum }) => {
    const { planes } = stick.stretches[from]!;
    const square = planeAt(origin, direction);
    return laid.faces.flatMap((face, k) => {
      const at = laid.panelOf(k, from);
      const panel = face.panels[at];
      const spots = [1, 3].flatMap((turn) => {
        const p = threePlanes(planes[k as 0], planes[((k + turn) % 4) as 0], square);
        return p && panel ? [place(panel, p)] : [];
      });
      if (spots.length < 2) return [];
      return [{ face: k, mark: { is: "datum" as const, spots, panels: [at, at], letter: datum.name } }];
    });
  });
}
