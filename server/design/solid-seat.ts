/**
 * What the text says of a solid seat: its place, its outline, its wood.
 */
import { sentence } from "../../grammar/sentences/sentence.ts";
import type { Given } from "./given.ts";
import type { Item } from "./merge.ts";
import { set } from "./post.ts";
import {
  count,
  factOf,
  given,
  lean,
  length,
  lineOf,
  linesOf,
  type Reading,
  report,
  spanOf,
} from "./reading.ts";
import type { SeatWidth, SolidSeatDesign } from "./solid-seat-design.ts";
import { printLength } from "./units.ts";

/** Boards that a seat is jointed of, at most. */
const MOST_BOARDS = 12;

/** The facts of a seat's block that only a solid one has. */
export function readSolidSeat(reading: Reading, item: Item): SolidSeatDesign {
  const { statement } = item;
  const word = statement.word ?? statement;
  const solid: SolidSeatDesign = {
    widths: readWidths(reading, item),
    bevels: readBevels(reading, item),
    grain: { ...given(item, word, "fore-and-aft"), assumed: true },
    boards: { ...given(item, word, 1), assumed: true },
  };
  set(solid, "up", length(reading, lineOf(item, "up"), "up", "positive"));
  set(solid, "back", length(reading, lineOf(item, "back"), "back"));
  const fall = lineOf(item, "fall");
  if (fall?.statement.word?.text === "slope") set(solid, "slope", lean(reading, fall, "angle"));
  else set(solid, "fall", length(reading, fall, "fall"));
  set(solid, "deep", length(reading, lineOf(item, "deep"), "length", "positive"));
  set(solid, "round", length(reading, lineOf(item, "round"), "diameter", "positive"));
  set(solid, "corner", readCorner(reading, item));
  set(solid, "tail", readTail(reading, item));
  set(solid, "hollow", readHollow(reading, item));
  const grain = lineOf(item, "grain");
  const way = grain && factOf(grain, "grain");
  if (grain && (way?.name === "across" || way?.name === "fore-and-aft"))
    solid.grain = given(grain, way, way.name);
  solid.boards = count(reading, lineOf(item, "boards"), "count", MOST_BOARDS) ?? solid.boards;
  tellConflicts(reading, item, solid);
  return solid;
}

function readWidths(reading: Reading, item: Item): Given<SeatWidth>[] {
  return linesOf(item, "wide").flatMap((line) => {
    const wide = length(reading, line, "wide", "positive");
    const at = length(reading, line, "station", "not negative");
    if (!wide || !at) return [];
    const straight = factOf(line, "straight") !== undefined;
    return [
      given(line, spanOf([factOf(line, "wide"), factOf(line, "station")], line.statement), {
        wide: wide.value,
        at: at.value,
        straight,
      }),
    ];
  });
}

function readCorner(reading: Reading, item: Item): SolidSeatDesign["corner"] {
  const line = lineOf(item, "corner");
  if (!line) return undefined;
  const part = (label: string) => length(reading, line, label, "not negative");
  const both = part("both");
  if (both) return { ...both, value: { front: both.value, back: both.value } };
  const [front, back] = [part("front"), part("back")];
  const at = spanOf([factOf(line, "front"), factOf(line, "back")], line.statement);
  return (front ?? back) && given(line, at, { front: front?.value ?? 0, back: back?.value ?? 0 });
}

function readTail(reading: Reading, item: Item): SolidSeatDesign["tail"] {
  const line = lineOf(item, "tail");
  const wide = length(reading, line, "width", "positive");
  const long = length(reading, line, "length", "positive");
  if (!line || !wide || !long) return undefined;
  const at = spanOf([factOf(line, "width"), factOf(line, "length")], line.statement);
  return given(line, at, { wide: wide.value, long: long.value });
}

/** Depths over which a hollow falls away from its rim, unless the text says. */
const OVER = 8;

function readHollow(reading: Reading, item: Item): SolidSeatDesign["hollow"] {
  const line = lineOf(item, "hollow");
  const deep = length(reading, line, "hollow", "positive");
  const rim = length(reading, line, "rim", "not negative");
  const over = length(reading, line, "over", "positive");
  if (!line || !deep || !rim) return undefined;
  const thick = length(reading, lineOf(item, "thick"), "length", "positive");
  if (thick && deep.value >= thick.value) {
    const [found, most] = [deep.value, thick.value].map((mm) => printLength(mm, reading.unit));
    report(reading, line.source, deep.at, {
      code: "impossible-size",
      message: sentence("impossible-size.hollow", {
        found: found!,
        thick: most!,
        less: printLength(thick.value / 3, reading.unit),
      }),
      found: found!,
      allowed: `less than ${most}`,
    });
    return undefined;
  }
  const value = {
    deep: deep.value,
    over: over?.value ?? OVER * deep.value,
    open: factOf(line, "open") !== undefined,
    rim: rim.value,
  };
  return { ...deep, value };
}

function readBevels(reading: Reading, item: Item): SolidSeatDesign["bevels"] {
  const bevels: SolidSeatDesign["bevels"] = [];
  const thick =
    length(reading, lineOf(item, "thick"), "length", "positive")?.value ?? Number.POSITIVE_INFINITY;
  for (const line of linesOf(item, "bevel")) {
    const wide = length(reading, line, "width", "positive");
    const deep = length(reading, line, "depth", "positive");
    const face = factOf(line, "face")?.name;
    if (!wide || !deep || (face !== "above" && face !== "below")) continue;
    const taken = bevels.reduce((sum, { value }) => sum + value.deep, 0);
    if (bevels.some(({ value }) => value.face === face)) {
      report(reading, line.source, line.statement.word ?? line.statement, {
        code: "given-twice",
        message: sentence("given-twice.bevel", { face }),
      });
    } else if (taken + deep.value >= thick) {
      const [found, most] = [taken + deep.value, thick].map((mm) => printLength(mm, reading.unit));
      report(reading, line.source, deep.at, {
        code: "impossible-size",
        message: sentence("impossible-size.bevel", {
          found: found!,
          thick: most!,
          less: printLength((thick - taken) / 2, reading.unit),
        }),
      });
    } else
      bevels.push(
        given(line, spanOf([factOf(line, "width"), factOf(line, "depth")], line.statement), {
          wide: wide.value,
          deep: deep.value,
          face,
        }),
      );
  }
  return bevels;
}

/** A round seat's outline is its circle: what else would shape it is told, and left out. */
function tellConflicts(reading: Reading, item: Item, solid: SolidSeatDesign): void {
  if (!solid.round) return;
  for (const facet of ["deep", "wide", "corner", "tail"]) {
    for (const line of linesOf(item, facet)) {
      report(reading, line.source, line.statement.word ?? line.statement, {
        code: "given-twice",
        message: sentence("given-twice.round-seat", { word: facet }),
      });
    }
  }
  solid.widths = [];
  delete solid.deep;
  delete solid.corner;
  delete solid.tail;
}
