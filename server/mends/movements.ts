/**
 * Numbers of the text that may be moved for a finding: one by itself, the same number wherever it says the same of several parts, or
 * all heights of the chair together.
 */

import type { Edit, Insert } from "../../grammar/problem.ts";
import { editorSentence } from "../../grammar/sentences/editor-sentence.ts";
import { andList } from "../../grammar/wording.ts";
import type { LengthUnit } from "../design/design.ts";
import { millimetresIn, printBareLength } from "../design/units.ts";
import type { Figure } from "../sensitivity/figures.ts";
import { type Movable, movableOf } from "./literals.ts";

export interface Movement extends Movable {
  /** What the text becomes when the number is this. */
  edits(number: number): Edit[];
  title(number: number): string;
}

/** What each figure may be moved as, the smaller change first. `all` are the figures of the whole text. */
export function* movementsOf(
  figures: readonly Figure[],
  all: readonly Figure[],
  { text, unit }: { text: string; unit: LengthUnit },
): Iterable<Movement> {
  const grouped = new Set<string>();
  for (const figure of figures) {
    const movable = movableOf(figure, unit);
    if (!movable) continue;
    yield together([figure], movable, (to) =>
      editorSentence("mend.change", { figure: named(figure), from: textOf(figure, text), to }),
    );
    const alike = all.filter(
      (each) => each.what === figure.what && textOf(each, text) === textOf(figure, text),
    );
    const key = `${figure.what} ${textOf(figure, text)}`;
    if (alike.length > 1 && figure.let === undefined && !grouped.has(key)) {
      const parts = andList([...new Set(alike.map(({ thing }) => thing))]);
      yield together(alike, movable, (to) =>
        editorSentence("mend.change-all", { what: figure.what, parts, from: textOf(figure, text), to }),
      );
      grouped.add(key);
    }
    if (!heights.has(figure.what) || grouped.has("heights")) continue;
    grouped.add("heights");
    const high = all.filter((each) => heights.has(each.what) && movableOf(each, unit));
    const parts = andList([...new Set(high.map(({ thing }) => thing))]);
    yield shifted(high, movable, unit, (by, way) =>
      editorSentence(way === "up" ? "mend.up" : "mend.down", { parts, by }),
    );
  }
}

/** Words whose figures are heights over the floor. */
const heights = new Set(["up", "height"]);

const named = ({ what, of }: Figure): string =>
  of === undefined ? what : editorSentence("mend.figure-of", { what, part: of });
const textOf = ({ literal }: Figure, text: string): string => text.slice(literal.start, literal.end);

/** Degrees of lines that the text lacks, from none; every part is given the same. */
export function inserted(lines: readonly Insert[], unit: LengthUnit): Movement {
  const write = (number: number) => String(Number(number.toFixed(1)));
  const [first] = lines;
  const to = andList([...new Set(lines.map((line) => line.to))]);
  return {
    number: 0,
    step: 0.5,
    first: 2,
    most: MOST_DEGREES,
    write,
    edits: (number) =>
      lines.flatMap(({ at, before, after, along }) => [
        ...(along ? [grown(along, number, unit)] : []),
        { start: at, end: at, text: `${before}${write(number)}${after}` },
      ]),
    title: (number) =>
      editorSentence("mend.give", {
        to,
        what: first?.what ?? "",
        figure: write(number),
        after: first?.after ?? "",
      }),
  };
}

function grown(
  { start, end, number, perTangent }: NonNullable<Insert["along"]>,
  degrees: number,
  unit: LengthUnit,
): Edit {
  const by = (perTangent * Math.tan((degrees * Math.PI) / 180)) / millimetresIn(unit);
  return { start, end, text: printBareLength((number + by) * millimetresIn(unit), unit) };
}

/** A lean that a post is given is no steeper. */
const MOST_DEGREES = 12;

function together(figures: readonly Figure[], movable: Movable, title: (to: string) => string): Movement {
  return {
    ...movable,
    edits: (number) =>
      figures.map(({ literal: { start, end } }) => ({ start, end, text: movable.write(number) })),
    title: (number) => title(movable.write(number)),
  };
}

function shifted(
  figures: readonly Figure[],
  movable: Movable,
  unit: LengthUnit,
  title: (by: string, way: "up" | "down") => string,
): Movement {
  return {
    ...movable,
    edits: (number) =>
      figures.flatMap((figure) => {
        const own = movableOf(figure, unit);
        if (!own) return [];
        const { start, end } = figure.literal;
        return [{ start, end, text: own.write(own.number + number - movable.number) }];
      }),
    title: (number) => {
      const by = number - movable.number;
      return title(movable.write(Math.abs(by)), by > 0 ? "up" : "down");
    },
  };
}
