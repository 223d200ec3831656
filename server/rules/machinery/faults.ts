/**
 * What building the chair found wrong, with its place in the text.
 */

import type { Chair } from "../../chair/chair.ts";
import type { Fault } from "../../chair/fault.ts";
import { railNamed } from "../../chair/member.ts";
import { partName, SEAT } from "../../design/identity.ts";
import { type Candidate, candidateOf, designOf, type Place, placeOf } from "./place.ts";

type Kind = Fault["is"];
type Of<K extends Kind> = Extract<Fault, { is: K }>;

/** All faults of one kind, each with the place it is told on. */
export function faultsOf<K extends Kind>(chair: Chair, kind: K): { fault: Of<K>; place: Place }[] {
  return chair.faults.flatMap((fault) => {
    if (fault.is !== kind) return [];
    const part =
      designOf(chair, fault.part) ?? (fault.part === partName(SEAT) ? chair.design.seat : undefined);
    const candidate = candidateOf(part, fault.at);
    const place = placeOf(chair.design, [jointNamedAt(chair, kind, candidate), candidate, part]);
    return [{ fault: fault as Of<K>, place }];
  });
}

/** What a joint lacks is told on the joint, not on every line that names it. */
function jointNamedAt(chair: Chair, kind: Kind, candidate: Candidate): Candidate | undefined {
  const name = "value" in candidate ? candidate.value : undefined;
  return kind === "not-buildable" && typeof name === "string" ? chair.design.joints.get(name) : undefined;
}

/** Lowest and highest point of the shoulder at one end, mm as drawn. */
export function reachOfShoulder(
  chair: Chair,
  part: string,
  end: string,
): { low: number; high: number } | undefined {
  const found = railNamed(chair, part)?.ends.find((each) => each.name === end);
  if (!found || found.corners.length === 0) return undefined;
  const heights = found.corners.map((corner) => corner[2]);
  return { low: Math.min(...heights), high: Math.max(...heights) };
}

/** The height that the text gives a rail, with its place; absent for one that takes its height from others. */
export function upOf(chair: Chair, part: string) {
  const rail = railNamed(chair, part);
  return rail?.design.is === "rail" ? rail.design.ups[(rail.id.row ?? 1) - 1] : undefined;
}
