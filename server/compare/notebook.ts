/**
 * A chair's notebook: its notes in order, what was changed between them, and how the main values moved; Markdown.
 */
import type { Worked } from "../chair/chair.ts";
import { printWorked } from "../chair/values/print.ts";
import type { Design, LengthUnit } from "../design/design.ts";
import { historySteps, type Version, type VersionChange } from "./history.ts";
import { changeWords } from "./report.ts";

/** The values that a maker asks for first. */
const VALUES = ["seat.height", "seat.slope", "seat.depth", "backrest.rake", "weight"];

interface LabelledVersion extends Version {
  /** A commit's date and subject, or `now`. */
  label: string;
}

/** The notebook over versions from the oldest; `design` is that of the newest. */
export function notebookOf(versions: readonly LabelledVersion[], design: Design): string {
  const told = [...historySteps(versions, VALUES)];
  const lines = [`# ${plain(design.title?.value ?? "Notebook")}`];
  let before: VersionChange["values"] = new Map();
  told.forEach((each, k) => {
    const { notes, chosen, values, errors } = each;
    const moved = VALUES.flatMap((name) =>
      movedWords(name, before.get(name), values.get(name), design.units),
    );
    if (values.size > 0) before = values;
    if (notes.length + chosen.length + moved.length === 0) return;
    lines.push("", `## ${plain(versions[k]!.label)}`, "");
    for (const { date, text } of notes) lines.push(`**${date ?? "no date"}** ${plain(text)}`, "");
    if (errors > 0) lines.push("This version does not read whole; it is told as far as it goes.", "");
    for (const { part, property, old, new: now } of chosen)
      lines.push(`- ${plain([part, property].filter(Boolean).join(" "))}: ${plain(changeWords(old, now))}`);
    if (moved.length > 0) lines.push("", moved.join(" · "));
  });
  if (lines.length === 1) lines.push("", "No notes yet. *Add Note* writes the first.");
  return `${lines.join("\n")}\n`;
}

function movedWords(
  name: string,
  old: Worked | undefined,
  now: Worked | undefined,
  unit: LengthUnit,
): string[] {
  if (now === undefined) return [];
  const print = printWorked(now, unit);
  if (old === undefined) return [`${name} ${print}`];
  const was = printWorked(old, unit);
  return was === print ? [] : [`${name} ${was} → ${print}`];
}

/** A maker's words where Markdown and HTML would read more into them. */
const plain = (text: string): string =>
  text
    .replace(/\s+/g, " ")
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replace(/[\\`*_[\]#|]/g, "\\$&");
