/**
 * How the facts of a line become figures: one function a kind of fact, each saying itself what is wrong with it.
 */

import type { Fix, Problem, Related, Severity, Span } from "../../grammar/problem.ts";
import { sentence } from "../../grammar/sentences/sentence.ts";
import type { Fact, Value } from "../../grammar/tree.ts";
import type { Declared, Dimension, Given, LengthUnit, Quantity } from "./design.ts";
import { type Scope, workOut } from "./expressions.ts";
import type { Item, Line, Source } from "./merge.ts";
import { type Amount, as, called } from "./quantity.ts";
import { LONGEST, type TooLong } from "./too-long.ts";
import { printLength } from "./units.ts";

/** What goes along while a design is read. */
export interface Reading {
  unit: LengthUnit;
  problems: Problem[];
  /** Lengths of this file that no chair has. */
  tooLong: TooLong[];
  /** Problems that stand in other files. */
  foreign: { source: Source; problem: Problem }[];
  names: Map<string, Declared>;
  known: ReadonlyMap<string, Quantity>;
  wanted: Map<string, Span>;
  /** Which parts' facts want a value. */
  wantedBy: Map<string, Set<string>>;
  /** Which lets a part's facts, or another let, use. */
  letsUsed: Map<string, Set<string>>;
  /** The part being read, or a let or claim by its line. */
  reader: string;
  named(value: Value & { is: "name" }, source: Source, depth: number): Amount | undefined;
  /** A file that this one names could not be read: what nothing is called may be called so there. */
  lacksFile: boolean;
  /** How many names may still be compared in search of a near one: keeps the cost of a text full of faults in hand. */
  comparisons: number;
  /** Called with every expression that is taken for a length. */
  lengthTaken(value: Value): void;
}

interface Said {
  code: string;
  severity?: Severity;
  message: string;
  subject?: string;
  found?: string;
  allowed?: string;
  fixes?: Fix[];
  related?: Related[];
}

/** Keeps a problem; one in another file is gathered there and said once where this file names it. */
export function report(
  reading: Reading,
  source: Source,
  at: Span,
  { severity = "error", ...said }: Said,
): void {
  const problem: Problem = { ...said, severity, start: at.start, end: at.end };
  if (source.file === undefined) reading.problems.push(problem);
  else reading.foreign.push({ source, problem });
}

export const factsOf = (line: Line): readonly Fact[] => line.statement.match?.facts ?? [];
export const factOf = (line: Line, label: string): Fact | undefined =>
  factsOf(line).find((fact) => fact.label === label);
export const allOf = (line: Line, label: string): Fact[] =>
  factsOf(line).filter((fact) => fact.label === label);

/** Lines of a block that answer one question, at most; `most-parts.ts` tells of more. */
export const MOST_LINES = 100;

/** The lines of a block that answer one question; the first is the one that counts. */
export const linesOf = (item: Item, facet: string): Item[] =>
  item.items.filter((line) => facetOf(line) === facet).slice(0, MOST_LINES);
export const lineOf = (item: Item, facet: string): Item | undefined =>
  item.items.find((line) => facetOf(line) === facet);
export const facetOf = (line: Line): string | undefined =>
  line.statement.row?.facet ?? line.statement.row?.word;

export function given<T>(line: Line, at: Span, value: T): Given<T> {
  const place = { start: at.start, end: at.end };
  return line.source.file === undefined ? { value, at: place } : { value, at: place, file: line.source.file };
}

/** Whether the whole line was understood: then what it lacks is not for want of reading. */
export function isWhole({ statement: { match, parts } }: Line): boolean {
  return match?.complete === true && match.stopped === parts.length;
}

/** From the first of these facts to the last. */
export function spanOf(facts: (Fact | undefined)[], fallback: Span): Span {
  const there = facts.filter((fact) => fact !== undefined);
  if (there.length === 0) return { start: fallback.start, end: fallback.end };
  return {
    start: Math.min(...there.map((fact) => fact.start)),
    end: Math.max(...there.map((fact) => fact.end)),
  };
}

/** What lengths a line takes. */
type Range = "any" | "positive" | "not negative";

/** What a fact comes to, whatever its dimension. */
export function amountOf(reading: Reading, line: Line, value: Value): Amount | undefined {
  return workOut(value, scopeOf(reading, line.source));
}

export function scopeOf(reading: Reading, source: Source): Scope {
  return {
    bare: source.bare,
    named: (value, depth) => reading.named(value, source, depth),
    report: (code, at, message, fixes) =>
      report(reading, source, at, fixes ? { code, message, fixes } : { code, message }),
  };
}

export function lengthAt(
  reading: Reading,
  line: Line,
  fact: Fact | undefined,
  range: Range = "any",
): Given<number> | undefined {
  if (fact?.value === undefined) return undefined;
  const amount = amountOf(reading, line, fact.value);
  if (amount === undefined) return undefined;
  const mm = as(amount, "length");
  if (mm === undefined) {
    wrongUnit(reading, line, fact.value, amount, "length");
    return undefined;
  }
  if (amount.dimension === "number") reading.lengthTaken(fact.value);
  if (!fits(reading, line, fact.value, mm, range)) return undefined;
  return given(line, fact, mm);
}

export function length(
  reading: Reading,
  line: Line | undefined,
  label: string,
  range: Range = "any",
): Given<number> | undefined {
  return line && lengthAt(reading, line, factOf(line, label), range);
}

