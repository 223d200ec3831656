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
    layOver(reading, item, { rail, post, ends: endsAt(rail, post) });
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
  ends: readonly string[];
}

function layOver(reading: Reading, item: Item, { rail, post, ends }: AtPost): void {
  const lines = ends.map((which) => ({
    which,
    line: item.items.find(
      (each) => facetOf(each) === "end" && stemOf(factOf(each, "which")?.name ?? "") === which,
    ),
  }));
  const [first] = lines;
  if (!first) return;
  const at: Span = first.line?.statement.word ?? item.statement.word ?? rail.at;
  for (const { line } of lines) if (line) leaveOutOverhang(reading, line.statement);
  if (lines.every(({ line }) => !line || isReadWhole(line.statement))) {
    const added = lines.map(({ which, line }) => (line ? "over" : `end ${which} { over }`));
    const edits = lines.flatMap(({ line }, n) => {
      const { source, statement } = line ?? item;
      return addedLine(source.text, statement, added[n] ?? "") ?? [];
    });
    const line = [...new Set(added)].join("; ");
    report(reading, (first.line ?? item).source, at, {
      code: NEEDS_OVER,
      message: sentence("needs-over", { rail: rail.name, post: post.name, line }),
      subject: rail.name,
      fixes: edits.length === lines.length ? [{ title: sentence("fix.add-line", { line }), edits }] : [],
    });
  }
  for (const { which, line } of lines) takeOver(rail, which, line ?? item, at);
}

function takeOver(rail: RailDesign, which: string, line: Item, at: Span): void {
  const end: EndDesign | undefined = rail.ends.find((each) => stemOf(each.which.value) === which);
  const over = given(line, at, { overhang: 0 });
  if (end) end.over ??= over;
  else rail.ends.push({ which: given(line, at, which), joint: {}, over, statement: rail.statement });
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
