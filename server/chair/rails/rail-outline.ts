import type { Vec3 } from "../../geometry/solid.ts";
import { along } from "../../geometry/vec.ts";
import type { Rail } from "../chair.ts";
import type { RailShape } from "./rail-shape.ts";

/** The outline of a built rail or slat in its own measure; throws for one that `keepShape` does not know. */
export function shapeOf(rail: Rail): RailShape {
  if (!rail.shape) throw new Error(`${rail.name} was not built here`);
  return rail.shape;
}

/** Keeps the outline a rail was built with on the rail: a weak map beside it would hold every chair through many collections. */
export function keepShape(rail: Rail, shape: RailShape): Rail {
  rail.shape = shape;
  return rail;
}

/** A point of a rail in its own measure: along it, outward, up its width. */
export const spotOn = (rail: Rail, x: number, y: number, z: number): Vec3 =>
  along(along(along(rail.start, rail.along, x), rail.outward, y), rail.upward, z);

/** The four corners of a rail's section halfway along it, as drawn. */
export function middleSection(rail: Rail): Vec3[] {
  const shape = shapeOf(rail);
  const x = rail.length / 2;
  return [shape.outside(x), shape.inside(x)].flatMap((y) => [
    spotOn(rail, x, y, shape.top(x)),
    spotOn(rail, x, y, shape.bottom(x)),
  ]);
}
