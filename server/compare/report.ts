/**
 * A comparison in words: sections of rows, the same for the terminal, a review comment and the panel.
 */
import type { Problem, Span } from "../../grammar/problem.ts";
import { printWorked } from "../chair/values/print.ts";
import type { LengthUnit } from "../design/design.ts";
import { printChange } from "../design/units.ts";
import type { Anew } from "./anew.ts";
import type { Comparison } from "./compare.ts";
import type { Moved } from "./follows.ts";

interface ReportRow {
  /** What the row is about, and what is said of it: two or three cells. */
  cells: string[];
  /** Where it stands in the new file, or in the old one when it is gone from there. */
  at?: Span & { side: "old" | "new" };
  /** Full name of the part of the new chair it tells of. */
  part?: string;
}

export interface ReportSection {
  name: "chosen" | "follows" | "found" | "anew";
  title: string;
  rows: ReportRow[];
  /** How many more there are than are shown. */
  more: number;
}

interface Wording {
  /** Of the old and of the new file. */
  units: { old: LengthUnit; new: LengthUnit };
  /** Most values shown that follow; all unless given. */
  most?: number;
}

/** The four parts of a comparison; a part with nothing in it has no rows. */
export function reportOf(comparison: Comparison, { units, most }: Wording): ReportSection[] {
  const { follows, found, anew } = comparison;
  const shown = most === undefined ? follows : follows.slice(0, most);
  return [
    { name: "chosen", title: "Chosen", rows: chosenRows(comparison), more: 0 },
    {
      name: "follows",
      title: "Follows",
      rows: shown.map((moved) => ({
        cells: [moved.name, ...movedWords(moved, units)],
        ...(moved.part !== undefined && moved.new !== undefined && { part: moved.part }),
      })),
      more: follows.length - shown.length,
    },
    {
      name: "found",
      title: "Found",
      rows: [
        ...found.new.map((problem) => finding("new", problem, "new")),
        ...found.changed.map(({ new: now, worse }) => finding(worse ? "worse" : "better", now, "new")),
        ...found.gone.map((problem) => finding("gone", problem, "old")),
      ],
      more: 0,
    },
    { name: "anew", title: "To make anew", rows: anewRows(anew), more: 0 },
  ];
}

function chosenRows({ chosen }: Comparison): ReportRow[] {
  return chosen.map(({ part, property, old, new: now, was, oldLine, newLine }) => {
    const name =
      part === "" ? "file" : was !== undefined && property !== "name" ? `${part} (was ${was})` : part;
    const change = changeWords(old, now);
    const line = newLine ?? oldLine;
    const word = line?.source.file === undefined ? line?.statement.word : undefined;
    const side = newLine === undefined ? ("old" as const) : ("new" as const);
    return {
      cells: [name, property, change],
      ...(word && { at: { start: word.start, end: word.end, side } }),
    };
  });
}

/** A fact before and after in a few words. */
export const changeWords = (old: string | null, now: string | null): string => {
  if (old === null) return `new: ${now || "given"}`;
  return now === null ? `gone: ${old || "given"}` : `${old || "plain"} → ${now || "plain"}`;
};

/** Old and new as printed, and by how much. */
function movedWords({ name, dimension, old, new: now }: Moved, units: Wording["units"]): string[] {
  const print = (number: number, unit: LengthUnit) => printWorked({ name, number, dimension }, unit);
  if (old === undefined) return [`new: ${print(now!, units.new)}`, ""];
  if (now === undefined) return [`gone: ${print(old, units.old)}`, ""];
  const by = printChange({ number: now - old, dimension }, units.new);
  return [`${print(old, units.new)} → ${print(now, units.new)}`, by ?? ""];
}

function finding(what: string, problem: Problem, side: "old" | "new"): ReportRow {
  const { severity, message, code, start, end } = problem;
  const word = severity === "information" ? "note" : severity;
  return { cells: [what, `${word}: ${message} [${code}]`], at: { start, end, side } };
}

/** Parts of which the same is to be said stand together. */
function anewRows(anew: readonly Anew[]): ReportRow[] {
  const together = new Map<string, Anew[]>();
  for (const each of anew) {
    const parts = together.get(each.why);
    if (parts) parts.push(each);
    else together.set(each.why, [each]);
  }
  return [...together].map(([why, parts]) => {
    const there = parts.find(({ part, is }) => part !== "" && is !== "gone")?.part;
    return {
      cells: [parts.map(({ part }) => part || "whole chair").join(", "), why],
      ...(there !== undefined && { part: there }),
    };
  });
}

/** What is said instead of the four parts when nothing of the chair differs. */
export const noChange = (sameText: boolean): string =>
  sameText
    ? "No change of the chair: the texts are the same."
    : "No change of the chair: only layout, order or comments differ.";

/** What is said first when a side has errors; nothing when both are whole. */
export function notWhole({ faulty }: Comparison): string | undefined {
  if (!faulty.old && !faulty.new) return undefined;
  const which = faulty.old && faulty.new ? "Both files have" : `The ${faulty.old ? "old" : "new"} file has`;
  return `${which} errors, so the chairs are compared as far as they go.`;
}
