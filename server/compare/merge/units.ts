/**
 * A text as units: statements by what they answer, each with the lines above it that belong to it.
 */
import { lineCounter } from "../../../grammar/lines.ts";
import type { Statement, Tree } from "../../../grammar/tree.ts";
import type { LengthUnit } from "../../design/design.ts";
import type { Line, Source } from "../../design/merge.ts";
import { millimetresIn } from "../../design/units.ts";
import { factCalled, spelled } from "../spelled.ts";

/** One line of a statement: what stands before it, the statement itself, and the comment behind it. */
export interface UnitLine {
  indent: string;
  text: string;
  /** With the blanks before it; empty for none. */
  comment: string;
}

export interface Unit {
  /** What it answers among its neighbours. Equal keys of two texts are the same question. */
  key: string;
  /** What its own line says, apart from how it is written. */
  says: string;
  /** Several of one key may stand side by side. */
  many: boolean;
  /** The date of a note, by which notes are ordered. */
  date?: string;
  /** Lines above it: comments and blanks. */
  lead: string[];
  line: UnitLine;
  block?: { units: Unit[]; foot: string[]; close: string };
}

export interface Units {
  units: Unit[];
  /** Lines after the last unit. */
  foot: string[];
}

/** The units of a text whose statements stand on lines of their own (`spread`), and which reads without errors. */
export function unitsOf(tree: Tree): Units {
  const { text, statements } = tree;
  const lineAt = lineCounter(text);
  const lines = text.split(/\r\n|\r|\n/);
  const unit = unitOf(statements);
  const source: Source = { text, unit, bare: millimetresIn(unit) };
  const read = (of: readonly Statement[], from: number, to: number): Units => {
    let at = from;
    const units = of.map((statement): Unit => {
      const first = lineAt(statement.start) - 1;
      const lead = lines.slice(at, first);
      const { block } = statement;
      const last = lineAt(Math.max(statement.start, statement.end - 1)) - 1;
      at = last + 1;
      const head = { ...questionOf({ statement, source }), lead };
      const written = lineOf(lines[first]!, block !== undefined);
      if (block === undefined) return { ...head, line: withRest(written, lines.slice(first + 1, last + 1)) };
      const open = lineAt(block.start) - 1;
      const inner = read(block.statements, open + 1, last);
      return { ...head, line: written, block: { ...inner, close: lines[last]! } };
    });
    return { units, foot: lines.slice(at, to) };
  };
  const ends = text === "" || /[\r\n]$/.test(text) ? lines.length - 1 : lines.length;
  return read(statements, 0, ends);
}

/** The text of units. */
export function textOf({ units, foot }: Units, eol: string): string {
  const lines = [...units.flatMap(linesOf), ...foot];
  return lines.map((line) => line + eol).join("");
}

/** All lines of a unit. */
export function linesOf({ lead, line, block }: Unit): string[] {
  const own = line.indent + line.text + line.comment;
  if (block === undefined) return [...lead, own];
  return [...lead, own, ...block.units.flatMap(linesOf), ...block.foot, block.close];
}

/** The unit of lengths a text names itself; millimetres when it names none. */
export function unitOf(statements: readonly Statement[]): LengthUnit {
  const units = statements.find(({ word }) => word?.text === "units");
  const name = units && factCalled(units, "unit")?.name;
  return name === "cm" || name === "in" ? name : "mm";
}

/** A line taken apart. A comment begins at a `#` outside quotes. */
function lineOf(line: string, opens: boolean): UnitLine {
  const indent = /^[\uFEFF \t]*/.exec(line)?.[0] ?? "";
  const rest = line.slice(indent.length);
  const [code = ""] = /^(?:"(?:[^"\\]|\\.)*"|[^#"])*/.exec(rest) ?? [];
  const text = code.trimEnd();
  const comment = rest.slice(text.length).trimEnd();
  return opens && !text.endsWith("{") ? { indent, text: `${text} {`, comment } : { indent, text, comment };
}

/** A statement over several lines keeps the others as they are. */
const withRest = (line: UnitLine, rest: readonly string[]): UnitLine =>
  rest.length === 0 ? line : { ...line, comment: [line.comment, ...rest].join("\n") };

function questionOf(line: Line): Pick<Unit, "key" | "says" | "many" | "date"> {
  const { statement } = line;
  const word = statement.word?.text ?? "";
  const says = `${word} ${spelled(line)}`;
  const many = statement.row?.many === true;
  const name = statement.match?.facts.find(({ slot }) => slot === "name")?.name;
  if (name !== undefined) return { key: `name ${name}`, says, many: false };
  if (word === "note") {
    const date = factCalled(statement, "date")?.text;
    return { key: says, says, many: false, ...(date !== undefined && { date }) };
  }
  if (word === "end") return { key: `end ${factCalled(statement, "which")?.name}`, says, many: false };
  const identity = identities[word];
  if (statement.within === "file" && identity !== undefined) {
    const others = (statement.match?.facts ?? [])
      .map(({ label }) => label)
      .filter((label) => !identity.includes(label));
    return { key: `${word} ${spelled(line, undefined, others)}`, says, many: false };
  }
  if (statement.within === "file" && many) return { key: says, says, many: false };
  return { key: statement.row?.facet ?? word, says, many };
}

/** The labels that tell one line of the file from another of its word; the rest is what it says. */
const identities: Readonly<Record<string, readonly string[]>> = {
  accept: ["rule", "on", "to"],
  require: ["subject"],
  limit: ["rule"],
  trim: ["post"],
};
