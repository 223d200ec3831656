import { eolOf } from "./lines.ts";
import type { Edit } from "./problem.ts";
import type { Statement } from "./tree.ts";

/** The edit that puts a line at the end of a block; undefined where it has no closed block in this text. */
export function addedLine(text: string, { block }: Statement, line: string): Edit | undefined {
  if (!block?.closed || text[block.end - 1] !== "}") return undefined;
  const brace = block.end - 1;
  const start = text.lastIndexOf("\n", brace - 1) + 1;
  const lead = text.slice(start, brace);
  if (lead.trim() === "" && start > block.start)
    return { start, end: start, text: `${lead}  ${line}${eolOf(text, brace)}` };
  const last = text.slice(block.start, brace).trimEnd();
  const at = block.start + last.length;
  return { start: at, end: at, text: last.endsWith("{") || last.endsWith(";") ? ` ${line}` : `; ${line}` };
}
