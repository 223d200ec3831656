import { addedLine } from "../../../grammar/add-line.ts";
import type { Fix } from "../../../grammar/problem.ts";
import { sentence } from "../../../grammar/sentences/sentence.ts";
import type { Chair, Joint, Rail } from "../../chair/chair.ts";
import { kindAsked } from "../../chair/joints/kinds/index.ts";
import { railsAndSlats } from "../../chair/member.ts";
import type { PartDesign } from "../../design/design.ts";
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
  find({ chair, tree }) {
    const told: ReturnType<typeof tell>[] = [];
    const notBuilt = new Set(
      chair.faults.flatMap((fault) =>
        fault.is === "not-buildable" ? [`${fault.at.start}`, fault.part] : [],
      ),
    );
    const entered = new Set([...chair.joints.values()].filter(isHeld).map((joint) => joint.entered.name));
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
            otherwise: sentence("member-without-joint.no-tenon.otherwise"),
            subject: rail.name,
          }),
        );
        continue;
      }
      told.push(
        tell(memberWithoutJoint, placeOf(chair.design, [part]), {
          message: sentence(`member-without-joint.${loose.length === 2 ? "both" : "one"}`, {
            Part: named(chair, rail.name),
            host: listed(loose),
          }),
          otherwise: sentence(`member-without-joint.otherwise${overs(rail) ? "-over" : ""}`),
          fixes: joined(chair, part, tree.text),
          subject: rail.name,
          badness: loose.length,
        }),
      );
    }
    return told;
  },
};

const overs = ({ design, ends }: Rail): boolean =>
  (design.is === "rail" && design.onOne !== undefined) || ends.some((end) => end.over);

/** The ends that nothing holds, by the names of what they meet. */
function looseEnds(rail: Rail, broken: ReadonlySet<string>, entered: ReadonlySet<string>): string[] {
  const held = entered.has(rail.name);
  const single = rail.design.is === "rail" ? rail.design.onOne : undefined;
  if (single && !held) return [single.value.name];
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

/** Joints that are offered, at most. */
const OFFERED = 3;

/** The part with each joint named that may be meant: one that no part names yet, then those of its like, then the others. */
function joined({ design }: Chair, part: PartDesign | undefined, text: string): Fix[] {
  if (!part || part.file !== undefined) return [];
  const users = new Map<string, Set<string>>();
  for (const each of [
    ...design.rails.values(),
    ...design.slats.values(),
    ...design.sticks.values(),
    ...design.posts.values(),
  ]) {
    const ends = "ends" in each ? each.ends.map((end) => end.joined?.value) : [];
    for (const name of [each.joined?.value, ...ends])
      if (name !== undefined) users.set(name, (users.get(name) ?? new Set()).add(each.is));
  }
  const rank = (name: string) => (users.has(name) ? (users.get(name)?.has(part.is) ? 1 : 2) : 0);
  return [...design.joints.keys()]
    .sort((a, b) => rank(a) - rank(b))
    .slice(0, OFFERED)
    .flatMap((name) => {
      const line = `joined ${name}`;
      const edit = addedLine(text, part.statement, line);
      return edit ? [{ title: sentence("fix.write-line", { line }), edits: [edit] }] : [];
    });
}
