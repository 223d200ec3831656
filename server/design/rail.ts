/**
 * What the text says of a rail.
 */

import { sentence } from "../../grammar/sentences/sentence.ts";
import type { Fact } from "../../grammar/tree.ts";
import { readCourse } from "./course.ts";
import type { Given, Named, RailDesign, RailTaper } from "./design.ts";
import { endNames, readEnds } from "./ends.ts";
import { leanWithWords } from "./lean-words.ts";
import type { Item, Line } from "./merge.ts";
import { checked, jointName } from "./names.ts";
import { section, timber } from "./places.ts";
import { isPair, set } from "./post.ts";
import {
  allOf,
  count,
  factOf,
  given,
  lean,
  length,
  lengthAt,
  lineOf,
  linesOf,
  listed,
  type Reading,
  report,
  spanOf,
} from "./reading.ts";
import { readRests } from "./rests.ts";
import { readSawn } from "./sawn.ts";
import { readRoundStations } from "./stick.ts";

export function newRail(item: Item, named: Named): RailDesign {
  return {
    ...named,
    is: "rail",
    pair: isPair(item),
    ups: [],
    face: { value: { is: "centred", inset: 0 }, at: named.at, assumed: true },
    stand: { value: "plumb", at: named.at, assumed: true },
    arches: [],
    tapers: [],
    shape: [],
    rests: [],
    ends: [],
    halved: [],
  };
}

export function readRail(reading: Reading, item: Item, rail: RailDesign): void {
  set(rail, "course", readCourse(reading, item, rail));
  readBarSection(reading, item, rail);
  readUps(reading, item, rail);
  readSetting(reading, item, rail);
  rail.arches = linesOf(item, "arch").flatMap((line) => readArch(reading, line) ?? []);
  set(rail, "bow", readBow(reading, item));
  rail.rests = readRests(reading, item);
  rail.tapers = linesOf(item, "taper").flatMap((line) => readTaper(reading, line, rail) ?? []);
  set(rail, "joined", jointName(reading, lineOf(item, "joined")));
  rail.halved = linesOf(item, "halved").flatMap((line) => readHalved(reading, line) ?? []);
  rail.shape = readRoundStations(reading, item);
  readCarried(reading, item, rail);
  rail.ends = readEnds(reading, item, endNames(rail.course?.value));
  set(rail, "timber", timber(reading, lineOf(item, "timber")));
  readSawn(reading, item, rail);
}

/** Whether a rail is said to be carried by one post, which it lies over: told, with the line that says so. */
function onPost(reading: Reading, line: Line, facts: readonly Fact[]): boolean {
  const [fact] = facts;
  const target = reading.names.get(fact?.name ?? "");
  if (!fact || facts.length > 1 || target?.is !== "post") return false;
  const { name } = target;
  const { word } = line.statement;
  report(reading, line.source, fact, {
    code: "wrong-kind",
    message: sentence("wrong-kind.carried-by-post", { name }),
    fixes: [
      {
        title: sentence("fix.write-line", { line: `over ${name}` }),
        edits: [{ start: word?.start ?? fact.start, end: fact.end, text: `over ${name}` }],
      },
    ],
  });
  return true;
}

/** A crest on sticks has no posts: its place is its own. What places it has no meaning in another rail. */
function readCarried(reading: Reading, item: Item, rail: RailDesign): void {
  const line = lineOf(item, "course");
  if (line?.statement.word?.text === "carried") {
    const facts = allOf(line, "stick");
    if (onPost(reading, line, facts)) return;
    const refs = facts.flatMap((fact) => checked(reading, line, fact, ["stick"])?.value ?? []);
    if (refs.length > 0) rail.carried = given(line, spanOf(facts, line.statement), refs);
    set(rail, "back", length(reading, lineOf(item, "back"), "back"));
    set(rail, "rake", leanWithWords(reading, lineOf(item, "rake")));
    set(rail, "long", length(reading, lineOf(item, "long"), "length", "positive"));
    return;
  }
  if (!line) return;
  if (rail.onOne) set(rail, "long", length(reading, lineOf(item, "long"), "length", "positive"));
  for (const facet of rail.onOne ? ["back", "rake", "up"] : ["back", "rake", "long"]) {
    const other = lineOf(item, facet);
    if (other)
      report(reading, other.source, other.statement.word ?? other.statement, {
        code: "given-twice",
        message: rail.onOne
          ? sentence("given-twice.rail-on-post", { post: rail.onOne.value.name, word: facet })
          : sentence("given-twice.crest-place", { word: facet }),
      });
  }
}

