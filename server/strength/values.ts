/**
 * Strength as worked-out values: the least margin, and how hard each part and joint works.
 */
import { type LateName, valueTable } from "../../grammar/vocabulary/values.ts";
import type { Chair, Worked } from "../chair/chair.ts";
import type { Strength } from "./strength.ts";

/** By dotted name, that of the whole chair first, then parts and joints in the order of the chair; right-hand twins where they differ. */
export function strengthValues(chair: Chair, { margin, joints, members }: Strength): Worked[] {
  const values: Worked[] = [];
  const put = (row: LateName, name: string, number: number, part?: string) =>
    values.push({
      name,
      number,
      dimension: valueTable[row].dimension,
      meaning: valueTable[row].meaning,
      ...(part !== undefined && { part }),
    });
  if (margin !== undefined) put("strength.margin", "strength.margin", margin);
  const [byJoint, byPart] = [joints, members].map(
    (rulings) => new Map(rulings.map(({ name, demand }) => [name, demand])),
  ) as [Map<string, number>, Map<string, number>];
  for (const part of chair.members.keys()) {
    const demand = byPart.get(part);
    if (demand !== undefined) put("PART.demand", `${part}.demand`, demand, part);
    for (const joint of chair.joints.values()) {
      const asked = joint.part === part ? byJoint.get(joint.name) : undefined;
      if (asked !== undefined) put("PART.END.demand", `${part}.${joint.end}.demand`, asked, part);
    }
  }
  return values;
}
