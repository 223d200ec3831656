/**
 * What the text says of the seat.
 */
import type { SeatDesign, SeatKind, SeatRest } from "./design.ts";
import type { Item } from "./merge.ts";
import { checked } from "./names.ts";
import { timber } from "./places.ts";
import { set } from "./post.ts";
import { allOf, factOf, given, length, lineOf, type Reading, spanOf } from "./reading.ts";
import { readSawn } from "./sawn.ts";
import { readSolidSeat } from "./solid-seat.ts";

const rests: readonly SeatRest[] = ["rails", "strips", "rebates", "grooves"];
const kinds: readonly SeatKind[] = ["drop-in", "board", "woven", "upholstered", "solid"];

export function readSeat(reading: Reading, item: Item): SeatDesign | undefined {
  const fact = factOf(item, "kind");
  const kind = kinds.find((each) => each === fact?.name);
  if (fact === undefined || kind === undefined) return undefined;
  const seat: SeatDesign = {
    is: "seat",
    kind,
    at: { start: fact.start, end: fact.end },
    statement: item.statement,
    on: [],
  };
  set(seat, "file", item.source.file);
  set(seat, "description", item.statement.description ?? item.earlier?.statement.description);
  if (kind === "solid") seat.solid = readSolidSeat(reading, item);
  const on = lineOf(item, "on");
  if (on !== undefined)
    seat.on = allOf(on, "rail").flatMap((rail) => checked(reading, on, rail, ["rail"]) ?? []);
  set(seat, "thick", length(reading, lineOf(item, "thick"), "length", "positive"));
  set(seat, "proud", length(reading, lineOf(item, "proud"), "length"));
  set(seat, "sag", length(reading, lineOf(item, "sag"), "length", "not negative"));
  readRest(reading, item, seat);
  const line = lineOf(item, "overhang");
  if (line !== undefined) {
    const part = (label: string) => length(reading, line, label)?.value ?? 0;
    const at = spanOf(
      ["out", "front", "back"].map((label) => factOf(line, label)),
      line.statement,
    );
    seat.overhang = given(line, at, { out: part("out"), front: part("front"), back: part("back") });
  }
  set(seat, "timber", timber(reading, lineOf(item, "timber")));
  readSawn(reading, item, seat);
  return seat;
}

function readRest(reading: Reading, item: Item, seat: SeatDesign): void {
  const line = lineOf(item, "rests");
  const fact = line && factOf(line, "rests");
  const rest = rests.find((each) => each === fact?.name);
  if (line && fact && rest) seat.rests = given(line, fact, rest);
  set(seat, "gap", length(reading, lineOf(item, "gap"), "length", "not negative"));
  set(seat, "cover", length(reading, lineOf(item, "cover"), "length", "not negative"));
}
