/**
 * Files from disk. A file is read again when its time or size has changed, so that no watcher is needed to stay right.
 */

import { readFileSync, statSync } from "node:fs";
import { readdir } from "node:fs/promises";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { type Files, LARGEST, MOST_FILES } from "./files.ts";

interface Kept {
  time: number;
  size: number;
  text: string;
}

const passedOver = new Set(["node_modules", ".git", "dist", "out"]);

/** Files of the machine the server runs on; only `file:` addresses can be read. */
export function filesOnDisk(): Files {
  const kept = new Map<string, Kept>();
  return {
    read(uri) {
      const path = pathOf(uri);
      if (!path) return undefined;
      try {
        const { mtimeMs: time, size, ...stat } = statSync(path);
        const before = kept.get(uri);
        if (before && before.time === time && before.size === size) return before.text;
        if (size > LARGEST || (stat.mode & 0o170000) !== 0o100000) return undefined;
        const text = readFileSync(path, "utf8");
        kept.set(uri, { time, size, text });
        return text;
      } catch {
        kept.delete(uri);
        return undefined;
      }
    },
    forget: (uri) => void kept.delete(uri),
    async list(folders) {
      const found: string[] = [];
      for (const folder of folders) {
        const path = pathOf(folder);
        if (path) await walk(path, found);
      }
      return found;
    },
  };
}

async function walk(folder: string, found: string[]): Promise<void> {
  const entries = await readdir(folder, { withFileTypes: true }).catch(() => []);
  for (const entry of entries) {
    if (found.length >= MOST_FILES) return;
    const path = join(folder, entry.name);
    if (entry.isFile() && entry.name.endsWith(".chair")) found.push(pathToFileURL(path).href);
    else if (entry.isDirectory() && !passedOver.has(entry.name) && !entry.name.startsWith("."))
      await walk(path, found);
  }
}

function pathOf(uri: string): string | undefined {
  if (!uri.startsWith("file:")) return undefined;
  try {
    return fileURLToPath(uri);
  } catch {
    return undefined;
  }
}
