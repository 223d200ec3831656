import type { Report } from "../../editor/pages/report.ts";
import { type Brush, columns, harmless, wrapped } from "./terminal.ts";

/** A report as it is read in a terminal. */
export function reportText({ title, sections, ending }: Report, paint: Brush): string {
  const lines = [paint("bold", harmless(title))];
  for (const { heading, items } of sections) {
    lines.push("", paint("bold", harmless(heading)));
    for (const item of items)
      lines.push(harmless(typeof item === "string" ? wrapped(item, "  ") : columns(item, "  ")));
  }
  for (const each of ending) lines.push("", wrapped(each));
  return `${lines.join("\n")}\n`;
}
