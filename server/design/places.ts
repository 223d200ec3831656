/**
 * Facts that are places or sizes of a special kind: along a post, along a rail, a part of a size, a pair of sides.
 */

import { nearest } from "../../grammar/nearest.ts";
import type { Span } from "../../grammar/problem.ts";
import { sentence } from "../../grammar/sentences/sentence.ts";
import type { Fact } from "../../grammar/tree.ts";
import { orList } from "../../grammar/wording.ts";
import type { Given, PostStation, RailStation, Section, Size, TimberDesign } from "./design.ts";
import { plainFraction } from "./expressions.ts";
import type { Line } from "./merge.ts";
import {
  amountOf,
  factOf,
  figure,
  given,
  length,
  lengthAt,
  type Reading,
  report,
  spanOf,
} from "./reading.ts";

/** A height along a post, or `foot` or `top`. */
export function postStation(reading: Reading, line: Line, label: string): Given<PostStation> | undefined {
  const fact = factOf(line, label);
  if (fact === undefined) return undefined;
  if (fact.name === "foot" || fact.name === "top") return given(line, fact, fact.name);
  return lengthAt(reading, line, fact);
}

/** A distance along a rail, or a share of it: `1/2`, `50%`. */
export function railStation(
  reading: Reading,
  line: Line,
  fact: Fact | undefined,
): Given<RailStation> | undefined {
  if (fact?.value === undefined) return undefined;
  const fraction = plainFraction(fact.value, line.source.text);
  if (fraction !== undefined) return shareOfRail(reading, line, fact, fraction);
  if (fact.value.is === "share") {
    if (fact.value.of.text !== "rail") {
      report(reading, line.source, fact.value.of, {
        code: "wrong-unit",
        message: sentence("wrong-unit.along-rail"),
      });
      return undefined;
    }
    const share = amountOf(reading, line, fact.value.share);
    return share && shareOfRail(reading, line, fact, share.number);
  }
  const amount = amountOf(reading, line, fact.value);
  if (amount?.dimension === "share") return shareOfRail(reading, line, fact, amount.number);
  if (amount === undefined) return undefined;
  const mm = lengthAt(reading, line, fact, "not negative");
  return mm && { ...mm, value: { mm: mm.value } };
}

function shareOfRail(
  reading: Reading,
  line: Line,
  fact: Fact,
  share: number,
): Given<RailStation> | undefined {
  if (share >= 0 && share <= 1) return given(line, fact, { share });
  report(reading, line.source, fact, {
    code: "impossible-size",
    message: sentence("impossible-size.along-rail"),
  });
  return undefined;
}

/** What a size may be a part of: the word nearly written, else either. */
function wordsNear(of: string): string[] {
  const near = nearest(of, ["rail", "post"]);
  return near === undefined ? ["rail", "post"] : [near];
}

/** A length, or a part of the rail or the post. */
export function size(reading: Reading, line: Line, fact: Fact | undefined): Given<Size> | undefined {
  if (fact?.value === undefined) return undefined;
  const { value } = fact;
  if (value.is !== "share") {
    const mm = lengthAt(reading, line, fact, "positive");
    return mm && { ...mm, value: { mm: mm.value } };
  }
  const of = value.of.text;
  if (of !== "rail" && of !== "post") {
    report(reading, line.source, value.of, {
      code: "unknown-name",
      message: sentence("wrong-unit.part-of", { of, words: orList(wordsNear(of)) }),
      fixes: wordsNear(of).map((word) => ({
        title: sentence("fix.change-to", { text: word }),
        edits: [{ start: value.of.start, end: value.of.end, text: word }],
      })),
    });
    return undefined;
  }
  const share = amountOf(reading, line, value.share);
  if (share === undefined) return undefined;
  if (share.dimension !== "number" && share.dimension !== "share") {
    report(reading, line.source, value.share, {
      code: "wrong-unit",
      message: sentence("wrong-unit.plain-share", { of }),
    });
    return undefined;
  }
  if (share.number <= 0 || share.number > 1) {
    report(reading, line.source, value.share, {
      code: "impossible-size",
      message: sentence("impossible-size.share", { of }),
    });
    return undefined;
  }
  return given(line, fact, { share: share.number, of });
}

/** `A x B`, both more than nothing; the second may be left out when `alone` says so, and is then the first. */
export function section(
  reading: Reading,
  line: Line | undefined,
  [first, second]: readonly [string, string],
  alone = false,
): Given<Section> | undefined {
  if (line === undefined) return undefined;
  const a = length(reading, line, first, "positive");
  const other = factOf(line, second);
  const b = other === undefined && alone ? a : lengthAt(reading, line, other, "positive");
  if (a === undefined || b === undefined) return undefined;
  return given(line, spanOf([factOf(line, first), other], line.statement), {
    first: a.value,
    second: b.value,
  });
}

/** Species, moisture in percent, density in kg/m³. */
export function timber(reading: Reading, line: Line | undefined): Given<TimberDesign> | undefined {
  const species = line && factOf(line, "species");
  if (line === undefined || species?.name === undefined) return undefined;
  const wood: TimberDesign = { species: species.name };
  const moisture = figure(reading, line, "moisture", "share");
  if (moisture !== undefined && within(reading, line, moisture.at, moisture.value * 100, 0, 200, "%"))
    wood.moisture = moisture.value * 100;
  const density = figure(reading, line, "density", "number");
  if (density !== undefined && within(reading, line, density.at, density.value, 50, 1500, " kg/m³"))
    wood.density = density.value;
  return given(line, species, wood);
}

function within(
  reading: Reading,
  line: Line,
  at: Span,
  found: number,
  low: number,
  high: number,
  unit: string,
): boolean {
  if (found >= low && found <= high) return true;
  report(reading, line.source, at, {
    code: "impossible-size",
    message: sentence("impossible-size.wood", { found: Number(found.toFixed(2)), unit, low, high }),
  });
  return false;
}
