/**
 * The feet of a chair under a load case: they push on the floor, and stops keep some of them from sliding.
 */
import type { Vec3 } from "../geometry/solid.ts";
import type { Support } from "./frame/frame.ts";
import data from "./loads.json" with { type: "json" };
import type { ChairFrame } from "./model.ts";

export type Stops = "front" | "back" | "left" | "right";

/** Feet push on the floor. Those on the stopped sides are kept from sliding; where none is stopped, friction keeps all of them as far as it goes. */
export function supportsOf(frame: ChairFrame, stops: readonly Stops[]): Support[] {
  const feet = [...frame.feet.values()].map((node) => ({ node, at: frame.nodes[node]?.at ?? [0, 0, 0] }));
  const middle = (k: 0 | 1) => feet.reduce((sum, { at }) => sum + (at[k] ?? 0), 0) / feet.length;
  const [mx, my] = [middle(0), middle(1)];
  const stopped = ({ at }: { at: Vec3 }) =>
    stops.length === 0 ||
    stops.some((side) =>
      side === "front"
        ? at[1] < my
        : side === "back"
          ? at[1] > my
          : side === "left"
            ? at[0] > mx
            : at[0] < mx,
    );
  const friction = stops.length === 0 ? { friction: data.floor.friction } : {};
  // One foot alone would let the chair turn about it: then all are kept from sliding.
  const all = feet.filter(stopped).length < 2;
  return feet.map((foot) => {
    const held = all || stopped(foot);
    return { node: foot.node, held: [held, held, true, false, false, false], pushes: true, ...friction };
  });
}
