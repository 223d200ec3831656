/**
 * Ends of rails that have to lie over a post because its top goes up into that rail, and nothing else says how high it is.
 */
import { addedLine } from "../../grammar/add-line.ts";
import type { Span } from "../../grammar/problem.ts";
import { sentence } from "../../grammar/sentences/sentence.ts";
import type { Statement } from "../../grammar/tree.ts";
import type { Design, EndDesign, PostDesign, RailDesign } from "./design.ts";
import { stemOf } from "./identity.ts";
import type { Item } from "./merge.ts";
import { facetOf, factOf, given, type Reading, report } from "./reading.ts";

const NEEDS_OVER = "needs-over";

/**
 * Tells of every such end without `over`, and takes it as lying over its post: it cannot be let into a post that is as high as the end lets
 * it be.
 *
 * @param crowned posts that some rail lies over
 */
export function checkTops(
  reading: Reading,
  items: readonly Item[],
  design: Design,
  crowned: ReadonlySet<string>,
): void {
  for (const post of design.posts.values()) {
    if (post.topInto === undefined || post.height !== undefined || crowned.has(post.name)) continue;
    const rail = design.rails.get(stemOf(post.topInto.value.rail.name));
    const item = items.find(({ statement }) => statement === rail?.statement);
    if (rail === undefined || item === undefined) continue;
    for (const which of endsAt(rail, post)) layOver(reading, item, { rail, post, which });
  }
}

/** How a rail's ends at a post are called. */
function endsAt({ course }: RailDesign, { name }: PostDesign): string[] {
  if (course?.value.is === "across") return course.value.of.name === name ? ["left", "right"] : [];
  if (course?.value.is !== "from-to") return [];
  const { from, to, stationFrom, stationTo } = course.value;
  return [
    ...(from.name === name && stationFrom === undefined ? [name] : []),
    ...(to.name === name && stationTo === undefined ? [name] : []),
  ];
}

interface AtPost {
  rail: RailDesign;
  post: PostDesign;
  which: string;
}

function layOver(reading: Reading, item: Item, { rail, post, which }: AtPost): void {
  const line = item.items.find(
    (each) => facetOf(each) === "end" && stemOf(factOf(each, "which")?.name ?? "") === which,
  );
  const there = line?.statement;
  const at: Span = there?.word ?? item.statement.word ?? rail.at;
  if (there) leaveOutOverhang(reading, there);
  if (!there || isReadWhole(there)) {
    const added = there ? "over" : `end ${which} { over }`;
    const edit = addedLine((line ?? item).source.text, there ?? item.statement, added);
    report(reading, (line ?? item).source, at, {
      code: NEEDS_OVER,
      message: sentence("needs-over", { rail: rail.name, post: post.name, line: added }),
      subject: rail.name,
      fixes: edit ? [{ title: sentence("fix.add-line", { line: added }), edits: [edit] }] : [],
    });
  }
  const end: EndDesign | undefined = rail.ends.find((each) => stemOf(each.which.value) === which);
  const over = given(line ?? item, at, { overhang: 0 });
  if (end) end.over ??= over;
  else rail.ends.push({ which: given(item, at, which), joint: {}, over, statement: rail.statement });
}

/** No line of it was too broken to know what it says: what was meant for `over` is told there. */
const isReadWhole = ({ block }: Statement): boolean =>
  block?.statements.every(({ row }) => row !== undefined) ?? true;

/** An overhang there has its own warning for want of the same line. */
function leaveOutOverhang({ problems }: Reading, { start, end }: Statement): void {
  const at = problems.findIndex(
    (problem) => problem.code === NEEDS_OVER && problem.start >= start && problem.end <= end,
  );
  if (at >= 0) problems.splice(at, 1);
}
