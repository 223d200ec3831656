/**
 * What the panel lays behind the drawing and says of a change, the notebook, and what was chosen since a version.
 */
import { type Comparison, compare, type Side } from "../compare/compare.ts";
import { notebookOf } from "../compare/notebook.ts";
import { changeWords, noChange, notWhole, reportOf } from "../compare/report.ts";
import type { Behind } from "../drawing/sheet.ts";
import type { View } from "../editor/view.ts";
import type { OtherFiles, Study } from "../study.ts";
import type { ComparisonTold, OldChair } from "./protocol.ts";

/** Works a chair out at once. */
export type Working = (asked: { text: string; address: string; files: OtherFiles }) => Study;

/** Most values shown that follow from a change; the rest are counted. */
const MOST = 12;

/** An open chair beside an old one: the old one to lay behind its drawing, and the difference in words. */
export function besides(view: View, before: Side, old: OldChair): { behind: Behind; told: ComparisonTold } {
  const comparison = compare(before, { study: view.study, files: view.files });
  const parts = comparison.anew.filter(({ is }) => is === "changed" || is === "added");
  const changed = new Set(parts.map(({ part }) => part));
  return { behind: { chair: before.study.chair, changed }, told: tell(comparison, before, view, old) };
}

function tell(
  comparison: Comparison,
  before: Side,
  { study }: View,
  { label, text }: OldChair,
): ComparisonTold {
  const units = { old: before.study.design.units, new: study.design.units };
  const says = comparison.same ? noChange(text === study.text) : notWhole(comparison);
  const sections = reportOf(comparison, { units, most: MOST }).filter(({ rows }) => rows.length > 0);
  return { label, ...(says !== undefined && { says }), sections };
}

/** What an open chair says otherwise than an earlier version, its notes left out: `back kick: 4deg → 5deg`. */
export function chosenSince(view: View, old: OldChair, study: Working): string[] {
  const { files } = view;
  const before = { study: study({ text: old.text, address: old.address, files }), files };
  const { chosen } = compare(before, { study: view.study, files });
  return chosen
    .filter(({ property }) => !property.startsWith("note"))
    .map(({ part, property, old: was, new: now }) => {
      return `${[part, property].filter(Boolean).join(" ")}: ${changeWords(was, now)}`;
    });
}

/** An open chair's notebook over earlier versions and itself. */
export function notebook({ study, files, uri }: View, versions: readonly OldChair[]): string {
  const all = versions.map(({ label, text, address }) => ({ label, text, address, files }));
  const now = { label: "now", text: study.text, address: uri, files };
  return notebookOf(all.at(-1)?.text === now.text ? all : [...all, now], study.design);
}
