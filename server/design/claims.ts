/**
 * What the text claims and remarks: `require`, `limit`, `accept`, `note`.
 */

import { sentence } from "../../grammar/sentences/sentence.ts";
import type { Value } from "../../grammar/tree.ts";
import type {
  AcceptDesign,
  Bound,
  Dimension,
  Given,
  LimitDesign,
  NoteDesign,
  RequireDesign,
} from "./design.ts";
import { jointName } from "./identity.ts";
import { type Item, subjectText } from "./merge.ts";
import { kindOf } from "./names.ts";
import { type Amount, alike, as } from "./quantity.ts";
import { amountOf, factOf, given, type Reading, report, spanOf, wrongUnit } from "./reading.ts";
import { couldBe, dimensionOf } from "./values.ts";

export function readRequire(reading: Reading, item: Item): RequireDesign | undefined {
  const fact = factOf(item, "subject");
  if (fact?.value === undefined) return undefined;
  const { value } = fact;
  const named = subjectText(item.statement);
  const subject = named ?? item.source.text.slice(fact.start, fact.end);
  const design: RequireDesign = {
    subject,
    subjectAt: { start: fact.start, end: fact.end },
    statement: item.statement,
  };
  if (item.source.file !== undefined) design.file = item.source.file;
  const plain = value.is === "name" && !isLet(reading, value.name);
  let wants: Amount | Dimension | undefined;
  if (plain) {
    if (!couldBe(reading, value, item.source)) return undefined;
    wants = dimensionOf(value.name) ?? "angle";
  } else {
    const computed = amountOf(reading, item, value);
    if (computed === undefined) return undefined;
    design.computed = { number: computed.number, dimension: computed.dimension };
    wants = computed;
  }
  const bound = readBound(reading, item, wants);
  if (bound === undefined) return design;
  if (design.computed !== undefined && bound.value.dimension === "length" && typeof wants !== "string") {
    const mm = as(wants, "length");
    if (mm !== undefined) design.computed = { number: mm, dimension: "length" };
  }
  const tolerance = factOf(item, "tolerance")?.value;
  if (tolerance !== undefined) {
    const near = nearnessOf(reading, item, tolerance, bound.value.dimension);
    if (near !== undefined) design.bound = { ...bound, value: { ...bound.value, within: near } };
    return design;
  }
  const strict = factOf(item, "below") !== undefined || factOf(item, "above") !== undefined;
  design.bound = strict ? { ...bound, value: { ...bound.value, strict } } : bound;
  return design;
}

/** How near to a figure a value must be, in the figure's dimension. */
function nearnessOf(reading: Reading, item: Item, value: Value, dimension: Dimension): number | undefined {
  const amount = amountOf(reading, item, value);
  if (amount === undefined) return undefined;
  const number = as(amount, dimension);
  if (number === undefined) wrongUnit(reading, item, value, amount, dimension);
  else if (dimension === "length" && amount.dimension === "number") reading.lengthTaken(value);
  return number === undefined ? undefined : Math.abs(number);
}

function isLet(reading: Reading, name: string): boolean {
  const declared = reading.names.get(name);
  return declared !== undefined && kindOf(declared) === "let";
}

type Ends = Bound & { dimension: Dimension; bare?: number };

const lowLabels = ["low", "above", "exactly", "figure"];
const highLabels = ["high", "below", "exactly", "figure"];
const sides = [
  ["low", lowLabels],
  ["high", highLabels],
] as const;

