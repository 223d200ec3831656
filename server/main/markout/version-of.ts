/**
 * The version that a sheet bears: the first eight signs of the SHA-256 (FIPS 180-4) of a chair's text in UTF-8, with the texts of the files that
 * it is made from after its own.
 */
import type { OtherFiles } from "../../study.ts";

export async function versionOf(texts: readonly string[]): Promise<string> {
  const bytes = new TextEncoder().encode(texts.join(""));
  const digest = new Uint8Array(await globalThis.crypto.subtle.digest("SHA-256", bytes));
  return [...digest.slice(0, 4)].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}

/** Files that keep what was read of them: the texts in the order that they were first asked for. */
export function remembering(files: OtherFiles): { files: OtherFiles; texts: () => string[] } {
  const read = new Map<string, string>();
  return {
    files: {
      ...files,
      read: (address) => {
        const text = files.read(address);
        if (text !== undefined && !read.has(address)) read.set(address, text);
        return text;
      },
    },
    texts: () => [...read.values()],
  };
}
