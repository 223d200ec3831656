/**
 * A comparison as text, as Markdown for a review, and as JSON.
 */
import { TextDocument } from "vscode-languageserver-textdocument";
import type { Problem } from "../../../../grammar/problem.ts";
import type { Comparison, Side } from "../../../compare/compare.ts";
import { noChange, notWhole, type ReportSection, reportOf } from "../../../compare/report.ts";
import { findingOf } from "../check.ts";
import { amountForJson } from "../json-units.ts";
import type { CompareOutput } from "../schema.ts";
import { type Brush, columns, harmless, wrapped } from "../terminal.ts";

export interface Compared {
  comparison: Comparison;
  old: Side;
  now: Side;
  /** Of the two files. */
  names: { old: string; new: string };
}

/** Most values that follow are shown, unless all are asked for. */
const MOST = 12;
const CAUTION = "What is worked out is a calculation, not a test.";

const sectionsOf = ({ comparison, old, now }: Compared, all: boolean): ReportSection[] =>
  reportOf(comparison, {
    units: { old: old.study.design.units, new: now.study.design.units },
    ...(!all && { most: MOST }),
  });

/** For the terminal. */
export function asText(compared: Compared, all: boolean, paint: Brush): string {
  const { comparison, old, now, names } = compared;
  const title = now.study.design.title?.value ?? old.study.design.title?.value ?? "";
  const head = [title, `${names.old} → ${names.new}`].filter(Boolean).join(": ");
  const lines = [paint("bold", harmless(head))];
  const warning = notWhole(comparison);
  if (warning) lines.push(warning);
  if (comparison.same) return [...lines, noChange(old.study.text === now.study.text), ""].join("\n");
  for (const { name, title: of, rows, more } of sectionsOf(compared, all)) {
    if (rows.length === 0) continue;
    lines.push("", paint("bold", of));
    const clean = rows.map(({ cells }) => cells.map((cell) => harmless(cell.replace(/\s+/g, " "))));
    if (name === "found" || name === "anew") lines.push(...clean.map((cells) => hanging(cells.join(": "))));
    else lines.push(columns(clean, "  "));
    if (more > 0) lines.push(`  and ${counted(more, "value")} more that moved less; --all lists them`);
    if (name === "anew") lines.push(`  ${CAUTION}`);
  }
  return `${lines.join("\n")}\n`;
}

/** A paragraph whose lines after the first stand further in. */
const hanging = (text: string): string => wrapped(text, "    ").replace(/^ {2}/, "");

/** For a review comment: one table a part. */
export function asMarkdown(compared: Compared, all: boolean): string {
  const { comparison, old, now, names } = compared;
  const title = now.study.design.title?.value ?? old.study.design.title?.value ?? "Chair";
  const lines = [
    `### ${inMarkdown(title)}`,
    "",
    `\`${names.old.replaceAll("`", "'")}\` → \`${names.new.replaceAll("`", "'")}\``,
  ];
  const warning = notWhole(comparison);
  if (warning) lines.push("", `**${warning}**`);
  if (comparison.same) return `${[...lines, "", noChange(old.study.text === now.study.text)].join("\n")}\n`;
  for (const { name, title: of, rows, more } of sectionsOf(compared, all)) {
    if (rows.length === 0) continue;
    const wide = Math.max(...rows.map(({ cells }) => cells.length));
    lines.push("", `#### ${of}`, "", `| ${headings[name].slice(0, wide).join(" | ")} |`);
    lines.push(`|${" --- |".repeat(wide)}`);
    for (const { cells } of rows)
      lines.push(`| ${Array.from({ length: wide }, (_, k) => inMarkdown(cells[k] ?? "")).join(" | ")} |`);
    if (more > 0) lines.push("", `and ${counted(more, "value")} more that moved less.`);
  }
  return `${[...lines, "", CAUTION].join("\n")}\n`;
}

const headings: Readonly<Record<ReportSection["name"], string[]>> = {
  chosen: ["part", "fact", "old → new"],
  follows: ["value", "old → new", "by"],
  found: ["", "finding"],
  anew: ["parts", "what"],
};

/** A maker's words where Markdown and HTML would read more into them. */
const inMarkdown = (text: string): string =>
  text
    .replace(/\s+/g, " ")
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replace(/[\\`*_[\]|#@~]/g, (sign) => (sign === "@" ? "@\u200b" : `\\${sign}`));

const counted = (count: number, what: string): string => `${count} ${what}${count === 1 ? "" : "s"}`;

/** For programs: everything, never shortened. */
export function asJson({ comparison, old, now }: Compared): CompareOutput {
  const { chosen, follows, found, anew } = comparison;
  const documents = { old: documentOf(old), new: documentOf(now) };
  const before = (problem: Problem) => findingOf(documents.old, problem);
  const after = (problem: Problem) => findingOf(documents.new, problem);
  return {
    chosen: chosen.map(({ part, property, old: was, new: is, was: name }) => ({
      part,
      property,
      old: was,
      new: is,
      ...(name !== undefined && { was: name }),
    })),
    follows: follows.map(({ name, dimension, old: was, new: is }) => ({
      name,
      old: was === undefined ? null : amountForJson(was, dimension).value,
      new: is === undefined ? null : amountForJson(is, dimension).value,
      unit: amountForJson(0, dimension).unit,
    })),
    found: {
      new: found.new.map(after),
      gone: found.gone.map(before),
      changed: found.changed.map((each) => ({
        old: before(each.old),
        new: after(each.new),
        worse: each.worse,
      })),
    },
    anew: anew.map(({ part, why }) => ({ part, why })),
  };
}

const documentOf = ({ study: { address, text } }: Side): TextDocument =>
  TextDocument.create(address, "chair", 0, text);
