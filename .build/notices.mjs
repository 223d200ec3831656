/**
 * The licences of the libraries that are in the bundles: whoever is given the bundles is given these.
 */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { root } from "./places.mjs";

/**
 * @param {Iterable<import("esbuild").Metafile | undefined>} metafiles what went into each bundle
 * @returns {string} each library's name, version and licence, by name; throws when one has no licence to show
 */
export function noticesOf(metafiles) {
  const folders = new Set();
  for (const metafile of metafiles) {
    for (const { inputs } of Object.values(metafile?.outputs ?? {})) {
      for (const [path, { bytesInOutput }] of Object.entries(inputs)) {
        const [, folder] = /(node_modules\/(?:.*node_modules\/)?(?:@[^/]+\/)?[^/]+)/.exec(path) ?? [];
        if (folder && bytesInOutput > 0) folders.add(folder);
      }
    }
  }
  const notices = new Map([...folders].map((folder) => noticeOf(join(root, folder))));
  const texts = [...notices.keys()].sort().map((title) => `${title}\n\n${notices.get(title)}\n`);
  return ["Seatwright's bundles hold these libraries, each under its own licence.\n", ...texts].join(
    `\n${"─".repeat(72)}\n\n`,
  );
}

/** @returns {[string, string]} */
function noticeOf(/** @type {string} */ folder) {
  const { name, version, license } = JSON.parse(readFileSync(join(folder, "package.json"), "utf8"));
  const papers = readdirSync(folder)
    .filter((file) => /^(licen[cs]e|notice|copying)/i.test(file))
    .sort();
  if (papers.length === 0 && !license) throw new Error(`${name} has no licence to show.`);
  const texts = papers.map((file) => readFileSync(join(folder, file), "utf8").trim());
  return [`${name} ${version} (${license})`, texts.join("\n\n") || `Licence: ${license}`];
}
