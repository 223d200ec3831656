/**
 * What a seat rests on along a rail: wood taken from it, and strips fixed to it.
 */
import type { Given, RestDesign } from "../../design/design.ts";
import type { Convex, Plane } from "../../geometry/solid.ts";

/** A section in a rail's own measure: outward, and up its width; mm, each from low to high. */
export interface Box {
  out: readonly [number, number];
  up: readonly [number, number];
}

export interface RailCut {
  design: Given<Exclude<RestDesign, { is: "strip" }>>;
  /** What it takes away at a place along the rail; beyond the wood where it is open. */
  section: (x: number) => Box;
  /** Between which places along the rail; absent from shoulder to shoulder. */
  reach?: readonly [number, number];
}

export interface RailStrip {
  design: Given<Extract<RestDesign, { is: "strip" }>>;
  section: (x: number) => Box;
  pieces: Convex[];
  /** The planes that end it, each looking along the rail into it. */
  ends: [Plane, Plane];
  /** Where it was cut shorter than the rail because another strip lies there: the rail of that one. */
  butts: [string | undefined, string | undefined];
}
