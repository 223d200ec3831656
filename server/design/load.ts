/**
 * Reading what the text says of use: `strength`, `load`, `climate`.
 */

import type { Fix } from "../../grammar/problem.ts";
import { sentence } from "../../grammar/sentences/sentence.ts";
import type { Fact } from "../../grammar/tree.ts";
import type {
  ClimateDesign,
  Design,
  Given,
  LoadDesign,
  Named,
  PushDesign,
  PushTarget,
  PushWay,
  StopSide,
  StrengthLevel,
} from "./design.ts";
import type { Item } from "./merge.ts";
import { checked } from "./names.ts";
import { railStation } from "./places.ts";
import { set } from "./post.ts";
import {
  allOf,
  amountOf,
  count,
  factOf,
  figure,
  given,
  length,
  lineOf,
  linesOf,
  type Reading,
  report,
  spanOf,
  wrongUnit,
} from "./reading.ts";
import { POUND, printQuantity } from "./units.ts";

/** As often as a load may come. */
const MOST_TIMES = 100_000_000;
/** Standard gravity, m/s². */
const GRAVITY = 9.80665;
/** The largest force that is taken for one on a chair, N: the weight of a car. */
const MOST_FORCE = 20_000;
/** Wood holds no more water than this within its cells: what is over it swells nothing. */
const SATURATED = 0.3;
const MOST_CLIMATE = 0.95;

export const newLoad = (named: Named): LoadDesign => ({ ...named, is: "load", pushes: [] });

export function readLoad(reading: Reading, item: Item, load: LoadDesign): void {
  load.pushes = linesOf(item, "push").flatMap((line) => readPush(reading, line) ?? []);
  const stops = lineOf(item, "stops");
  const sides = stops ? allOf(stops, "side") : [];
  if (stops && sides.length > 0) {
    const named = [...new Set(sides.map(({ name }) => name as StopSide))];
    load.stops = given(stops, spanOf(sides, stops.statement), named);
  }
  set(load, "times", count(reading, lineOf(item, "times"), "times", MOST_TIMES));
}

function readPush(reading: Reading, line: Item): PushDesign | undefined {
  const force = readForce(reading, line);
  const way = factOf(line, "way");
  const target = readTarget(reading, line);
  if (force === undefined || way?.name === undefined || target === undefined) return undefined;
  const push = { force, way: given(line, way, way.name as PushWay), target };
  return hasSide(reading, line, push) ? push : undefined;
}

/** In newtons; a weight offers the force that it is. */
function readForce(reading: Reading, line: Item): Given<number> | undefined {
  const fact = factOf(line, "force");
  if (fact?.value === undefined) return undefined;
  const amount = amountOf(reading, line, fact.value);
  if (amount === undefined) return undefined;
  if (amount.dimension === "mass") {
    const force = { number: amount.number * GRAVITY, dimension: "force" } as const;
    const pounds = `${Math.round(amount.number / POUND)}lbf`;
    const text = reading.unit === "in" ? pounds : `${Math.round(force.number)}N`;
    report(reading, line.source, fact, {
      code: "wrong-unit",
      message: sentence("wrong-unit.push-weight", { force: printQuantity(force, reading.unit) }),
      fixes: [
        {
          title: sentence("fix.change-to", { text }),
          edits: [{ start: fact.start, end: fact.end, text }],
        },
      ],
    });
    return undefined;
  }
  if (amount.dimension !== "force") {
    wrongUnit(reading, line, fact.value, amount, "force");
    return undefined;
  }
  if (amount.number > 0 && amount.number <= MOST_FORCE) return given(line, fact, amount.number);
  const print = (number: number) => printQuantity({ number, dimension: "force" }, reading.unit);
  report(reading, line.source, fact, {
    code: "impossible-size",
    message:
      amount.number > 0
        ? sentence("impossible-size.push-too-much", { found: print(amount.number), most: print(MOST_FORCE) })
        : sentence("impossible-size.push-nothing", { found: print(amount.number) }),
  });
  return undefined;
}

