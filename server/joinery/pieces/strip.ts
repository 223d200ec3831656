import type { Plane, Vec3 } from "../../geometry/solid.ts";
import { along, cross, dot, squareTo, sub, unit } from "../../geometry/vec.ts";
import type { LaidFace, Panel, Spot } from "./piece.ts";

/** A flat stretch of a face before it is laid: its plane, the stick's direction there, and the edge it shares with the next stretch. */
export interface Stretch {
  plane: Plane;
  direction: Vec3;
  /** A point of the stretch, on its plane. */
  origin: Vec3;
  /** Both ends of the edge shared with the next; the last has none. */
  hinge?: readonly [Vec3, Vec3];
}

/** Lays stretches out one after another, each hinged on the edge it shares with the one before; `level` is laid along the page. */
export function layStrip(stretches: readonly Stretch[], level: number, at: Spot): Panel[] {
  const panels = stretches.map(flatPanel);
  for (let k = 1; k < panels.length; k++) {
    const [a, b] = stretches[k - 1]!.hinge!;
    const before = panels[k - 1]!;
    const [p, q] = [place(before, a), place(before, b)];
    const here = panels[k]!;
    const [r, s] = [place(here, a), place(here, b)];
    here.turn = Math.atan2(q[1] - p[1], q[0] - p[0]) - Math.atan2(s[1] - r[1], s[0] - r[0]);
    const middle = place(here, midpoint(a, b));
    here.at = [(p[0] + q[0]) / 2 - middle[0], (p[1] + q[1]) / 2 - middle[1]];
  }
  const main = panels[level]!;
  const back = -main.turn;
  const from = main.at;
  return panels.map((panel) => {
    const [x, y] = turned([panel.at[0] - from[0], panel.at[1] - from[1]], back);
    return { ...panel, at: [at[0] + x, at[1] + y], turn: panel.turn + back };
  });
}

function flatPanel({ plane, direction, origin }: Stretch): Panel {
  const run = unit(squareTo(direction, plane.normal));
  return { origin, along: run, across: cross(plane.normal, run), normal: plane.normal, at: [0, 0], turn: 0 };
}

const midpoint = (a: Vec3, b: Vec3): Vec3 => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2, (a[2] + b[2]) / 2];

const turned = ([x, y]: Spot, angle: number): Spot => [
  x * Math.cos(angle) - y * Math.sin(angle),
  x * Math.sin(angle) + y * Math.cos(angle),
];

/** Where a point of the chair, dropped square onto the panel, lies on the laid-open face. */
export function place(panel: Panel, point: Vec3): Spot {
  const off = sub(point, panel.origin);
  const [x, y] = turned([dot(off, panel.along), dot(off, panel.across)], panel.turn);
  return [panel.at[0] + x, panel.at[1] + y];
}

/** A spot of the laid-open face folded back to its place in the chair. */
function fold(panel: Panel, spot: Spot): Vec3 {
  const [x, y] = turned([spot[0] - panel.at[0], spot[1] - panel.at[1]], -panel.turn);
  return along(along(panel.origin, panel.along, x), panel.across, y);
}

/** The spots of a face's mark folded back; undefined for a mark that does not lie on the face. */
export function folded(face: LaidFace, mark: { spots: readonly Spot[]; panels?: readonly number[] }) {
  const { panels } = mark;
  return panels && mark.spots.map((spot, k) => fold(face.panels[panels[k]!]!, spot));
}
