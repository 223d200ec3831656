import { sentence } from "../../../grammar/sentences/sentence.ts";
import type { Vec3 } from "../../geometry/solid.ts";
import { distance } from "../../geometry/vec.ts";
import type { Side } from "../chair.ts";
import type { Fault } from "../fault.ts";
import { NO_RISE } from "./arc.ts";
import type { RailFrame } from "./rail-frame.ts";
import type { RailMember } from "./rail-member.ts";

export interface RailCurves {
  /** Positive outward. */
  bow?: number;
  arch?: { below?: number; above?: number };
}

/** The curves a rail was given that a circle can have; the others are told and left out. */
export function curvesOf(member: RailMember, frame: RailFrame, wide: number, faults: Fault[]): RailCurves {
  const { design, name, side } = member;
  const curves: RailCurves = {};
  const length = distance(frame.start, frame.end);
  const bow = design.bow;
  if (bow && Math.abs(bow.value.rise) > NO_RISE) {
    const rise = bow.value.rise * bowSign(bow.value.towards, side, frame.outward);
    if (Math.abs(rise) > length / 2) {
      faults.push({
        is: "no-room",
        part: name,
        at: bow.at,
        message: sentence("fault.bow"),
      });
    } else curves.bow = rise;
  }
  const arch: NonNullable<RailCurves["arch"]> = {};
  for (const { value, at } of design.arches) {
    if (value.rise <= NO_RISE) continue;
    const message =
      value.edge === "below" && value.rise >= wide
        ? sentence("fault.arch-deep")
        : value.rise > length / 2
          ? sentence("fault.arch-rise")
          : undefined;
    if (message) faults.push({ is: "no-room", part: name, at, message });
    else arch[value.edge] = value.rise;
  }
  if (arch.above !== undefined || arch.below !== undefined) curves.arch = arch;
  return curves;
}

/** +1 when a bow that way goes outward of the outside face, −1 when inward. */
export function bowSign(towards: "back" | "front" | "out" | "in", side: Side, outward: Vec3): 1 | -1 {
  if (towards === "out" || towards === "in") {
    const away = side === "middle" || outward[0] * (side === "left" ? 1 : -1) >= 0;
    return away === (towards === "out") ? 1 : -1;
  }
  return outward[1] * (towards === "back" ? 1 : -1) >= 0 ? 1 : -1;
}
