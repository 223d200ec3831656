/**
 * What the text says of a joint, by itself or at one end of a rail.
 */
import type { JointDesign, JointFacts, Named } from "./design.ts";
import type { Item } from "./merge.ts";
import { size } from "./places.ts";
import { set } from "./post.ts";
import { count, factOf, given, length, lengthAt, lineOf, type Reading } from "./reading.ts";

export function newJoint(named: Named): JointDesign {
  return { ...named, is: "joint" };
}

/** Fills in the facts of a joint from the lines of its block, or of an `end` block. */
export function readJoint(reading: Reading, item: Item, facts: JointFacts): void {
  readTenon(reading, item, facts);
  readSet(reading, item, facts);
  const shoulders = lineOf(item, "shoulders");
  set(facts, "shoulderTop", length(reading, shoulders, "top", "not negative"));
  set(facts, "shoulderBottom", length(reading, shoulders, "bottom", "not negative"));
  readHaunch(reading, item, facts);
  readMeeting(reading, item, facts);
  readOthers(reading, item, facts);
}

function readTenon(reading: Reading, item: Item, facts: JointFacts): void {
  const line = lineOf(item, "tenon-size");
  if (line !== undefined && factOf(line, "diameter") !== undefined) {
    const diameter = length(reading, line, "diameter", "positive");
    const long = size(reading, line, factOf(line, "long"));
    if (diameter !== undefined && long !== undefined) {
      facts.round = { ...diameter, value: { diameter: diameter.value, long: long.value } };
    }
  } else if (line !== undefined) {
    const thick = factOf(line, "thick");
    if (thick?.name === "full") facts.tenonThick = given(line, thick, "full");
    else set(facts, "tenonThick", size(reading, line, thick));
    set(facts, "tenonWide", size(reading, line, factOf(line, "wide")));
    set(facts, "tenonLong", size(reading, line, factOf(line, "long")));
  }
  const lineOfTenon = lineOf(item, "tenon-line");
  const word = lineOfTenon && factOf(lineOfTenon, "line");
  if (lineOfTenon !== undefined && (word?.name === "in-line" || word?.name === "square")) {
    facts.line = given(lineOfTenon, word, word.name);
  }
  const bow = lineOf(item, "tenon-bow");
  const withBow = bow && factOf(bow, "with");
  if (bow !== undefined && withBow !== undefined) facts.withBow = given(bow, withBow, true);
}

function readSet(reading: Reading, item: Item, facts: JointFacts): void {
  const line = lineOf(item, "set");
  if (line === undefined) return;
  const centred = factOf(line, "centred");
  if (centred !== undefined) {
    facts.set = given(line, centred, { from: "centred" });
    return;
  }
  const distance = length(reading, line, "distance", "not negative");
  if (distance !== undefined)
    facts.set = { ...distance, value: { from: "outside", distance: distance.value } };
}

function readHaunch(reading: Reading, item: Item, facts: JointFacts): void {
  const line = lineOf(item, "haunch");
  const long = length(reading, line, "long", "positive");
  if (line === undefined || long === undefined) return;
  const haunch: NonNullable<JointFacts["haunch"]>["value"] = { long: long.value };
  set(haunch, "wide", length(reading, line, "wide", "positive")?.value);
  if (factOf(line, "sloped") !== undefined) haunch.sloped = true;
  facts.haunch = { ...long, value: haunch };
}

function readMeeting(reading: Reading, item: Item, facts: JointFacts): void {
  const mitre = lineOf(item, "mitre");
  if (mitre !== undefined) {
    const gap = lengthAt(reading, mitre, factOf(mitre, "gap"), "not negative");
    facts.mitre = given(mitre, gap?.at ?? mitre.statement.word ?? mitre.statement, { gap: gap?.value ?? 0 });
  }
  const through = lineOf(item, "through");
  if (through !== undefined) {
    const wedged = factOf(through, "wedged");
    facts.through = given(through, through.statement.word ?? through.statement, {
      wedged: wedged !== undefined,
    });
  }
  const bridle = lineOf(item, "bridle");
  if (bridle !== undefined) facts.bridle = given(bridle, bridle.statement.word ?? bridle.statement, true);
  const gap = length(reading, lineOf(item, "twin"), "gap", "positive");
  if (gap !== undefined) facts.twin = { ...gap, value: { gap: gap.value } };
}

function readOthers(reading: Reading, item: Item, facts: JointFacts): void {
  readPeg(reading, item, facts);
  const dowels = lineOf(item, "dowels");
  const number = count(reading, dowels, "count", 40);
  const diameter = length(reading, dowels, "diameter", "positive");
  const long = length(reading, dowels, "long", "positive");
  if (number !== undefined && diameter !== undefined && long !== undefined) {
    facts.dowels = { ...number, value: { count: number.value, diameter: diameter.value, long: long.value } };
  }
  const glue = lineOf(item, "glue");
  const kind = glue && factOf(glue, "glue");
  if (glue !== undefined && kind?.name !== undefined) facts.glue = given(glue, kind, kind.name);
  set(facts, "fit", length(reading, lineOf(item, "fit"), "clearance"));
}

function readPeg(reading: Reading, item: Item, facts: JointFacts): void {
  const line = lineOf(item, "peg");
  const diameter = length(reading, line, "diameter", "positive");
  if (line === undefined || diameter === undefined) return;
  const peg: NonNullable<JointFacts["peg"]>["value"] = {
    diameter: diameter.value,
    draw: length(reading, line, "draw", "not negative")?.value ?? 0,
    count: count(reading, line, "count", 10)?.value ?? 1,
  };
  set(peg, "setback", length(reading, line, "setback", "positive")?.value);
  facts.peg = { ...diameter, value: peg };
}
