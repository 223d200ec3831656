/**
 * A frame of straight beams and springs in space, as the solver takes it. mm, N, rad; six numbers a node: three along x, y, z, three about
 * them. x to the sitter's left, y back, z up.
 */
import type { Vec3 } from "../../geometry/solid.ts";

export interface FrameNode {
  id: string;
  at: Vec3;
}

/** A straight beam between two nodes, bending, twisting and shearing. */
export interface Beam {
  id: string;
  /** The part it is a piece of; of a link between a centre line and a shoulder, the part whose wood it goes through. */
  part: string;
  /** Indices of its nodes. */
  from: number;
  to: number;
  /** Unit, square to the beam: its own y. Its x runs from the first node to the second, its z is x × y. */
  yAxis: Vec3;
  /** MPa. */
  E: number;
  G: number;
  /** mm²; Ay and Az carry shear along its y and z. */
  A: number;
  Ay: number;
  Az: number;
  /** mm⁴: about its y and z, and in torsion. */
  Iy: number;
  Iz: number;
  J: number;
}

/** A spring between two nodes at one place: along and about three axes. */
export interface Spring {
  id: string;
  /** The joint it stands for. */
  joint: string;
  from: number;
  to: number;
  /** Unit, square to each other. */
  axes: readonly [Vec3, Vec3, Vec3];
  /** N/mm along the axes, N·mm/rad about them. */
  k: readonly number[];
}

/** A node held: along x, y, z and about them. */
export interface Support {
  node: number;
  held: readonly boolean[];
  /** It can only push up: let go where it would have to pull. */
  pushes?: true;
  /** It is kept from sliding by friction alone, so much of what it pushes with; else whatever holds it level holds for good. */
  friction?: number;
}

export interface NodeLoad {
  node: number;
  /** N and N·mm. */
  v: readonly number[];
}

export interface Frame {
  nodes: readonly FrameNode[];
  beams: readonly Beam[];
  springs: readonly Spring[];
}

/** Length of a beam, and the unit directions of its own axes. */
export function axesOf(
  { nodes }: Pick<Frame, "nodes">,
  { from, to, yAxis }: Pick<Beam, "from" | "to" | "yAxis">,
): {
  length: number;
  axes: [Vec3, Vec3, Vec3];
} {
  const [a, b] = [nodes[from]?.at ?? [0, 0, 0], nodes[to]?.at ?? [0, 0, 0]];
  const run: Vec3 = [b[0] - a[0], b[1] - a[1], b[2] - a[2]];
  const length = Math.hypot(...run);
  const x: Vec3 = [run[0] / length, run[1] / length, run[2] / length];
  // Whatever of yAxis runs along the beam is taken off.
  const along = x[0] * yAxis[0] + x[1] * yAxis[1] + x[2] * yAxis[2];
  const square: Vec3 = [yAxis[0] - along * x[0], yAxis[1] - along * x[1], yAxis[2] - along * x[2]];
  const size = Math.hypot(...square);
  const y: Vec3 = [square[0] / size, square[1] / size, square[2] / size];
  const z: Vec3 = [x[1] * y[2] - x[2] * y[1], x[2] * y[0] - x[0] * y[2], x[0] * y[1] - x[1] * y[0]];
  return { length, axes: [x, y, z] };
}
