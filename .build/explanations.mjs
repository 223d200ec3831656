/**
 * Explanations of rules, kept out of what a server loads at start: they are read from a file beside it when one is first asked for.
 */
import { createHash } from "node:crypto";
import { readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";

const NAME = "explanations.json";

/** A text without values in it, as a source file writes it behind `explanation:`. */
const written = /\bexplanation:\s*("(?:[^"\\]|\\.)*"|`(?:[^`\\$]|\\.)*`),/g;

/**
 * Explanations for one set of bundles: a plugin that leaves each out and asks the file for it, and what writes that file once they are built.
 *
 * @returns {{ plugin: import("esbuild").Plugin, write: (folder: string) => Promise<void> }}
 */
export function lateExplanations() {
  /** @type {Record<string, string>} */
  const texts = {};
  const asked = (/** @type {string} */ literal) => {
    const text = String(Function(`return ${literal}`)());
    const key = createHash("sha256").update(text).digest("base64url").slice(0, 6);
    if (texts[key] !== undefined && texts[key] !== text)
      throw new Error(`Two explanations have the key ${key}.`);
    texts[key] = text;
    return `get explanation() { return require("./${NAME}")["${key}"]; },`;
  };
  return {
    plugin: {
      name: "late-explanations",
      setup({ onLoad, onResolve }) {
        onResolve({ filter: /^\.\/explanations\.json$/ }, ({ path }) => ({ path, external: true }));
        onLoad({ filter: /[\\/](server[\\/](rules|design)|grammar)[\\/].*\.ts$/ }, async ({ path }) => ({
          loader: "ts",
          contents: (await readFile(path, "utf8")).replace(written, (_, literal) => asked(literal)),
        }));
      },
    },
    write: (folder) => writeFile(join(folder, NAME), JSON.stringify(texts)),
  };
}
