/**
 * Points, planes and solids. Knows no chair word and imports nothing. Right-handed; millimetres.
 */

export type Vec3 = readonly [number, number, number];

/** Points p with normal · p = offset; normal is unit and, for a solid, points out of it. */
export interface Plane {
  normal: Vec3;
  offset: number;
}

/** A convex solid: its planes, its corners, and each face as corner indices anticlockwise seen from outside, one a plane. */
export interface Convex {
  planes: Plane[];
  points: Vec3[];
  faces: number[][];
}

/**
 * A line of a body's surface. `arris` is a real edge and is always drawn where it can be seen. `smooth` lies between two
 * facets of a curved surface and is drawn only where it is the outline, which `normals` tells.
 */
export interface Edge {
  a: Vec3;
  b: Vec3;
  is: "arris" | "smooth";
  /** Outward normals of the two faces that meet here. */
  normals: [Vec3, Vec3];
}

/** A body made of convex pieces that touch, with the lines to draw; seams between pieces are in no edge. */
export interface Body {
  pieces: Convex[];
  edges: Edge[];
  /** Fewer pieces with the same outline from every side, where there are some: without a hollow that no side shows. */
  cover?: Convex[];
}

/** A rigid motion: p ↦ rotation · p + shift; rotation by rows. */
export interface Motion {
  rotation: readonly [Vec3, Vec3, Vec3];
  shift: Vec3;
}