/** The section or the diameter of a rail or slat. */
export function readBarSection(
  reading: Reading,
  item: Item,
  bar: Pick<RailDesign, "section" | "round">,
): void {
  const line = lineOf(item, "section");
  if (line === undefined) return;
  if (factOf(line, "diameter") !== undefined)
    set(bar, "round", length(reading, line, "diameter", "positive"));
  else set(bar, "section", section(reading, line, ["thickness", "width"]));
}

/** How often a rail may repeat. */
const MOST_ROWS = 60;

function readUps(reading: Reading, item: Item, rail: RailDesign): void {
  const line = lineOf(item, "up");
  if (line === undefined) return;
  if (line.statement.word?.text === "count") {
    const number = count(reading, line, "count", MOST_ROWS, 2);
    const low = length(reading, line, "low");
    const high = length(reading, line, "high");
    if (number === undefined || low === undefined || high === undefined) return;
    const at = spanOf([factOf(line, "low"), factOf(line, "high")], line.statement);
    const step = (high.value - low.value) / (number.value - 1);
    rail.ups = Array.from({ length: number.value }, (_, n) => given(line, at, low.value + n * step));
  } else {
    const ups = listed(reading, line, "up", MOST_ROWS, "rail-repeats");
    rail.ups = ups.flatMap((fact) => lengthAt(reading, line, fact) ?? []);
  }
  rail.ups.sort((a, b) => a.value - b.value);
}

function readSetting(reading: Reading, item: Item, rail: RailDesign): void {
  const fall = lineOf(item, "fall");
  if (fall?.statement.word?.text === "slope") set(rail, "slope", lean(reading, fall, "angle"));
  else set(rail, "fall", length(reading, fall, "fall"));
  const lie = lineOf(item, "lie");
  const flat = lie && factOf(lie, "flat");
  if (lie !== undefined && flat !== undefined) rail.flat = given(lie, flat, true);
  const face = lineOf(item, "face");
  const where = face && factOf(face, "face");
  if (face !== undefined && where !== undefined) {
    const inset = length(reading, face, "inset");
    if (where.name === "flush" || where.name === "centred")
      rail.face = given(face, where, { is: where.name, inset: 0 });
    else if (inset !== undefined) rail.face = { ...inset, value: { is: "inset", inset: inset.value } };
  }
  const stand = lineOf(item, "stand");
  const how = stand && factOf(stand, "stand");
  if (stand !== undefined && how !== undefined)
    rail.stand = given(stand, how, how.name === "plumb" ? "plumb" : "with posts");
}

function readHalved(reading: Reading, line: Item): RailDesign["halved"][number] | undefined {
  const over = checked(reading, line, factOf(line, "over"), ["rail"]);
  const joint = jointName(reading, line);
  return over && { ...over, value: { over: over.value, ...(joint && { joint: joint.value }) } };
}

function readArch(reading: Reading, line: Item): RailDesign["arches"][number] | undefined {
  const rise = length(reading, line, "rise", "positive");
  const edge = factOf(line, "edge")?.name;
  if (rise === undefined || (edge !== "below" && edge !== "above")) return undefined;
  return { ...rise, value: { rise: rise.value, edge } };
}

/** The bow of a rail or slat. */
export function readBow(reading: Reading, item: Item): RailDesign["bow"] {
  const line = lineOf(item, "bow");
  const rise = length(reading, line, "rise");
  const towards = line && factOf(line, "towards")?.name;
  if (rise === undefined) return undefined;
  if (towards !== "back" && towards !== "front" && towards !== "out" && towards !== "in") return undefined;
  return { ...rise, value: { rise: rise.value, towards } };
}

function readTaper(
  reading: Reading,
  line: Item,
  { section: squared }: RailDesign,
): Given<RailTaper> | undefined {
  const round = length(reading, line, "diameter", "positive");
  const to = round
    ? { ...round, value: { first: round.value, second: round.value } }
    : section(reading, line, ["thickness", "width"]);
  if (round && squared) {
    report(reading, line.source, round.at, {
      code: "incomplete",
      message: sentence("wrong-kind.taper"),
    });
    return undefined;
  }
  const towards = factOf(line, "towards")?.name;
  if (to === undefined || (towards !== "end" && towards !== "ends")) return undefined;
  return { ...to, value: { section: to.value, towards } };
}
