/**
 * The joints that rules about tenons look at, and where what a maker chose for them stands.
 */
import { sentence } from "../../../grammar/sentences/sentence.ts";
import type { Chair, Joint } from "../../chair/chair.ts";
import { kept } from "../../chair/kept.ts";
import type { EndDesign, Given } from "../../design/design.ts";
import { plain } from "../machinery/names.ts";
import { type Candidate, designOf, type Place, placeOf } from "../machinery/place.ts";
import { type JointRule, type JointTelling, tellings } from "./tellings.ts";

/** The joints that a rule judges, by their kind, whose end does enter what it should; an end that misses is reported by itself. */
export const judgedJoints = (chair: Chair, rule: JointRule): readonly Joint[] =>
  kept(chair, enteringJoints).filter(({ kind }) => tellings[kind].judgedBy.includes(rule));

function enteringJoints(chair: Chair): Joint[] {
  const missing = new Set(
    chair.faults.flatMap((fault) =>
      fault.is === "rail-misses-post" || fault.is === "end-reaches-nothing"
        ? `${fault.part} ${fault.end}`
        : [],
    ),
  );
  return [...chair.joints.values()].filter(({ part, end }) => !missing.has(`${part} ${end}`));
}

/** The narrowest place for a joint: the fact at fault, the line that chose the joint, the part's name. */
export function jointPlace(chair: Chair, joint: Joint, ...facts: (Given<unknown> | undefined)[]): Place {
  const part = designOf(chair, joint.part);
  if (!part) return placeOf(chair.design, facts);
  const candidates: (Candidate | undefined)[] = [...facts];
  if (joint.kind === "passing" && part.is === "stick")
    candidates.push(part.through, part.round, part.heads, part);
  if ("ends" in part) {
    const end = part.ends.find((each) => isEnd(each, joint));
    candidates.push(end?.joined ?? part.joined, end?.which);
  } else if (part.is === "post") candidates.push(joint.entered.kind === "seat" ? part.joined : part.topInto);
  candidates.push(part);
  return placeOf(chair.design, candidates);
}

function isEnd(end: EndDesign, joint: Joint): boolean {
  const which = end.which.value;
  return which === joint.end || which === joint.entered.name || which === plain(joint.entered.name);
}

/** `the tenon of seat-side into front`. */
export const tenonOf = (joint: Joint): string =>
  sentence(`tenon-of.${joint.kind}`, { part: plain(joint.part), host: plain(joint.entered.name) });

/** The facts of the text that give a joint's sizes. */
export const sizesOf = (joint: Joint): ReturnType<JointTelling["sizes"]> =>
  tellings[joint.kind].sizes(joint.facts);

/** How long the text is to say that two joints are so that both go in by no more than a depth, mm: `make both … long`. */
export function bothLong(a: Joint, b: Joint, depth: number, print: (mm: number) => string): string {
  const [times, other] = [tellings[a.kind].times, tellings[b.kind].times];
  if (times === other) return sentence("make-both-long", { long: print(times * depth) });
  return sentence("make-each-long", {
    one: plain(a.part),
    long: print(times * depth),
    other: plain(b.part),
    otherLong: print(other * depth),
  });
}

/** How thick the part is where its tenon begins, mm. */
export const stuffOf = ({ shoulders, thick }: Joint): number => shoulders.outside + thick + shoulders.inside;
