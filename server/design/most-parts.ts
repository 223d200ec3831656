/**
 * How large a chair may be. What is asked of each part with each other grows faster than the text, and a few lines can make many parts.
 */

import type { Span } from "../../grammar/problem.ts";
import { sentence } from "../../grammar/sentences/sentence.ts";
import type { Design, Named } from "./design.ts";
import type { Item } from "./merge.ts";
import { facetOf, MOST_LINES, type Reading, report } from "./reading.ts";

/** Posts, rails and slats, both of a pair counted: a long bench has a hundred. */
const MOST_PARTS = 400;

/** Leaves out the parts beyond the most that are built, and tells of them once, where the first of them stands. */
export function checkMostParts(reading: Reading, items: readonly Item[], design: Design): void {
  let parts = 0;
  let wanted = 0;
  const left: { part: Named; item: Item | undefined }[] = [];
  const itemsBy = new Map(items.map((item) => [item.statement, item]));
  const all: { part: Named; count: number; from: Map<string, Named> }[] = [
    ...[...design.posts.values()].map((part) => ({ part, count: part.pair ? 2 : 1, from: design.posts })),
    ...[...design.rails.values()].map((part) => ({
      part,
      count: (part.pair ? 2 : 1) * Math.max(1, part.ups.length),
      from: design.rails,
    })),
    ...[...design.slats.values()].map((part) => ({
      part,
      count: part.stations?.value.length ?? part.count?.value ?? 1,
      from: design.slats,
    })),
    ...[...design.sticks.values()].map((part) => ({
      part,
      count: (part.pair ? 2 : 1) * part.count.value,
      from: design.sticks,
    })),
    ...[...design.bows.values()].map((part) => ({ part, count: 1, from: design.bows })),
  ];
  for (const { part, count, from } of all) {
    const item = itemsBy.get(part.statement);
    if (item !== undefined) checkMostLines(reading, item);
    wanted += count;
    if (parts + count > MOST_PARTS) {
      from.delete(part.name);
      left.push({ part, item });
    } else parts += count;
  }
  const [first, ...others] = left;
  if (first?.item === undefined) return;
  const values = { most: MOST_PARTS, found: wanted, part: first.part.name };
  report(reading, first.item.source, first.part.at, {
    code: "impossible-size",
    message:
      others.length === 0
        ? sentence("too-many-parts", values)
        : sentence("too-many-parts.more", { ...values, more: others.length }),
  });
}

/** Tells of the lines beyond the most that are read of one question in one block. */
function checkMostLines(reading: Reading, item: Item): void {
  const counts = new Map<string, number>();
  for (const line of item.items) {
    const facet = facetOf(line);
    if (facet === undefined) continue;
    const count = (counts.get(facet) ?? 0) + 1;
    counts.set(facet, count);
    if (count !== MOST_LINES + 1) continue;
    const at: Span = line.statement.word ?? line.statement;
    report(reading, line.source, at, {
      code: "impossible-size",
      message: sentence("impossible-size.lines", { most: MOST_LINES }),
    });
  }
}