/** The ends of a bound, in the dimension wanted; when none is, in their own. */
function readBound(
  reading: Reading,
  item: Item,
  wants: Amount | Dimension | undefined,
): Given<Ends> | undefined {
  const facts = [...new Set([...lowLabels, ...highLabels])].map((label) => factOf(item, label));
  const at = spanOf(facts, item.statement);
  const found = sides.flatMap(([side, labels]) => {
    const value = labels.map((label) => factOf(item, label)).find((fact) => fact !== undefined)?.value;
    return value === undefined ? [] : [{ side, value, amount: amountOf(reading, item, value) }];
  });
  const wanted =
    wants ?? found.find(({ amount }) => amount && amount.dimension !== "number")?.amount?.dimension;
  let ends: Ends | undefined;
  for (const { side, value, amount } of found) {
    if (amount === undefined) return undefined;
    const held = asWanted(amount, wanted);
    if (held === undefined) {
      wrongUnit(
        reading,
        item,
        value,
        amount,
        typeof wanted === "string" ? wanted : (wanted?.dimension ?? "number"),
      );
      return undefined;
    }
    if (held.dimension === "length" && amount.dimension === "number") reading.lengthTaken(value);
    ends = { ...ends, dimension: held.dimension, [side]: held.number };
    if (held.dimension === "number" && amount.bare !== undefined) ends.bare = amount.bare;
  }
  if (ends === undefined) return undefined;
  if (ends.low !== undefined && ends.high !== undefined && ends.low > ends.high) {
    report(reading, item.source, at, {
      code: "impossible-size",
      message: sentence("impossible-size.range"),
    });
    return undefined;
  }
  return given(item, at, ends);
}

function asWanted(amount: Amount, wanted: Amount | Dimension | undefined): Amount | undefined {
  if (wanted === undefined) return amount;
  if (typeof wanted === "string") {
    const number = as(amount, wanted);
    return number === undefined ? undefined : { ...amount, number, dimension: wanted };
  }
  const pair = alike(amount, wanted);
  return "mismatch" in pair ? undefined : pair[0];
}

/** A changed figure of a rule. A figure without a unit keeps what one of it would be as a length, for the rule to take. */
export function readLimit(reading: Reading, item: Item): LimitDesign | undefined {
  const fact = factOf(item, "rule");
  if (fact?.name === undefined) return undefined;
  const limit: LimitDesign = {
    rule: fact.name,
    ruleAt: { start: fact.start, end: fact.end },
    statement: item.statement,
  };
  if (item.source.file !== undefined) limit.file = item.source.file;
  const bound = readShares(reading, item) ?? readBound(reading, item, undefined);
  if (bound !== undefined) limit.bound = bound;
  return limit;
}

/** `to 1/4 of rail`: a share of whatever the rule measures by. */
function readShares(reading: Reading, item: Item): Given<Ends> | undefined {
  const ends: Ends = { dimension: "share" };
  const facts = [...new Set([...lowLabels, ...highLabels])].map((label) => factOf(item, label));
  if (!facts.some((fact) => fact?.value?.is === "share")) return undefined;
  for (const [side, labels] of sides) {
    const value = labels.map((label) => factOf(item, label)).find((found) => found !== undefined)?.value;
    if (value === undefined) continue;
    const amount = amountOf(reading, item, value.is === "share" ? value.share : value);
    if (amount !== undefined) ends[side] = amount.number;
  }
  return given(item, spanOf(facts, item.statement), ends);
}

export function readAccept(item: Item): AcceptDesign | undefined {
  const rule = factOf(item, "rule");
  if (rule?.name === undefined) return undefined;
  const accept: AcceptDesign = {
    rule: rule.name,
    ruleAt: { start: rule.start, end: rule.end },
    statement: item.statement,
  };
  const on = factOf(item, "on");
  const to = factOf(item, "to");
  if (on?.name !== undefined) {
    accept.on = given(
      item,
      spanOf([on, to], on),
      to?.name === undefined ? on.name : jointName(on.name, to.name),
    );
  }
  const because = factOf(item, "because");
  if (because?.text !== undefined) accept.because = given(item, because, because.text);
  return accept;
}

export function readNote(item: Item): NoteDesign {
  const note: NoteDesign = { statement: item.statement };
  const date = factOf(item, "date");
  if (date?.text !== undefined) note.date = given(item, date, date.text);
  const text = factOf(item, "text");
  if (text?.text !== undefined) note.text = given(item, text, text.text);
  return note;
}
