/**
 * One sitter with every measure, to be drawn and to be weighed: the middle of a group, or the one the text describes.
 */
import type { SitterDesign } from "../design/design.ts";
import { type Group, groups, type Measure, measures, quantile } from "./body-sizes.ts";
import { childWeight } from "./child-weight.ts";
import { marksForAges, schoolMark, schoolMarks } from "./school-marks.ts";
import { shoesOf } from "./shoes.ts";

export interface SitterBody {
  /** Who it is, in words: `a sitter of middle size`. */
  whom: string;
  /** mm without shoes; weight kg. */
  measures: Record<Measure, number>;
  /** Height of the heels, mm. */
  shoes: number;
}

/**
 * The sitter a chair is for. Grown people are the medians of the body-size data (women's and men's halfway between when both are
 * meant); children the middle of their size mark's ranges and of the weights of their age, with the other measures in the
 * proportions of grown people to their stature; a named sitter has the measures given, the others in proportion.
 */
export function bodyOf(sitter: SitterDesign): SitterBody {
  if (sitter.is === "adult") {
    const some: readonly Group[] = sitter.group ? [sitter.group] : groups;
    return {
      whom: `a ${sitter.group ? single[sitter.group] : "sitter"} of middle size`,
      measures: middleOf(some),
      shoes: meanOf(some.map(shoesOf)),
    };
  }
  if (sitter.is === "named") {
    const own = new Map([...sitter.measures].map(([name, { value }]) => [name, value]));
    return {
      whom: "its sitter",
      measures: proportioned(own.get("stature"), own),
      shoes: own.get("shoes") ?? meanOf(groups.map(shoesOf)),
    };
  }
  const marks =
    sitter.is === "child"
      ? marksForAges(sitter.from, sitter.to)
      : [schoolMark(sitter.mark)].filter((mark) => mark !== undefined);
  const mark = marks[marks.length - 1] ?? schoolMarks[schoolMarks.length - 1]!;
  const age = sitter.is === "child" ? sitter.to : mark.ages[1];
  return {
    whom: sitter.is === "child" ? `a child of ${age}` : `a child of size mark ${mark.mark}`,
    measures: proportioned(
      meanOf(mark.stature),
      new Map([
        ["popliteal-height", meanOf(mark.popliteal)],
        ["weight", childWeight(age)[1]],
      ]),
    ),
    shoes: shoesOf("children"),
  };
}

const single: Record<Group, string> = { women: "woman", men: "man" };

/** The age in whole years of the oldest child a chair is for; nothing when it is for grown people. */
export function oldestChild(sitter: SitterDesign): number | undefined {
  if (sitter.is === "child") return sitter.to;
  return sitter.is === "school-mark" ? schoolMark(sitter.mark)?.ages[1] : undefined;
}

const meanOf = (numbers: readonly number[]): number =>
  numbers.reduce((sum, number) => sum + number, 0) / numbers.length;

function middleOf(some: readonly Group[]): Record<Measure, number> {
  return Object.fromEntries(
    measures.map((measure) => [measure, meanOf(some.map((group) => quantile(group, measure, 0.5)))]),
  ) as Record<Measure, number>;
}

/** The measures known, and the others as those of grown people are to their stature; weight goes with its cube. */
function proportioned(
  stature: number | undefined,
  known: ReadonlyMap<string, number>,
): Record<Measure, number> {
  const middle = middleOf(groups);
  const scale = (stature ?? middle.stature) / middle.stature;
  return Object.fromEntries(
    measures.map((measure) => [
      measure,
      known.get(measure) ??
        (measure === "stature" && stature !== undefined
          ? stature
          : middle[measure] * (measure === "weight" ? scale ** 3 : scale)),
    ]),
  ) as Record<Measure, number>;
}
