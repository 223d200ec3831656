/**
 * Findings as workflow commands, the lines of plain text that hosted runners show on the changed lines of a review.
 */
import type { Severity } from "../../../../grammar/problem.ts";
import { messageOf } from "../../../mends/words.ts";
import { harmless } from "../terminal.ts";
import { type Checked, isRead } from "./checked.ts";
import type { Place } from "./places.ts";

const words: Readonly<Record<Severity, "error" | "warning" | "notice">> = {
  error: "error",
  warning: "warning",
  information: "notice",
  hint: "notice",
};

/** One line a finding; a file that could not be read is an error on that file. */
export function annotationsOf(checked: readonly Checked[], placeOf: (file: string) => Place): string[] {
  return checked.flatMap((each) => {
    const { uri } = placeOf(each.file);
    const file = property(decodeURIComponent(uri.replace(/^file:\/\//, "")));
    if (!isRead(each)) return [`::error file=${file}::${data(each.refused)}.`];
    return each.problems.map((problem) => {
      const start = each.document.positionAt(problem.start);
      const end = each.document.positionAt(problem.end);
      const place = [
        `file=${file}`,
        `line=${start.line + 1}`,
        `endLine=${end.line + 1}`,
        // Columns are taken only where a finding stands on one line.
        ...(start.line === end.line ? [`col=${start.character + 1}`, `endColumn=${end.character + 1}`] : []),
        `title=${property(problem.code)}`,
      ];
      return `::${words[problem.severity]} ${place.join(",")}::${data(harmless(messageOf(problem)))}`;
    });
  });
}

/** What a message may not hold as it is. */
const data = (text: string): string =>
  text.replaceAll("%", "%25").replaceAll("\r", "%0D").replaceAll("\n", "%0A");

/** In a property a colon and a comma end something too. */
const property = (text: string): string => data(text).replaceAll(":", "%3A").replaceAll(",", "%2C");
