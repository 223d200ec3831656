import type { JointFacts } from "../../design/design.ts";
import type { Chair, Joint } from "../chair.ts";
import { railNamed } from "../member.ts";
import { jointAt } from "./joint.ts";
import { chosenJoint } from "./joint-facts.ts";
import { siteOfEnd } from "./joint-site.ts";

/** What a rail's or slat's joint would be with some facts changed and all else as it is, before any mitre; to try what would mend it. */
export function rejoined(chair: Chair, joint: Joint, change: Partial<JointFacts>): Joint | undefined {
  const rail = railNamed(chair, joint.part);
  const which = rail?.ends.findIndex((end) => end.name === joint.end);
  if (!rail || (which !== 0 && which !== 1)) return undefined;
  const chosen = chosenJoint(chair.design, rail.design, rail.ends[which]);
  const member = chair.members.get(joint.entered.name);
  const site = siteOfEnd(rail, which, { ...chosen, facts: { ...chosen.facts, ...change } }, member);
  return site && jointAt(site, []);
}

/** A changed fact, for want of one in the text. */
export const supposed = <T>(joint: Joint, value: T) => ({ value, at: joint.at });
