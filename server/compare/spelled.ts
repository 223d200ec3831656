/**
 * What a line says, apart from how it is written: two lines with one spelling mean the same.
 */
import type { Shape } from "../../grammar/row.ts";
import type { Fact, Statement, Value } from "../../grammar/tree.ts";
import type { Line } from "../design/merge.ts";
import { units } from "../design/units.ts";

/** Gives the name by which another file knows the thing of this name. */
export type Called = (name: string) => string;

export const asItIs: Called = (name) => name;

/** Names of these slots are of rules and timbers, never of things in the file. */
const foreign = new Set(["rule", "species", "edition", "grain", "kind", "unit"]);
/** Whether a fact is the name of a thing of the file. */
export const isName = ({ slot, label, name }: Fact): boolean =>
  name !== undefined && (slot === "name" || slot === "ref") && !foreign.has(label);

/** Lists in which the order says nothing. */
const unordered = new Set(["seat on", "file trim", "file without"]);

/**
 * What a line says in one canonical form: figures in millimetres and radians, phrases between commas in a fixed order, names as
 * `called` gives them. Facts of the labels in `without` are left out. A line that could not be read whole is its text.
 */
export function spelled(line: Line, called: Called = asItIs, without: readonly string[] = []): string {
  const { statement, source } = line;
  const { match, parts, row } = statement;
  if (match === undefined || !match.complete || match.stopped < parts.length) return rawOf(line);
  const said = match.facts
    .filter(({ label }) => !without.includes(label))
    .map((fact) => ({ label: fact.label, says: factSays(fact, source.bare, called) }));
  const labels = new Set(said.map(({ label }) => label));
  const anyOrder = labels.size === said.length && row !== undefined && hasClauses(row.shape);
  const lists = unordered.has(`${statement.within} ${statement.word?.text}`);
  if (anyOrder || lists) said.sort((a, b) => compareText(a.label, b.label) || compareText(a.says, b.says));
  return said.map(({ label, says }) => `${label}=${says}`).join(" ");
}

const compareText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

function hasClauses(shape: Shape): boolean {
  if (shape.is === "word" || shape.is === "slot") return false;
  if (shape.is === "clauses") return true;
  return "is" in shape.of ? hasClauses(shape.of) : shape.of.some(hasClauses);
}

function factSays(fact: Fact, bare: number, called: Called): string {
  const { slot, value, name, text } = fact;
  if (value !== undefined) return valueSays(value, { bare, called, alone: slot });
  if (name !== undefined) return isName(fact) ? dotted(name, called) : name;
  return JSON.stringify(text ?? "");
}

/** A dotted name with each of its members called as the other file calls it. */
export const dotted = (name: string, called: Called): string => name.split(".").map(called).join(".");

interface Spelling {
  bare: number;
  called: Called;
  /** The slot that a figure fills all by itself; absent inside an expression. */
  alone?: Fact["slot"];
}

function valueSays(value: Value, given: Spelling): string {
  const { bare, called, alone } = given;
  const inner = (of: Value) => valueSays(of, { bare, called });
  switch (value.is) {
    case "number":
      if (alone === "length") return `${exact(value.number * bare)}mm`;
      return alone === "count" || alone === "angle" ? exact(value.number) : `${exact(value.number)}@${bare}`;
    case "quantity": {
      const unit = units[value.unit];
      if (unit === undefined) return `${value.number}${value.unit}`;
      return `${exact(value.number * unit.size)}${unit.dimension === "length" ? "mm" : unit.dimension}`;
    }
    case "slope":
      return value.run === 0
        ? `${value.rise}:${value.run}`
        : `${exact(Math.atan(value.rise / value.run))}angle`;
    case "name":
      return dotted(value.name, called);
    case "share":
      return `${inner(value.share)} of ${value.of.text}`;
    case "negate":
      return `-${valueSays(value.of, given)}`;
    case "group":
      return valueSays(value.of, given);
    case "binary":
      return `(${inner(value.left)} ${value.op} ${inner(value.right)})`;
    case "call":
      return `${value.fn.text}(${value.args.map(inner).join(", ")})`;
    case "unreadable":
      return "?";
  }
}

/** Finer than any figure is written, coarser than what arithmetic in binary leaves. */
const exact = (value: number): string => String(Number(value.toPrecision(12)));

/** The line's own words after its first, on one line, spaced once. */
export function rawOf({ statement, source }: Line, from?: number): string {
  const { parts } = statement;
  const first = parts.find((part) => part.start >= (from ?? 0));
  const last = parts.at(-1);
  if (first === undefined || last === undefined) return "";
  return spacedOnce(source.text.slice(first.start, last.end));
}

/** Blanks outside quotes made one. */
export const spacedOnce = (text: string): string =>
  text.replace(/"(?:[^"\\\n]|\\.)*"|\s+/g, (found) => (found.startsWith('"') ? found : " ")).trim();

/** The first fact of this label. */
export const factCalled = (statement: Statement, label: string): Fact | undefined =>
  statement.match?.facts.find((fact) => fact.label === label);
