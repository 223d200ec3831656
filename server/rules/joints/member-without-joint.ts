import { sentence } from "../../../grammar/sentences/sentence.ts";
import type { Joint, Rail } from "../../chair/chair.ts";
import { kindAsked } from "../../chair/joints/kinds/index.ts";
import { railsAndSlats } from "../../chair/member.ts";
import { plain } from "../machinery/names.ts";
import { designOf, named, placeOf } from "../machinery/place.ts";
import type { Rule } from "../machinery/rule.ts";
import { listed, tell } from "../machinery/say.ts";

export const memberWithoutJoint: Rule = {
  code: "member-without-joint",
  severity: "warning",
  title: "Member without a joint",
  explanation:
    "Nothing says how this member is held: it only butts against what it meets, or lies on top of it. Name a joint with `joined`, or in the `end` block; a post's top goes into the rail over it with `top into`.",
  source: "common practice.",
  asksForMissing: true,
  find({ chair }) {
    const told: ReturnType<typeof tell>[] = [];
    const notBuilt = new Set(
      chair.faults.flatMap((fault) =>
        fault.is === "not-buildable" ? [`${fault.at.start}`, fault.part] : [],
      ),
    );
    const entered = new Set([...chair.joints.values()].map((joint) => joint.entered.name));
    for (const rail of railsAndSlats(chair)) {
      const loose = looseEnds(rail, notBuilt, entered);
      if (loose.length === 0) continue;
      const part = designOf(chair, rail.name);
      const joints = new Set(rail.ends.map((end) => end.joint?.design));
      const [only] = joints;
      const joint = joints.size === 1 && only !== undefined ? chair.design.joints.get(only) : undefined;
      if (joint) {
        told.push(
          tell(memberWithoutJoint, placeOf(chair.design, [joint, part]), {
            message: sentence("member-without-joint.no-tenon", { joint: joint.name, rail: plain(rail.name) }),
            subject: rail.name,
          }),
        );
        continue;
      }
      const both = loose.length === 2 ? "both" : "one";
      told.push(
        tell(memberWithoutJoint, placeOf(chair.design, [part]), {
          message: sentence(`member-without-joint.${overs(rail) ? (`${both}-over` as const) : both}`, {
            Part: named(chair, rail.name),
            host: listed(loose),
          }),
          subject: rail.name,
          badness: loose.length,
        }),
      );
    }
    return told;
  },
};

const overs = (rail: Rail): boolean => rail.ends.some((end) => end.over);

/** The ends that nothing holds, by the names of what they meet. */
function looseEnds(rail: Rail, broken: ReadonlySet<string>, entered: ReadonlySet<string>): string[] {
  const held = entered.has(rail.name);
  return rail.ends.flatMap((end) => {
    if (end.over) return held ? [] : [end.name];
    if (!end.joint || broken.has(rail.name) || broken.has(`${end.joint.at.start}`)) return [];
    return isHeld(end.joint) ? [] : [plain(end.entered?.name ?? end.name)];
  });
}

/** One that is asked for holds, though the text may lack what it takes to cut it: that is reported by itself. */
function isHeld(joint: Joint): boolean {
  const { facts } = joint;
  return joint.kind !== "none" || kindAsked(facts) !== undefined;
}
