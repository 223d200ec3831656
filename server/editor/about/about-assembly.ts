/**
 * In which glue-up a part or a joint comes together.
 */
import type { Chair } from "../../chair/chair.ts";
import { kept } from "../../chair/kept.ts";
import { framesOf, type Order } from "../../joinery/frames.ts";

/** The order of assembly; nothing when working it out throws, which `cannot-be-assembled` reports. The rest of a hover stands. */
function orderOf(chair: Chair): Order | undefined {
  try {
    return framesOf(chair);
  } catch {
    return undefined;
  }
}

const FAILED = "Nothing is known of the order of assembly because of an internal error";

/** The glue-up that closes a joint, or that none does. */
export function closesIn(chair: Chair, joint: string): string | undefined {
  const order = kept(chair, orderOf);
  if (!order) return FAILED;
  const { frames, locked } = order;
  const at = frames.findIndex(({ closes }) => closes.includes(joint));
  const frame = frames[at];
  if (frame) return `Closes in glue-up ${at + 1} of ${frames.length}, ${frame.called}, ${frame.way}`;
  return locked.some(({ joints }) => joints.some(({ name }) => name === joint))
    ? "No order of assembly closes it (`cannot-be-assembled`)"
    : undefined;
}

/** The glue-ups a part goes through. */
export function goesInto(chair: Chair, part: string): string | undefined {
  const order = kept(chair, orderOf);
  if (!order) return FAILED;
  const found = order.frames.flatMap(({ parts, called }, k) =>
    parts.includes(part) ? [`${k + 1}, ${called}`] : [],
  );
  return found.length > 0 ? `Glued up in ${found.join("; then ")}` : undefined;
}
