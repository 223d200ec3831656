/**
 * A seat of wood in the frame: stiff arms from its middle to where it is held. It is not judged itself. A solid seat holds the legs and takes
 * the load; a board that is screwed to its rails ties them to each other.
 */
import type { SeatSurface } from "../chair/chair.ts";
import type { Vec3 } from "../geometry/solid.ts";
import { add, scale, squareTo, sub, unit } from "../geometry/vec.ts";
import { strengthsOf } from "../timber/strengths.ts";
import type { Beam, FrameNode } from "./frame/frame.ts";
import data from "./wood.json" with { type: "json" };

interface SeatArms {
  /** The middle first, then where each arm ends. */
  nodes: FrameNode[];
  beams: Beam[];
}

/** The arms of a seat to these places, as the chair stands; `first` is the index that its first node will have. */
export function seatArms(seat: SeatSurface, places: readonly Vec3[], first: number): SeatArms {
  const middle = scale(places.reduce<Vec3>(add, [0, 0, 0]), 1 / Math.max(1, places.length));
  const nodes = [middle, ...places].map((at, k): FrameNode => ({ id: `${seat.name}#${k}`, at }));
  const thick = seat.design.thick?.value ?? 0;
  const [a, b] = [thick, data.seat.armWidth * thick];
  const stiffness = strengthsOf(seat.timber?.species ?? "")?.stiffness ?? data.stiffness.unknown;
  const E = stiffness * 1000 * data.seat.stiffer;
  const beams = places.map((_, k): Beam => {
    const run = unit(sub(nodes[k + 1]!.at, nodes[0]!.at));
    const across = Math.abs(run[2]) < 0.8 ? ([0, 0, 1] as Vec3) : ([1, 0, 0] as Vec3);
    return {
      id: `${seat.name}:arm${k + 1}`,
      part: seat.name,
      from: first,
      to: first + k + 1,
      yAxis: unit(squareTo(across, run)),
      E,
      G: E * data.stiffness.shearRatio,
      A: a * b,
      Ay: a * b * data.stiffness.shearArea,
      Az: a * b * data.stiffness.shearArea,
      Iy: (a * b ** 3) / 12,
      Iz: (b * a ** 3) / 12,
      J: (b * a ** 3) / 3,
    };
  });
  return { nodes, beams };
}
