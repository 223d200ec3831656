/**
 * What the text says of a row of sticks, or of one of them.
 */

import { sentence } from "../../grammar/sentences/sentence.ts";
import { isSided } from "./course.ts";
import type { Given, Named } from "./design.ts";
import { readEnds } from "./ends.ts";
import type { Item, Line } from "./merge.ts";
import { checked, jointName } from "./names.ts";
import { timber } from "./places.ts";
import { isPair, set } from "./post.ts";
import { count, factOf, given, length, lineOf, linesOf, type Reading, report, spanOf } from "./reading.ts";
import { readSawn } from "./sawn.ts";
import type { RoundStation, RowPlace, StickDesign } from "./stick-design.ts";
import { printBareLength } from "./units.ts";

export function newStick(item: Item, named: Named): StickDesign {
  const one = { value: 1, at: named.at, assumed: true as const };
  return { ...named, is: "stick", pair: isPair(item), count: one, tapers: [], shape: [], ends: [] };
}

/** How many sticks may stand in a row. */
const MOST_STICKS = 60;

export function readStick(reading: Reading, item: Item, stick: StickDesign): void {
  const course = lineOf(item, "from");
  const to = course && checked(reading, course, factOf(course, "to"), ["rail", "bow"]);
  if (course && to && (stick.pair || isSided(reading, course, "to", to))) stick.to = to;
  stick.count = count(reading, lineOf(item, "count"), "count", MOST_STICKS) ?? stick.count;
  readFeet(reading, item, stick);
  const heads = lineOf(item, "heads");
  const row = heads && readRow(reading, heads);
  if (heads && row) stick.heads = row;
  const through = lineOf(item, "through");
  const bow = through && checked(reading, through, factOf(through, "through"), ["bow"]);
  if (through && bow) {
    const own = readRow(reading, through);
    stick.through = { ...bow, value: { bow: bow.value, ...(own && { row: own.value }) } };
  }
  set(stick, "round", length(reading, lineOf(item, "round"), "diameter", "positive"));
  stick.tapers = linesOf(item, "taper").flatMap((line) => readRoundTaper(reading, line) ?? []);
  stick.shape = readRoundStations(reading, item);
  set(stick, "joined", jointName(reading, lineOf(item, "joined")));
  stick.ends = readEnds(reading, item, stick.to && ["seat", stick.to.value.name]);
  set(stick, "timber", timber(reading, lineOf(item, "timber")));
  readSawn(reading, item, stick);
  tellWays(reading, item, stick);
}

function readFeet(reading: Reading, item: Item, stick: StickDesign): void {
  const line = lineOf(item, "feet");
  if (!line) return;
  if (line.statement.word?.text === "at") {
    const [out, back] = [length(reading, line, "out"), length(reading, line, "back")];
    const at = spanOf([factOf(line, "out"), factOf(line, "back")], line.statement);
    if (out && back) stick.place = given(line, at, { out: out.value, back: back.value });
    return;
  }
  const inside = length(reading, line, "in", "positive");
  const behind = length(reading, line, "behind", "not negative");
  const to = length(reading, line, "to", "positive");
  const at = spanOf([factOf(line, "in"), factOf(line, "behind"), factOf(line, "to")], line.statement);
  if (inside && behind)
    stick.feet = given(line, at, { in: inside.value, behind: behind.value, ...(to && { to: to.value }) });
}

/** `margin D [to D]` or `spread D` of a line; nothing where it says neither. */
function readRow(reading: Reading, line: Line): Given<RowPlace> | undefined {
  const spread = length(reading, line, "spread", "not negative");
  if (spread) return { ...spread, value: { is: "spread", wide: spread.value } };
  const margin = length(reading, line, "margin", "not negative");
  const to = length(reading, line, "to", "not negative");
  return margin && { ...margin, value: { is: "margin", first: margin.value, last: (to ?? margin).value } };
}

/** `taper DIA to end|ends` of turned stuff. */
function readRoundTaper(reading: Reading, line: Item): StickDesign["tapers"][number] | undefined {
  const diameter = length(reading, line, "diameter", "positive");
  const towards = factOf(line, "towards")?.name;
  if (!diameter || (towards !== "end" && towards !== "ends")) return undefined;
  return { ...diameter, value: { diameter: diameter.value, towards } };
}

/** `shape at S round DIA` of turned stuff, from its first shoulder on. */
export function readRoundStations(reading: Reading, item: Item): Given<RoundStation>[] {
  return linesOf(item, "shape")
    .flatMap((line) => {
      const at = length(reading, line, "station", "not negative");
      const diameter = length(reading, line, "diameter", "positive");
      return at && diameter ? [{ ...diameter, value: { at: at.value, diameter: diameter.value } }] : [];
    })
    .sort((a, b) => a.value.at - b.value.at);
}

/** Says what stands against another line of the block, or is missing beside it. */
function tellWays(reading: Reading, item: Item, stick: StickDesign): void {
  const say = (facet: string, code: string, message: string) => {
    const line = lineOf(item, facet);
    if (line) report(reading, line.source, line.statement.word ?? line.statement, { code, message });
  };
  const bare = (mm: number) => printBareLength(mm, reading.unit);
  if (stick.through?.value.row && (stick.feet ?? stick.place)) {
    const what = stick.feet ? "feet" : "at";
    const message = sentence("given-twice.feet-and-row", { what });
    say("feet", "given-twice", message);
    delete stick.feet;
    delete stick.place;
  }
  if (stick.feet && stick.pair && stick.feet.value.to === undefined)
    say(
      "feet",
      "incomplete",
      sentence("incomplete.row-end", {
        from: bare(stick.feet.value.behind),
        to: bare(stick.feet.value.behind + 100),
      }),
    );
  if (stick.feet && !stick.pair && stick.feet.value.to !== undefined)
    say("feet", "not-a-pair", sentence("not-a-pair.row-end"));
  if (stick.place && stick.count.value > 1) say("count", "given-twice", sentence("given-twice.one-by-one"));
}
