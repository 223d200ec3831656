/**
 * Files from disk. A file is read again when its time or size has changed, so that no watcher is needed to stay right.
 */

import { statSync } from "node:fs";
import { readdir } from "node:fs/promises";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { type Files, LARGEST, MOST_FILES } from "./files.ts";
import { readBounded } from "./read-bounded.ts";
import { whereItEnds } from "./where-it-ends.ts";

interface Kept {
  time: number;
  size: number;
  text: string;
}

/** How much text is kept of files that are not open, characters. */
const MOST_KEPT = 2 * LARGEST;

const passedOver = new Set(["node_modules", ".git", "dist", "out"]);

/**
 * Files of the machine the server runs on. Only ordinary files are read whose names end in `.chair`, where the address ends when every
 * link is followed: a file may come from anybody, and whatever it names is read without asking.
 */
export function filesOnDisk(): Files {
  const kept = new Map<string, Kept>();
  let length = 0;

  function drop(path: string) {
    length -= kept.get(path)?.text.length ?? 0;
    kept.delete(path);
  }

  function keep(path: string, text: Kept) {
    kept.set(path, text);
    length += text.text.length;
    for (const oldest of kept.keys()) {
      if (length <= MOST_KEPT) return;
      drop(oldest);
    }
  }

  function read(path: string): string | undefined {
    const { mtimeMs: time, size } = statSync(path);
    const before = kept.get(path);
    if (before && before.time === time && before.size === size) return before.text;
    drop(path);
    const found = readBounded(path, LARGEST);
    if (!("bytes" in found)) return undefined;
    const text = found.bytes.toString("utf8");
    keep(path, { time: found.stat.mtimeMs, size: found.stat.size, text });
    return text;
  }

  return {
    read(uri) {
      try {
        const path = chairAt(uri);
        return path === undefined ? undefined : read(path);
      } catch {
        return undefined;
      }
    },
    forget(uri) {
      const path = pathOf(uri);
      if (path) drop(path);
    },
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

/** Where a chair's address ends; nothing when that is not a chair, or not on this machine. Throws the system's errors. */
function chairAt(uri: string): string | undefined {
  const path = pathOf(uri);
  const end = path === undefined ? undefined : whereItEnds(path);
  return end !== undefined && /\.chair$/i.test(end) ? end : undefined;
}

/** The path of a file of this machine: an address that names a machine is never followed. */
function pathOf(uri: string): string | undefined {
  if (!/^file:(?:\/\/)?\/(?!\/)/i.test(uri)) return undefined;
  try {
    return fileURLToPath(uri);
  } catch {
    return undefined;
  }
}
