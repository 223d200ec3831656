/**
 * Where a rail runs.
 */

import type { Fix } from "../../grammar/problem.ts";
import { sentence } from "../../grammar/sentences/sentence.ts";
import type { Fact } from "../../grammar/tree.ts";
import type { Declared, Given, PartRef, RailCourse, RailDesign } from "./design.ts";
import type { Item } from "./merge.ts";
import { checked } from "./names.ts";
import { railStation } from "./places.ts";
import { factOf, given, length, lineOf, type Reading, report, spanOf } from "./reading.ts";

/** Where a rail runs. A part that it enters must be another one, and of a pair it must be clear which is meant. */
export function readCourse(reading: Reading, item: Item, rail: RailDesign): Given<RailCourse> | undefined {
  const line = lineOf(item, "course");
  const word = line?.statement.word?.text;
  if (line === undefined) return undefined;
  if (word === "carried") return undefined;
  if (word === "from") return readFromTo(reading, line, rail);
  const fact = factOf(line, "of");
  const of = checked(reading, line, fact, word === "over" ? ["post"] : ["post", "rail"]);
  if (of === undefined || fact === undefined || isItself(reading, line, of, rail)) return undefined;
  const target = reading.names.get(of.value.name);
  if (target !== undefined && "pair" in target && !target.pair) {
    // Over one post it lies across the chair, as long as it says.
    if (word === "over" && lineOf(item, "long")) {
      rail.onOne = of;
      return undefined;
    }
    tellOneOnly(reading, line, { fact, word: word ?? "across", of, target, rail });
    return undefined;
  }
  if (of.value.side !== undefined) sideTooMany(reading, line, fact, of.value.name, word ?? "across");
  if (word === "over") {
    const overhang = length(reading, lineOf(item, "overhang"), "length")?.value ?? 0;
    return { ...of, value: { is: "over", of: of.value, overhang } };
  }
  const station = railStation(reading, line, factOf(line, "station"));
  return {
    ...of,
    value: station ? { is: "across", of: of.value, station: station.value } : { is: "across", of: of.value },
  };
}

interface OneOnly {
  fact: Fact;
  word: string;
  of: Given<PartRef>;
  target: Declared;
  rail: RailDesign;
}

/** Reports that a part which stands once is used as a pair: once, however many rails run across it, since one `pair` mends them all. */
function tellOneOnly(reading: Reading, line: Item, { fact, word, of, target, rail }: OneOnly): void {
  const { source } = line;
  const told = reading.problems.find(
    ({ code, related }) =>
      code === NOT_A_PAIR &&
      related?.some((each) => each.file === target.file && each.start === target.at.start),
  );
  if (told && source.file === undefined) {
    const message = sentence("related.so-with", { part: rail.name });
    told.related?.push({ start: fact.start, end: fact.end, message });
    return;
  }
  const post = of.value.name;
  const long = reading.unit === "in" ? 12 : reading.unit === "cm" ? 30 : 300;
  const isOurs = target.file === undefined && source.file === undefined;
  const { end } = target.at;
  report(reading, source, fact, {
    code: NOT_A_PAIR,
    message:
      word === "over"
        ? sentence("over-one.pair", { post, long })
        : sentence("across-one.pair", { way: word, post }),
    fixes: isOurs
      ? [{ title: sentence("fix.make-pair", { part: post }), edits: [{ start: end, end, text: " pair" }] }]
      : [],
    related: [
      {
        ...target.at,
        message: sentence("related.given-here", { name: post }),
        ...(target.file ? { file: target.file } : {}),
      },
    ],
  });
}

const NOT_A_PAIR = "not-a-pair";

function readFromTo(reading: Reading, line: Item, rail: RailDesign): Given<RailCourse> | undefined {
  const from = checked(reading, line, factOf(line, "from"), ["post", "rail", "bow"]);
  const to = checked(reading, line, factOf(line, "to"), ["post", "rail", "bow"]);
  const stationFrom = railStation(reading, line, factOf(line, "station-from"));
  const stationTo = railStation(reading, line, factOf(line, "station-to"));
  if (from === undefined || to === undefined) return undefined;
  if (isItself(reading, line, from, rail) || isItself(reading, line, to, rail)) return undefined;
  if (!rail.pair && !(isSided(reading, line, "from", from) && isSided(reading, line, "to", to)))
    return undefined;
  if (from.value.name === to.value.name && from.value.side === to.value.side) {
    report(reading, line.source, to.at, {
      code: "impossible-size",
      message: sentence("impossible-size.to-itself", { part: from.value.name }),
    });
    return undefined;
  }
  const course: RailCourse = { is: "from-to", from: from.value, to: to.value };
  if (stationFrom !== undefined) course.stationFrom = stationFrom.value;
  if (stationTo !== undefined) course.stationTo = stationTo.value;
  return given(line, spanOf([factOf(line, "from"), factOf(line, "to")], line.statement), course);
}

function isItself(reading: Reading, line: Item, ref: Given<PartRef>, rail: RailDesign): boolean {
  if (ref.value.name !== rail.name) return false;
  report(reading, line.source, ref.at, {
    code: "circular-value",
    message: sentence("impossible-size.enter-itself", { rail: rail.name }),
  });
  return true;
}

/**
 * Whether it is clear which of a pair is meant by a part that stands once: it must say so. `label` is the reference's fact.
 */
export function isSided(reading: Reading, line: Item, label: string, ref: Given<PartRef>): boolean {
  const fact = factOf(line, label);
  const target = reading.names.get(ref.value.name);
  if (fact?.name === undefined || ref.value.side !== undefined || target === undefined) return true;
  if (!("pair" in target) || !target.pair) return true;
  const fixes = (["left", "right"] as const).map((side) => endWith(fact, `.${side}`));
  report(reading, line.source, fact, {
    code: "which-side",
    message: sentence("which-of-pair", { part: fact.name }),
    fixes,
  });
  return false;
}

function endWith(fact: Fact, end: string): Fix {
  return {
    title: sentence("fix.change-to", { text: `${fact.name}${end}` }),
    edits: [{ start: fact.end, end: fact.end, text: end }],
  };
}

function sideTooMany(reading: Reading, line: Item, fact: Fact, name: string, word: string): void {
  report(reading, line.source, fact, {
    code: "which-side",
    message: sentence("which-of-pair.both", { way: word, part: name }),
    fixes: [
      {
        title: sentence("fix.change-to", { text: name }),
        edits: [{ start: fact.start, end: fact.end, text: name }],
        certain: true,
      },
    ],
  });
}
