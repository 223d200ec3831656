/**
 * All that follows from a text: the whole chair's values first, then part by part what there is to know of it, its values and its joints.
 */
import type { Chair, Worked } from "../../chair/chair.ts";
import { railsAndSlats } from "../../chair/member.ts";
import { printWorked } from "../../chair/values/print.ts";
import { caution } from "../../floor/editions.ts";
import { rules } from "../../rules/index.ts";
import type { Study } from "../../study.ts";
import { aboutJoint } from "../about/about-joint.ts";
import { aboutPost } from "../about/about-post.ts";
import { aboutRail } from "../about/about-rail.ts";
import { findingsOf } from "./findings-of.ts";
import type { Report, Section } from "./report.ts";

/** The report of a study, in the file's units. */
export function valuesReport(title: string, study: Study): Report {
  const { chair, design } = study;
  const whole: Worked[] = [];
  const byPart = new Map<string, Worked[]>();
  for (const worked of chair.values.values()) {
    if (worked.part === undefined) whole.push(worked);
    else byPart.set(worked.part, [...(byPart.get(worked.part) ?? []), worked]);
  }
  const rows = (some: readonly Worked[]) =>
    some.map((worked) => [worked.name, printWorked(worked, design.units), worked.meaning]);
  const sections: Section[] = [
    { heading: "The whole chair", items: [whole.length > 0 ? rows(whole) : "There is nothing to tell yet."] },
    ...partsOf(chair).map(([part, lines]): Section => {
      const own = rows(byPart.get(part) ?? []);
      const joints = [...chair.joints.values()].filter((joint) => joint.part === part);
      return {
        heading: part,
        items: [
          ...findingsOf(part, study.problems),
          ...lines,
          ...(own.length > 0 ? [own] : []),
          ...joints.flatMap((joint) => [aboutJoint(joint, rules, study).map((line) => [unmarked(line)])]),
        ],
      };
    }),
  ];
  const tips = whole.some(({ name }) => name.startsWith("tip."));
  return { title, sections, ending: tips ? [caution] : [] };
}

/** Posts, rails and slats with what there is to know of each. */
function partsOf(chair: Chair): [string, string[]][] {
  const unit = chair.design.units;
  return [
    ...[...chair.posts.values()].map((post): [string, string[]] => [
      post.name,
      aboutPost(chair, post, unit, (name) => name),
    ]),
    ...railsAndSlats(chair).map((rail): [string, string[]] => [
      rail.name,
      aboutRail(rail, unit).map(unmarked),
    ]),
  ];
}

/** Without the marks of code. */
const unmarked = (line: string): string => line.replaceAll("`", "");
