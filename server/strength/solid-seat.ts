/**
 * A solid seat in the frame: stiff arms from its middle to each socket. It is not judged itself; it holds the legs and takes the load.
 */
import type { Joint, SeatSurface } from "../chair/chair.ts";
import type { Vec3 } from "../geometry/solid.ts";
import { add, scale, squareTo, sub, unit } from "../geometry/vec.ts";
import { strengthsOf } from "../timber/strengths.ts";
import type { Beam, FrameNode } from "./frame/frame.ts";
import data from "./wood.json" with { type: "json" };

export interface SeatArms {
  /** The middle, then each socket's mouth, as drawn. */
  places: Vec3[];
  nodes: FrameNode[];
  beams: Beam[];
}

/** The arms of a solid seat; `first` is the index that its first node will have, `standing` carries a point to the chair as it stands. */
export function seatArms(
  seat: SeatSurface,
  joints: readonly Joint[],
  first: number,
  standing: (point: Vec3) => Vec3,
): SeatArms {
  const sockets = joints.filter(({ entered }) => entered.name === seat.name);
  const middle = scale(
    sockets.map(({ root }) => root).reduce<Vec3>(add, [0, 0, 0]),
    1 / Math.max(1, sockets.length),
  );
  const places = [middle, ...sockets.map(({ root }) => root)];
  const nodes = places.map((at, k): FrameNode => ({ id: `${seat.name}#${k}`, at: standing(at) }));
  const thick = seat.design.thick?.value ?? 0;
  const [a, b] = [thick, data.solidSeat.armWidth * thick];
  const stiffness = strengthsOf(seat.timber?.species ?? "")?.stiffness ?? data.stiffness.unknown;
  const E = stiffness * 1000 * data.solidSeat.stiffer;
  const beams = sockets.map((_, k): Beam => {
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
  return { places, nodes, beams };
}
