/**
 * A board seat in the frame: it is screwed to its rails near both their ends, and so ties them to each other. It slips a little at every
 * screw, more across its grain, where the screws have room to let it move.
 */
import type { SeatSurface } from "../chair/chair.ts";
import { moveDirection } from "../geometry/motion.ts";
import type { Vec3 } from "../geometry/solid.ts";
import { cross, squareTo, unit } from "../geometry/vec.ts";
import type { Beam, FrameNode, Spring } from "./frame/frame.ts";
import { seatArms } from "./seat-arms.ts";
import data from "./wood.json" with { type: "json" };

/** Where along a rail the screws are. */
const SCREWED = [0.25, 0.75];

/**
 * Nodes, beams and springs of a board seat; nothing where fewer than two rails carry it.
 *
 * @param along nodes along each part, as the chair stands
 */
export function boardSeat(
  seat: SeatSurface,
  { nodes, along }: { nodes: readonly FrameNode[]; along: ReadonlyMap<string, readonly number[]> },
  stance: Parameters<typeof moveDirection>[0],
): { nodes: FrameNode[]; beams: Beam[]; springs: Spring[] } | undefined {
  if (seat.design.kind !== "board" || !seat.design.thick) return undefined;
  const rails = [...along].filter(([name]) =>
    seat.design.on.some(({ value }) => name === value.name || name.startsWith(`${value.name}.`)),
  );
  if (rails.length < 2) return undefined;
  const held = rails.flatMap(([name, own]) =>
    SCREWED.map((share) => ({ name, node: own[Math.round(share * (own.length - 1))] as number })),
  );
  const first = nodes.length;
  const arms = seatArms(
    seat,
    held.map(({ node }) => nodes[node]!.at),
    first,
  );
  const up = moveDirection(stance, seat.plane.normal);
  const grain = unit(squareTo(moveDirection(stance, seat.grain), up));
  const axes: [Vec3, Vec3, Vec3] = [grain, cross(up, grain), up];
  const { slip, slotted } = data.boardSeat;
  const springs = held.map(
    ({ name, node }, k): Spring => ({
      id: `${seat.name} on ${name} ${k % SCREWED.length}`,
      joint: `${seat.name} on ${name}`,
      from: node,
      to: first + 1 + k,
      axes,
      k: [slip, slip * slotted, slip, 0, 0, 0],
    }),
  );
  return { ...arms, springs };
}