function fits(reading: Reading, line: Line, at: Span, mm: number, range: Range): boolean {
  const found = printLength(mm, reading.unit);
  const refuse = (message: string, allowed: string): false => {
    report(reading, line.source, at, {
      code: "impossible-size",
      message,
      found,
      allowed,
    });
    return false;
  };
  if (range === "positive" && mm <= 0)
    return refuse(sentence("impossible-size.positive", { found }), sentence("figure.more-than-0"));
  if (range === "not negative" && mm < 0)
    return refuse(sentence("impossible-size.not-negative", { found }), sentence("figure.zero-or-more"));
  if (Math.abs(mm) > LONGEST) {
    const most = printLength(LONGEST, reading.unit);
    const said = {
      code: "impossible-size",
      message: sentence("impossible-size.long", { found, most }),
      found,
      allowed: sentence("figure.or-less", { figure: most }),
    };
    if (line.source.file === undefined)
      reading.tooLong.push({ problem: { ...said, severity: "error", start: at.start, end: at.end }, mm });
    else report(reading, line.source, at, said);
    return false;
  }
  return true;
}

/** Steepest lean that is still a lean, and not lying down. */
const steepest = (85 * Math.PI) / 180;

export function angle(reading: Reading, line: Line | undefined, label: string): Given<number> | undefined {
  const fact = line && factOf(line, label);
  if (line === undefined || fact?.value === undefined) return undefined;
  const amount = amountOf(reading, line, fact.value);
  if (amount === undefined) return undefined;
  if (amount.dimension !== "angle") {
    wrongUnit(reading, line, fact.value, amount, "angle");
    return undefined;
  }
  return given(line, fact, amount.number);
}

/** An angle of something that stands or runs, so less than 85°. */
export function lean(reading: Reading, line: Line | undefined, label: string): Given<number> | undefined {
  const found = angle(reading, line, label);
  if (line === undefined || found === undefined || Math.abs(found.value) <= steepest) return found;
  report(reading, line.source, found.at, {
    code: "impossible-size",
    message: sentence("impossible-size.leans", { angle: Math.round((found.value * 180) / Math.PI) }),
  });
  return undefined;
}

/** The values of a list, as many as `most`; what stands beyond is reported and left out. */
export function listed(
  reading: Reading,
  line: Line,
  label: string,
  most: number,
  says: "rail-repeats" | "row-has",
): Fact[] {
  const facts = allOf(line, label);
  const beyond = facts[most];
  if (beyond === undefined) return facts;
  report(reading, line.source, beyond, {
    code: "impossible-size",
    message: sentence(`impossible-size.${says}`, { most, found: facts.length }),
  });
  return facts.slice(0, most);
}

/** A whole number from 1 to `most`. */
export function count(
  reading: Reading,
  line: Line | undefined,
  label: string,
  most: number,
  least = 1,
): Given<number> | undefined {
  const fact = line && factOf(line, label);
  if (line === undefined || fact?.value === undefined) return undefined;
  const amount = amountOf(reading, line, fact.value);
  if (amount === undefined) return undefined;
  if (amount.dimension !== "number") {
    wrongUnit(reading, line, fact.value, amount, "number");
    return undefined;
  }
  const whole = Math.round(amount.number);
  if (Math.abs(whole - amount.number) > 1e-9 || whole < least || whole > most) {
    report(reading, line.source, fact.value, {
      code: "impossible-size",
      message: sentence("impossible-size.count", { found: Number(amount.number.toFixed(3)), least, most }),
    });
    return undefined;
  }
  return given(line, fact, whole);
}

/** A figure of one dimension, such as a share or a weight; a plain number where `bareToo` says so. */
export function figure(
  reading: Reading,
  line: Line,
  label: string,
  dimension: Dimension,
  bareToo = false,
): Given<number> | undefined {
  const fact = factOf(line, label);
  if (fact?.value === undefined) return undefined;
  const amount = amountOf(reading, line, fact.value);
  if (amount === undefined) return undefined;
  if (amount.dimension !== dimension && !(bareToo && amount.dimension === "number")) {
    wrongUnit(reading, line, fact.value, amount, dimension);
    return undefined;
  }
  return given(line, fact, amount.number);
}

/** What a dimension is called in a message, with an example in the file's units. */
function needs(dimension: Dimension, unit: LengthUnit): string {
  if (dimension === "length") return sentence(`needs.length.${unit}`);
  if (dimension === "mass" || dimension === "force")
    return sentence(`needs.${dimension}.${unit === "in" ? "in" : "metric"}`);
  return sentence(`needs.${dimension}`);
}

/** Units to offer after a number that lacks one. */
function usual(dimension: Dimension, unit: LengthUnit): string | undefined {
  const [mass, force] = unit === "in" ? ["lb", "lbf"] : ["kg", "N"];
  return ({ angle: "deg", mass, force, share: "%" } as Partial<Record<Dimension, string>>)[dimension];
}

export function wrongUnit(
  reading: Reading,
  line: Line,
  value: Value,
  amount: Amount,
  wants: Dimension,
): void {
  const missing = usual(wants, reading.unit);
  const needed = needs(wants, reading.unit);
  const lacking = amount.dimension === "number" && missing !== undefined;
  const message = lacking
    ? sentence("wrong-unit.bare", { needed })
    : sentence("wrong-unit", { needed, found: called(amount.dimension) });
  const fixes: Fix[] = [];
  if (lacking && value.is === "number") {
    fixes.push({
      title: sentence("fix.write-after", { unit: missing }),
      edits: [{ start: value.end, end: value.end, text: missing }],
      // Whoever measures in inches may weigh in pounds.
      certain: wants === "angle" || wants === "share" || reading.unit !== "in",
    });
  }
  if (wants === "number" && value.is === "quantity") {
    fixes.push({
      title: sentence("fix.take-unit-away"),
      edits: [{ start: value.unitSpan.start, end: value.unitSpan.end, text: "" }],
    });
  }
  report(reading, line.source, value, {
    code: "wrong-unit",
    message,
    ...(fixes.length > 0 ? { fixes } : {}),
  });
}
