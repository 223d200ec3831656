/**
 * The project's own files, as a reviewer would see them in a fresh checkout.
 */
import { readdirSync, readFileSync } from "node:fs";
import { join, relative, sep } from "node:path";
import { fileURLToPath } from "node:url";

export const root = fileURLToPath(new URL("../..", import.meta.url));

const made = new Set(["node_modules", "dist", ".git", ".cache", "coverage"]);

/** Whether a name at any level is made by a tool and not kept. */
export function isMade(name: string): boolean {
  return made.has(name) || name.endsWith(".vsix");
}

/** Paths from the top folder, with forward slashes. */
export function projectFiles(folder = root): string[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    if (isMade(entry.name)) return [];
    const path = join(folder, entry.name);
    return entry.isDirectory() ? projectFiles(path) : [relative(root, path).split(sep).join("/")];
  });
}

export function read(path: string): string {
  return readFileSync(join(root, path), "utf8");
}
