/**
 * What differs at one end of a rail or slat.
 */

import type { Span } from "../../grammar/problem.ts";
import { sentence } from "../../grammar/sentences/sentence.ts";
import type { Fact } from "../../grammar/tree.ts";
import { andList } from "../../grammar/wording.ts";
import type { EndDesign, RailCourse } from "./design.ts";
import { withoutSides } from "./identity.ts";
import { readJoint } from "./joint.ts";
import type { Item } from "./merge.ts";
import { checked, jointName, nearName } from "./names.ts";
import { set } from "./post.ts";
import { factOf, given, length, lineOf, linesOf, type Reading, report } from "./reading.ts";

/** What the ends of a rail are called, sides of posts apart; nothing when its course is not known. */
export function endNames(course: RailCourse | undefined): string[] | undefined {
  if (course === undefined) return undefined;
  if (course.is !== "from-to") return ["left", "right", course.of.name];
  const [from, to] = [course.from.name, course.to.name];
  return from === to ? ["left", "right", from] : [from, to];
}

/** The `end` blocks of a rail or slat whose ends are called `names`. */
export function readEnds(reading: Reading, item: Item, names: readonly string[] | undefined): EndDesign[] {
  const before = new Map<string, Span>();
  return linesOf(item, "end").flatMap((line) => {
    const fact = factOf(line, "which");
    if (fact?.name === undefined) return [];
    if (!isEnd(reading, line, fact, names) || isTwice(reading, line, fact, before)) return [];
    const end: EndDesign = { which: given(line, fact, fact.name), joint: {}, statement: line.statement };
    set(end, "joined", jointName(reading, lineOf(line, "joined")));
    readJoint(reading, line, end.joint);
    const over = lineOf(line, "over");
    const overhang = length(reading, lineOf(line, "overhang"), "length");
    if (over !== undefined) {
      end.over = given(over, over.statement.word ?? over.statement, { overhang: overhang?.value ?? 0 });
    } else if (overhang !== undefined) {
      report(reading, line.source, overhang.at, {
        code: "needs-over",
        severity: "warning",
        message: sentence("overhang-without-over"),
      });
    }
    return [end];
  });
}

function isEnd(reading: Reading, line: Item, fact: Fact, names: readonly string[] | undefined): boolean {
  const name = fact.name ?? "";
  if (names === undefined) {
    return (
      name === "left" || name === "right" || checked(reading, line, fact, ["post", "rail"]) !== undefined
    );
  }
  if (names.includes(name) || names.includes(withoutSides(name))) return true;
  const near = nearName(reading, name, names);
  const offered = near === undefined ? names : [near];
  report(reading, line.source, fact, {
    code: "unknown-name",
    message: sentence("unknown-name.end", { name, names: andList(names) }),
    fixes: offered.map((text) => ({
      title: sentence("fix.change-to", { text }),
      edits: [{ start: fact.start, end: fact.end, text }],
    })),
  });
  return false;
}

function isTwice(reading: Reading, line: Item, fact: Fact, before: Map<string, Span>): boolean {
  const name = fact.name ?? "";
  const first = before.get(name);
  if (first === undefined) {
    before.set(name, { start: fact.start, end: fact.end });
    return false;
  }
  report(reading, line.source, fact, {
    code: "given-twice",
    message: sentence("given-twice.end", { end: name }),
    related: [{ ...first, message: sentence("related.first-given") }],
  });
  return true;
}
