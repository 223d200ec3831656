/**
 * Whether a back meets the small of the back.
 */

import type { Chair } from "../chair/chair.ts";
import { backMembers } from "../chair/values/backrest.ts";
import seats from "./seats.json" with { type: "json" };

/** How a back lies to the small of the back, mm above the seat with a sitter on it. */
interface LumbarSupport {
  /** Where support is needed. */
  from: number;
  to: number;
  /** The nearest that the back comes: the top of what lies under, the bottom of what lies over; both absent where it meets them. */
  under?: number;
  over?: number;
  meets: boolean;
}

/** How the back of a chair lies to the small of the back of a grown sitter; nothing without a back. */
export function loinsOf(chair: Chair): LumbarSupport | undefined {
  const sag = chair.seat?.design.sag?.value ?? 0;
  const members = backMembers(chair).map(({ from, to }) => ({ from: from + sag, to: to + sag }));
  if (members.length === 0) return undefined;
  const from = seats.lumbar.value - seats.lumbar.reach;
  const to = seats.lumbar.value + seats.lumbar.reach;
  if (members.some((member) => member.from <= to && member.to >= from)) return { from, to, meets: true };
  const under = members.filter((member) => member.to < from).map((member) => member.to);
  const over = members.filter((member) => member.from > to).map((member) => member.from);
  return {
    from,
    to,
    meets: false,
    ...(under.length > 0 && { under: Math.max(...under) }),
    ...(over.length > 0 && { over: Math.min(...over) }),
  };
}
