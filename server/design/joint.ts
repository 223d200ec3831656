/**
 * What the text says of a joint, by itself or at one end of a rail.
 */
import { sentence } from "../../grammar/sentences/sentence.ts";
import type { Given, JointDesign, JointFacts, Named, Size } from "./design.ts";
import type { Item } from "./merge.ts";
import { size } from "./places.ts";
import { set } from "./post.ts";
import { count, factOf, given, length, lengthAt, lineOf, type Reading, report } from "./reading.ts";
import { printLength } from "./units.ts";

export function newJoint(named: Named): JointDesign {
  return { ...named, is: "joint" };
}

/** Reads one fact of a joint from the lines of its block, or of an `end` block; undefined when they do not give it. */
type Reader<K extends keyof JointFacts> = (reading: Reading, item: Item) => JointFacts[K] | undefined;

/** How each fact is read; a fact without a line here does not compile. */
const readers: { readonly [K in keyof JointFacts]-?: Reader<K> } = {
  tenonThick(reading, item) {
    const line = tenonLine(item);
    const thick = line && factOf(line, "thick");
    if (line && thick?.name === "full") return given(line, thick, "full");
    return line && size(reading, line, thick);
  },
  tenonWide: (reading, item) => tenonSize(reading, item, "wide"),
  tenonLong: (reading, item) => tenonSize(reading, item, "long"),
  round(reading, item) {
    const line = lineOf(item, "tenon-size");
    if (line?.statement.word?.text !== "round") return undefined;
    return readRound(reading, line);
  },
  line(_reading, item) {
    const line = lineOf(item, "tenon-line");
    const word = line && factOf(line, "line");
    return word?.name === "in-line" || word?.name === "square" ? given(line!, word, word.name) : undefined;
  },
  withBow(_reading, item) {
    const line = lineOf(item, "tenon-bow");
    const word = line && factOf(line, "with");
    return word && given(line, word, true);
  },
  set(reading, item) {
    const line = lineOf(item, "set");
    const centred = line && factOf(line, "centred");
    if (line && centred) return given(line, centred, { from: "centred" });
    const distance = length(reading, line, "distance", "not negative");
    return distance && { ...distance, value: { from: "outside", distance: distance.value } };
  },
  shoulderTop: (reading, item) => length(reading, lineOf(item, "shoulders"), "top", "not negative"),
  shoulderBottom: (reading, item) => length(reading, lineOf(item, "shoulders"), "bottom", "not negative"),
  haunch(reading, item) {
    const line = lineOf(item, "haunch");
    const long = length(reading, line, "long", "positive");
    if (!line || !long) return undefined;
    const haunch: NonNullable<JointFacts["haunch"]>["value"] = { long: long.value };
    set(haunch, "wide", length(reading, line, "wide", "positive")?.value);
    if (factOf(line, "sloped") !== undefined) haunch.sloped = true;
    return { ...long, value: haunch };
  },
  mitre(reading, item) {
    const line = lineOf(item, "mitre");
    if (!line) return undefined;
    const gap = lengthAt(reading, line, factOf(line, "gap"), "not negative");
    return given(line, gap?.at ?? wordOf(line), { gap: gap?.value ?? 0 });
  },
  through(_reading, item) {
    const line = lineOf(item, "through");
    return line && given(line, wordOf(line), { wedged: factOf(line, "wedged") !== undefined });
  },
  bridle(_reading, item) {
    const line = lineOf(item, "bridle");
    return line && given(line, wordOf(line), true);
  },
  twin(reading, item) {
    const gap = length(reading, lineOf(item, "twin"), "gap", "positive");
    return gap && { ...gap, value: { gap: gap.value } };
  },
  peg(reading, item) {
    const line = lineOf(item, "peg");
    const diameter = length(reading, line, "diameter", "positive");
    if (!line || !diameter) return undefined;
    const peg: NonNullable<JointFacts["peg"]>["value"] = {
      diameter: diameter.value,
      draw: length(reading, line, "draw", "not negative")?.value ?? 0,
      count: count(reading, line, "count", 10)?.value ?? 1,
    };
    set(peg, "setback", length(reading, line, "setback", "positive")?.value);
    return { ...diameter, value: peg };
  },
  dowels(reading, item) {
    const line = lineOf(item, "dowels");
    const number = count(reading, line, "count", 40);
    const diameter = length(reading, line, "diameter", "positive");
    const long = length(reading, line, "long", "positive");
    if (!number || !diameter || !long) return undefined;
    return { ...number, value: { count: number.value, diameter: diameter.value, long: long.value } };
  },
  looseTenon(reading, item) {
    const line = lineOf(item, "tenon-size");
    if (line?.statement.word?.text !== "loose-tenon") return undefined;
    const thick = size(reading, line, factOf(line, "thick"));
    const wide = size(reading, line, factOf(line, "wide"));
    const long = length(reading, line, "long", "positive");
    const number = count(reading, line, "count", 4)?.value ?? 1;
    for (const [word, found] of Object.entries({ thick, long }))
      if (!found && !factOf(line, word)) lacks(reading, line, word);
    return thick && long && given(line, wordOf(line), { count: number, thick, ...(wide && { wide }), long });
  },
  glue(_reading, item) {
    const line = lineOf(item, "glue");
    const kind = line && factOf(line, "glue");
    return kind?.name === undefined ? undefined : given(line!, kind, kind.name);
  },
  fit: (reading, item) => length(reading, lineOf(item, "fit"), "clearance"),
};

/** Every fact of a joint, by name. */
export const jointFactNames = Object.keys(readers) as (keyof JointFacts)[];

/** Fills in the facts of a joint from the lines of its block, or of an `end` block. */
export function readJoint(reading: Reading, item: Item, facts: JointFacts): void {
  for (const name of jointFactNames) {
    const found = readers[name](reading, item);
    if (found !== undefined) Object.assign(facts, { [name]: found });
  }
}

/** A turned tenon; one that does not taper to its end, but grows, goes into no hole. */
function readRound(reading: Reading, line: Item): JointFacts["round"] {
  const diameter = length(reading, line, "diameter", "positive");
  const tip = length(reading, line, "tip", "positive");
  const long = size(reading, line, factOf(line, "long"));
  if (!diameter) return undefined;
  if (tip && tip.value > diameter.value) {
    const [a, b] = [diameter, tip].map(({ value }) => printLength(value, reading.unit));
    report(reading, line.source, tip.at, {
      code: "impossible-size",
      message: sentence("impossible-size.tenon-grows", { thick: a, end: b }),
    });
    return undefined;
  }
  const value: NonNullable<JointFacts["round"]>["value"] = { diameter: diameter.value };
  if (tip && tip.value < diameter.value) value.tip = tip.value;
  if (long) value.long = long.value;
  return { ...diameter, value };
}

function lacks(reading: Reading, line: Item, word: string): void {
  report(reading, line.source, wordOf(line), {
    code: "incomplete",
    message: sentence("missing-property.loose-tenon", { word }),
  });
}

/** The line that gives a tenon sawn out of the end; a turned one's gives its diameter instead. */
function tenonLine(item: Item): Item | undefined {
  const line = lineOf(item, "tenon-size");
  return line?.statement.word?.text === "tenon" ? line : undefined;
}

function tenonSize(reading: Reading, item: Item, label: "wide" | "long"): Given<Size> | undefined {
  const line = tenonLine(item);
  return line && size(reading, line, factOf(line, label));
}

const wordOf = ({ statement }: Item) => statement.word ?? statement;
