import type { Convex, Plane, Vec3 } from "../../geometry/solid.ts";
import type { Entered } from "../chair.ts";
import type { Wood } from "./wood.ts";

/** A member as another's end meets it: all that its shoulder and its joint ask of it, whatever its kind. */
export interface Host {
  entered: Entered;
  /** Point on its centre line at a plumb height; of a rail, at the station it is met. */
  centre: (z: number) => Vec3;
  /** Height of the middle of a rail's section where it is met. */
  middleHeight?: number;
  /** The way its centre line leans between two plumb heights, upward. */
  chord: (top: number, bottom: number) => Vec3;
  /** Outward plane of the face that looks most along `look`, other than `but`, as it is around a point. */
  face: (look: Vec3, around: Vec3, but?: Plane) => Plane;
  /** What is wrong with a shoulder whose corners are these, in the plane of the face entered. */
  check: (corners: readonly Vec3[], shoulder: Plane) => ShoulderCheck;
  /** How far a turned member's surface falls back behind its tangent plane over half a width either side; 0 for flat faces. */
  fallBack: (half: number, around: Vec3) => number;
  /** Its own wood, as solids, and as a joint near a point sees it. */
  pieces: readonly Convex[];
  wood: (near: Vec3) => Wood;
}

export interface ShoulderCheck {
  /** How far the shoulder's rectangle runs off the face, mm; 0 or less when it does not. */
  off: number;
  /** How far it is from the member altogether along the member, mm. */
  gap?: number;
  /** The face is not flat there: a fair curve between these heights. */
  curve?: { from: number; to: number };
  /** The face turns at a sharp knee at this height. */
  knee?: { height: number; turn: number };
}

/** How far a circle falls back behind its tangent over half a width. */
export const fallBackOf = (radius: number, half: number): number =>
  radius - Math.sqrt(Math.max(0, radius * radius - half * half));
