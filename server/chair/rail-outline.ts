import type { Rail } from "./chair.ts";
import type { RailShape } from "./rail-shape.ts";

/** The outline of a built rail or slat in its own measure; throws for one that `keepShape` was not told of. */
export function shapeOf(rail: Rail): RailShape {
  if (!rail.shape) throw new Error(`${rail.name} was not built here`);
  return rail.shape;
}

/** Keeps the outline a rail was built with on the rail: a weak map beside it would hold every chair through many collections. */
export function keepShape(rail: Rail, shape: RailShape): Rail {
  rail.shape = shape;
  return rail;
}
