/**
 * What cannot be put together by facts is put together by lines, by git itself.
 */
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { git } from "./git.ts";

/** The text with git's marks where both sides changed; nothing when git cannot be run. */
export function mergedByLines(
  { base, ours, theirs }: Record<"base" | "ours" | "theirs", string>,
  marks: { ours: string; theirs: string; size: number },
): string | undefined {
  const folder = mkdtempSync(join(tmpdir(), "chair-merge-"));
  try {
    const put = (name: string, text: string) => {
      writeFileSync(join(folder, name), text);
      return name;
    };
    const files = [put("ours", ours), put("base", base), put("theirs", theirs)];
    const labels = ["-L", marks.ours, "-L", "base", "-L", marks.theirs];
    const { code, out } = git(folder, [
      "merge-file",
      "-p",
      `--marker-size=${marks.size}`,
      ...labels,
      ...files,
    ]);
    // The number of conflicts, or more than any number of them for a failure.
    return code !== undefined && code < 128 ? out.toString("utf8") : undefined;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
