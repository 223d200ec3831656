/**
 * The values that the text names with `let`.
 */

import type { Related, Span } from "../../grammar/problem.ts";
import { sentence } from "../../grammar/sentences/sentence.ts";
import { finish, type Steps } from "../../grammar/steps.ts";
import type { Value } from "../../grammar/tree.ts";
import type { LetDesign, Named, Quantity } from "./design.ts";
import { workOut } from "./expressions.ts";
import type { Item, Source } from "./merge.ts";
import { type Amount, alike, as } from "./quantity.ts";
import { factOf, given, type Reading, report, scopeOf, spanOf } from "./reading.ts";
import { printQuantity } from "./units.ts";
import { workedOut } from "./values.ts";

interface Entry {
  item: Item;
  design: LetDesign;
  state: "waiting" | "being worked out" | "done";
  amount?: Amount;
  /** Somebody takes it for a length. */
  length?: true;
}

export interface Lets {
  /** What a name in an expression comes to: a let, or else a worked-out value. */
  named(value: Value & { is: "name" }, source: Source, depth: number): Amount | undefined;
  lengthTaken(value: Value): void;
  add(item: Item, design: LetDesign): void;
  /** Works out every let, in the order of the text; rests after each. */
  workOut(): Steps<void>;
  /** Gives every let its value and looks at ranges; to be called when all else has been read. */
  finish(): void;
}

/** More members of a circle than these are not named. */
const mostMembers = 12;

/** The lets of one chair. Each is worked out when first asked for; a circle is reported once and has no value. */
export function makeLets(reading: Reading): Lets {
  const entries = new Map<string, Entry>();
  const path: Entry[] = [];

  function amountOf(entry: Entry, asked: Value, source: Source, depth: number): Amount | undefined {
    if (entry.state === "being worked out") {
      circle(entry, asked, source);
      return undefined;
    }
    if (entry.state === "waiting") settle(entry, depth);
    return entry.amount;
  }

  /** Settles an entry after those that it is worked out from, one by one, so that a long row of them nests no deeper than a short one. */
  function* settleInOrder(first: Entry): Steps<void> {
    const rows = [first];
    const opened = new Set<Entry>();
    for (let entry = rows.at(-1); entry !== undefined; entry = rows.at(-1)) {
      const needs = opened.has(entry) ? [] : neededBy(entry);
      opened.add(entry);
      const circle = needs.find((each) => opened.has(each));
      if (circle !== undefined) settle(circle, 0);
      const waiting = needs.filter((each) => each.state === "waiting" && !opened.has(each));
      if (waiting.length > 0) {
        rows.push(...waiting);
        yield;
        continue;
      }
      rows.pop();
      if (entry.state === "waiting") settle(entry, 0);
      yield;
    }
  }

  /** The lets named in an entry's expression that are not worked out yet. */
  function neededBy({ item }: Entry): Entry[] {
    const from = factOf(item, "value")?.value;
    if (from === undefined) return [];
    return namesIn(from).flatMap((name) => {
      const entry = entries.get(name);
      return entry?.state === "waiting" ? [entry] : [];
    });
  }

  function settle(entry: Entry, depth: number): void {
    entry.state = "being worked out";
    path.push(entry);
    const value = factOf(entry.item, "value")?.value;
    const reader = reading.reader;
    reading.reader = entry.design.name;
    const amount = value && workOut(value, scopeOf(reading, entry.item.source), depth);
    reading.reader = reader;
    path.pop();
    entry.state = "done";
    if (amount !== undefined) entry.amount = amount;
  }

  function circle(entry: Entry, asked: Span, source: Source): void {
    const members = path.slice(path.indexOf(entry));
    const shown = members.length > mostMembers ? members.slice(0, mostMembers) : members;
    const way = shown
      .map((each) => each.design.name)
      .concat(shown === members ? [] : ["…"], entry.design.name);
    const names = way.join(" → ");
    const related = shown.map((each): Related => {
      const { at, name, file } = each.design;
      return {
        start: at.start,
        end: at.end,
        message: sentence("related.given-here", { name }),
        ...(file ? { file } : {}),
      };
    });
    const message =
      members.length === 1
        ? sentence("circular-value.itself", { name: entry.design.name })
        : sentence("circular-value", { names });
    report(reading, source, asked, { code: "circular-value", message, related });
  }

  /** The names that are lengths if this expression is one. */
  function lengthTaken(taken: Value): void {
    const waiting = [taken];
    for (let value = waiting.pop(); value !== undefined; value = waiting.pop()) {
      if (value.is !== "name") {
        waiting.push(...lengthsIn(value));
        continue;
      }
      const entry = entries.get(value.name);
      if (entry === undefined || entry.length) continue;
      entry.length = true;
      const from = factOf(entry.item, "value")?.value;
      if (from !== undefined) waiting.push(from);
    }
  }

  function* workOutAll(): Steps<void> {
    for (const entry of entries.values()) {
      if (entry.state === "waiting") yield* settleInOrder(entry);
    }
  }

  return {
    named(value, source, depth) {
      const entry = entries.get(value.name);
      if (entry === undefined) return workedOut(reading, value, source);
      const used = reading.letsUsed.get(reading.reader) ?? new Set();
      reading.letsUsed.set(reading.reader, used.add(value.name));
      if (entry.state === "waiting" && path.length === 0) finish(settleInOrder(entry));
      return amountOf(entry, value, source, depth);
    },
    lengthTaken,
    add(item, design) {
      entries.set(design.name, { item, design, state: "waiting" });
    },
    workOut: workOutAll,
    finish() {
      for (const entry of entries.values()) finishOne(reading, entry);
    },
  };
}