function readTarget(reading: Reading, line: Item): Given<PushTarget> | undefined {
  const fact = factOf(line, "target");
  if (fact?.name === undefined) return undefined;
  const along = factOf(line, "along");
  const level = [factOf(line, "across"), factOf(line, "behind")].find((each) => each !== undefined);
  if (fact.name === "seat") {
    if (along) return misplaced(reading, line, along, sentence("wrong-kind.place-on-seat"));
    const out = length(reading, line, "across")?.value;
    const back = length(reading, line, "behind")?.value;
    return given(line, fact, {
      is: "seat",
      ...(out !== undefined && { out }),
      ...(back !== undefined && { back }),
    });
  }
  const ref = checked(reading, line, fact, ["post", "rail", "slat"]);
  if (ref === undefined) return undefined;
  const kind = reading.names.get(stem(ref.value.name))?.is;
  if (kind !== "post" && kind !== "rail" && kind !== "slat") return undefined;
  if (level) return misplaced(reading, line, level, sentence(`wrong-kind.place-on-${kind}`));
  if (kind === "post") {
    const height = length(reading, line, "along", "not negative")?.value;
    return {
      ...ref,
      value: { is: "member", part: ref.value, kind, ...(height !== undefined && { height }) },
    };
  }
  const station = along && railStation(reading, line, along)?.value;
  return { ...ref, value: { is: "member", part: ref.value, kind, ...(station && { station }) } };
}

/** `ladder` of `ladder.2`. */
const stem = (name: string): string => name.split(".")[0] ?? name;

function misplaced(reading: Reading, line: Item, at: Fact, message: string): undefined {
  report(reading, line.source, at, { code: "wrong-kind", message });
}

/** Whether `out` and `in` mean something of what is pushed; says so if not. */
function hasSide(reading: Reading, line: Item, { way, target }: PushDesign): boolean {
  if (way.value !== "out" && way.value !== "in") return true;
  const { value } = target;
  const declared = value.is === "member" ? reading.names.get(stem(value.part.name)) : undefined;
  if (declared && "pair" in declared && declared.pair) return true;
  const said = { way: way.value };
  report(reading, line.source, way.at, {
    code: "wrong-kind",
    message:
      value.is === "seat"
        ? sentence("wrong-kind.push-seat-side", said)
        : sentence("wrong-kind.push-side", { part: value.part.name, ...said }),
    fixes: ["left", "right"].map(
      (side): Fix => ({
        title: sentence("fix.change-to", { text: side }),
        edits: [{ start: way.at.start, end: way.at.end, text: side }],
      }),
    ),
  });
  return false;
}

/** A push on a seat that the chair does not have. */
export function checkLoads(reading: Reading, items: readonly Item[], design: Design): void {
  if (design.seat) return;
  for (const item of items) {
    if (item.statement.word?.text !== "load") continue;
    for (const line of linesOf(item, "push")) {
      const target = factOf(line, "target");
      if (target?.name === "seat")
        report(reading, line.source, target, {
          code: "unknown-name",
          message: sentence("unknown-name.no-seat-to-push"),
        });
    }
  }
}

/** For how hard a use. */
export function readStrength(item: Item | undefined): Given<StrengthLevel> | undefined {
  const level = item && factOf(item, "level");
  return item && level?.name !== undefined ? given(item, level, level.name as StrengthLevel) : undefined;
}

/** Between what the chair lives; nothing when it is not said or is impossible, which is reported. */
export function readClimate(reading: Reading, item: Item | undefined): Given<ClimateDesign> | undefined {
  if (item === undefined) return undefined;
  const [low, high] = [figure(reading, item, "low", "share"), figure(reading, item, "high", "share")];
  if (low === undefined || high === undefined) return undefined;
  const word = factOf(item, "moisture") ?? factOf(item, "humidity");
  const of = word?.name === "moisture" ? "moisture" : "humidity";
  const at = spanOf([factOf(item, "low"), factOf(item, "high")], item.statement);
  const percent = (share: number) => `${Number((share * 100).toFixed(1))}%`;
  const refuse = (message: string, fixes: Fix[] = []): undefined => {
    report(reading, item.source, at, {
      code: "impossible-size",
      message,
      ...(fixes.length > 0 && { fixes }),
    });
  };
  if (low.value > high.value)
    return refuse(sentence("impossible-size.climate-order"), [
      {
        title: sentence("fix.write-plain", { text: `${percent(high.value)} to ${percent(low.value)}` }),
        edits: [{ start: at.start, end: at.end, text: `${percent(high.value)} to ${percent(low.value)}` }],
      },
    ]);
  if (low.value < 0 || high.value > MOST_CLIMATE)
    return refuse(
      sentence("impossible-size.climate-beyond", {
        low: percent(low.value),
        high: percent(high.value),
        most: percent(MOST_CLIMATE),
      }),
    );
  if (of === "moisture" && word && high.value >= SATURATED) {
    report(reading, item.source, at, {
      code: "impossible-size",
      severity: "warning",
      message: sentence("impossible-size.climate-wet", { high: percent(high.value) }),
      fixes: [
        {
          title: sentence("fix.change-to", { text: "humidity" }),
          edits: [{ start: word.start, end: word.end, text: "humidity" }],
        },
      ],
    });
  }
  return given(item, at, { of, low: low.value, high: high.value });
}
