/**
 * Parts that cannot be placed because each stands on, or enters, the next.
 */

import { sentence } from "../../grammar/sentences/sentence.ts";
import type { Design, Given, PartRef } from "./design.ts";
import { stemOf } from "./identity.ts";
import type { Item } from "./merge.ts";
import { type Reading, report } from "./reading.ts";

/** Tells of every circle of parts once, where one of its members names the next, and takes that member's place away. */
export function checkPartCircles(reading: Reading, items: Item[], design: Design): void {
  const done = new Set<string>();
  for (const start of [...design.rails.keys(), ...design.posts.keys()]) {
    const path: string[] = [];
    const waiting: { name: string; depth: number }[] = [{ name: start, depth: 0 }];
    for (let step = waiting.pop(); step !== undefined; step = waiting.pop()) {
      for (const left of path.splice(step.depth)) done.add(left);
      const begin = path.indexOf(step.name);
      if (begin >= 0) {
        tell(reading, items, design, [...path.slice(begin), step.name]);
        continue;
      }
      if (done.has(step.name)) continue;
      path.push(step.name);
      for (const next of placedBy(design, step.name)) waiting.push({ name: next, depth: path.length });
    }
    for (const left of path) done.add(left);
  }
}

/** The parts that a part's place depends on. */
function placedBy(design: Design, name: string): string[] {
  const post = design.posts.get(name);
  if (post !== undefined) return post.standsOn === undefined ? [] : [stem(post.standsOn.value.rail)];
  const course = design.rails.get(name)?.course?.value;
  if (course === undefined) return [];
  return course.is === "from-to" ? [stem(course.from), stem(course.to)] : [stem(course.of)];
}

/** `ladder.2` is a member of `ladder`. */
const stem = (ref: PartRef): string => stemOf(ref.name);

function tell(reading: Reading, items: Item[], design: Design, circle: string[]): void {
  const name = circle.at(-2) ?? "";
  const rail = design.rails.get(name);
  const post = design.posts.get(name);
  const fact: Given<unknown> | undefined = rail?.course ?? post?.standsOn;
  const item = items.find((each) => each.key === `name ${name}`);
  if (fact === undefined || item === undefined) return;
  const { file, via, ...here } = item.source;
  report(
    reading,
    fact.file === undefined ? here : { ...here, ...(file && via ? { file, via } : {}) },
    fact.at,
    {
      code: "circular-value",
      message: sentence("circular-value.parts", { circle: circle.slice(0, 12).join(" → ") }),
      subject: name,
    },
  );
  if (rail !== undefined) delete rail.course;
  if (post !== undefined) delete post.standsOn;
}
