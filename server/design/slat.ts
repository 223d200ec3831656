/**
 * What the text says of a row of slats.
 */
import type { Named, SlatDesign } from "./design.ts";
import { readEnds } from "./ends.ts";
import type { Item } from "./merge.ts";
import { checked, jointName } from "./names.ts";
import { railStation, timber } from "./places.ts";
import { set } from "./post.ts";
import { readBarSection, readBow } from "./rail.ts";
import { allOf, count, factOf, given, lineOf, listed, type Reading, spanOf } from "./reading.ts";
import { readSawn } from "./sawn.ts";

export function newSlat(named: Named): SlatDesign {
  return { ...named, is: "slat", ends: [] };
}

/** How many slats may stand in a row. */
const MOST_SLATS = 200;

export function readSlat(reading: Reading, item: Item, slat: SlatDesign): void {
  const course = lineOf(item, "from");
  if (course !== undefined) {
    set(slat, "from", checked(reading, course, factOf(course, "from"), ["rail"]));
    set(slat, "to", checked(reading, course, factOf(course, "to"), ["rail"]));
  }
  const row = lineOf(item, "count");
  if (row?.statement.word?.text === "at") {
    const facts = listed(reading, row, "station", MOST_SLATS, "row-has");
    const stations = facts.flatMap((fact) => railStation(reading, row, fact)?.value ?? []);
    if (stations.length > 0)
      slat.stations = given(row, spanOf(allOf(row, "station"), row.statement), stations);
  } else {
    set(slat, "count", count(reading, row, "count", MOST_SLATS));
  }
  readBarSection(reading, item, slat);
  set(slat, "bow", readBow(reading, item));
  set(slat, "joined", jointName(reading, lineOf(item, "joined")));
  slat.ends = readEnds(reading, item, slat.from && slat.to && [slat.from.value.name, slat.to.value.name]);
  set(slat, "timber", timber(reading, lineOf(item, "timber")));
  readSawn(reading, item, slat);
}
