/**
 * Where a rail runs.
 */
import type { Fix } from "../../grammar/problem.ts";
import type { Fact } from "../../grammar/tree.ts";
import type { Given, PartRef, RailCourse, RailDesign } from "./design.ts";
import type { Item } from "./merge.ts";
import { checked } from "./names.ts";
import { railStation } from "./places.ts";
import { factOf, given, length, lineOf, type Reading, report, spanOf } from "./reading.ts";

/** Where a rail runs. A part that it enters must be another one, and of a pair it must be clear which is meant. */
export function readCourse(reading: Reading, item: Item, rail: RailDesign): Given<RailCourse> | undefined {
  const line = lineOf(item, "course");
  const word = line?.statement.word?.text;
  if (line === undefined) return undefined;
  if (word === "from") return readFromTo(reading, line, rail);
  const fact = factOf(line, "of");
  const of = checked(reading, line, fact, word === "over" ? ["post"] : ["post", "rail"]);
  if (of === undefined || fact === undefined || isItself(reading, line, of, rail)) return undefined;
  const target = reading.names.get(of.value.name);
  if (target !== undefined && "pair" in target && !target.pair) {
    report(reading, line.source, fact, {
      code: "not-a-pair",
      message: `A rail goes ${word} a pair, but ${of.value.name} is one only; go \`from … to …\`, or make ${of.value.name} a pair.`,
      fixes:
        target.file === undefined && line.source.file === undefined
          ? [
              {
                title: `Make ${of.value.name} a pair`,
                edits: [{ start: target.at.end, end: target.at.end, text: " pair" }],
              },
            ]
          : [],
      related: [
        {
          ...target.at,
          message: `${of.value.name} is given here`,
          ...(target.file ? { file: target.file } : {}),
        },
      ],
    });
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

function readFromTo(reading: Reading, line: Item, rail: RailDesign): Given<RailCourse> | undefined {
  const from = checked(reading, line, factOf(line, "from"), ["post", "rail"]);
  const to = checked(reading, line, factOf(line, "to"), ["post", "rail"]);
  const stationFrom = railStation(reading, line, factOf(line, "station-from"));
  const stationTo = railStation(reading, line, factOf(line, "station-to"));
  if (from === undefined || to === undefined) return undefined;
  if (isItself(reading, line, from, rail) || isItself(reading, line, to, rail)) return undefined;
  if (!rail.pair && !(isSided(reading, line, "from", from) && isSided(reading, line, "to", to)))
    return undefined;
  if (from.value.name === to.value.name && from.value.side === to.value.side) {
    report(reading, line.source, to.at, {
      code: "impossible-size",
      message: `This goes from ${from.value.name} to itself; for left to right, write \`across ${from.value.name}\`.`,
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
    message: `${rail.name} cannot enter itself; name the posts or rails that it runs between.`,
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
    message: `${fact.name} is a pair, and this part stands once: say ${fact.name}.left or ${fact.name}.right, or make this part a pair too.`,
    fixes,
  });
  return false;
}

function endWith(fact: Fact, end: string): Fix {
  return { title: `Change to ${fact.name}${end}`, edits: [{ start: fact.end, end: fact.end, text: end }] };
}

function sideTooMany(reading: Reading, line: Item, fact: Fact, name: string, word: string): void {
  report(reading, line.source, fact, {
    code: "which-side",
    message: `A rail goes ${word} both of a pair, from left to right; write ${word} ${name}.`,
    fixes: [
      {
        title: `Change to ${name}`,
        edits: [{ start: fact.start, end: fact.end, text: name }],
        certain: true,
      },
    ],
  });
}
