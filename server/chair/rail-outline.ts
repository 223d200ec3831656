import type { Rail } from "./chair.ts";
import type { RailShape } from "./rail-shape.ts";

const kept = new WeakMap<Rail, RailShape>();

/** The outline of a built rail or slat in its own measure; throws for one that `keepShape` was not told of. */
export function shapeOf(rail: Rail): RailShape {
  const shape = kept.get(rail);
  if (!shape) throw new Error(`${rail.name} was not built here`);
  return shape;
}

/** Remembers the outline a rail was built with. */
export function keepShape(rail: Rail, shape: RailShape): Rail {
  kept.set(rail, shape);
  return rail;
}