/** Every name in an expression. */
function namesIn(whole: Value): string[] {
  const names: string[] = [];
  const waiting = [whole];
  for (let value = waiting.pop(); value !== undefined; value = waiting.pop()) {
    if (value.is === "name") names.push(value.name);
    else if (value.is === "group" || value.is === "negate") waiting.push(value.of);
    else if (value.is === "call") waiting.push(...value.args);
    else if (value.is === "binary") waiting.push(value.left, value.right);
    else if (value.is === "share") waiting.push(value.share);
  }
  return names;
}

/** The parts of an expression that are lengths when the whole is one. */
function lengthsIn(value: Value): Value[] {
  if (value.is === "group" || value.is === "negate") return [value.of];
  if (value.is === "call") return value.args;
  if (value.is !== "binary") return [];
  const { op, left, right } = value;
  if (op === "+" || op === "-") return [left, right];
  return op === "*" && isPlain(left) ? [right] : [left];
}

const isPlain = (value: Value): boolean =>
  value.is === "number" ||
  (value.is === "group" && isPlain(value.of)) ||
  (value.is === "negate" && isPlain(value.of));

function finishOne(reading: Reading, { item, design, amount, length: taken }: Entry): void {
  const fact = factOf(item, "value");
  if (fact === undefined || amount === undefined) return;
  const low = bound(reading, item, "low");
  const high = bound(reading, item, "high");
  const length = taken || low?.dimension === "length" || high?.dimension === "length" ? true : undefined;
  const value = settled(amount, length);
  design.value = given(item, fact, value);
  if (low === undefined || high === undefined) return;
  const at = spanOf([factOf(item, "low"), factOf(item, "high")], item.statement);
  const lowest = comparable(reading, item, low, amount, length);
  if (lowest === undefined) return;
  const highest = comparable(reading, item, high, amount, length);
  if (highest === undefined) return;
  if (lowest > highest) {
    report(reading, item.source, at, {
      code: "let-out-of-range",
      message: sentence("impossible-size.let-range", { name: design.name }),
    });
    return;
  }
  design.within = given(item, at, { low: lowest, high: highest });
  checkRange(reading, item, design, value, { low: lowest, high: highest });
}

function settled(amount: Amount, length: true | undefined): Quantity {
  if (length && amount.dimension === "number") {
    const mm = as(amount, "length");
    if (mm !== undefined) return { number: mm, dimension: "length" };
  }
  return { number: amount.number, dimension: amount.dimension };
}

function bound(reading: Reading, item: Item, label: string): Amount | undefined {
  const value = factOf(item, label)?.value;
  return value && workOut(value, scopeOf(reading, item.source));
}

/** The bound in the value's own dimension; a length where the value is one. */
function comparable(
  reading: Reading,
  item: Item,
  end: Amount,
  amount: Amount,
  length: true | undefined,
): number | undefined {
  const pair = alike(end, amount);
  if ("mismatch" in pair) {
    report(reading, item.source, spanOf([factOf(item, "low"), factOf(item, "high")], item.statement), {
      code: "wrong-unit",
      message: sentence("wrong-unit.range", { Mismatch: pair.mismatch }),
    });
    return undefined;
  }
  return settled(pair[0], length).number;
}

function checkRange(
  reading: Reading,
  item: Item,
  design: LetDesign,
  value: Quantity,
  range: { low: number; high: number },
): void {
  const slack = 1e-9 * Math.max(1, Math.abs(value.number));
  if (value.number >= range.low - slack && value.number <= range.high + slack) return;
  const print = (number: number) => printQuantity({ number, dimension: value.dimension }, reading.unit);
  const [low, high, found] = [print(range.low), print(range.high), print(value.number)];
  const fact = factOf(item, "value");
  const nearer = value.number < range.low ? "low" : "high";
  const endFact = factOf(item, nearer);
  const problem = {
    code: "let-out-of-range",
    message: sentence("let-out-of-range", { name: design.name, found, low, high }),
    subject: design.name,
    found,
    allowed: sentence("figure.between", { low, high }),
    ...(fact && endFact
      ? {
          fixes: [
            {
              title: sentence("fix.set-to", { to: nearer === "low" ? low : high }),
              edits: [
                {
                  start: fact.start,
                  end: fact.end,
                  text: item.source.text.slice(endFact.start, endFact.end),
                },
              ],
            },
          ],
        }
      : {}),
  };
  report(reading, item.source, fact ?? item.statement, problem);
}

/** A let as it is before it is worked out. */
export function newLet(item: Item, named: Named): LetDesign {
  const fact = factOf(item, "value");
  const expression = spanOf([fact], named.at);
  return { ...named, is: "let", expression };
}
