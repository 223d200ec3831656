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
  // Its files stand beside the bundles.
  notices.set(...noticeOf(join(root, "node_modules", "@fontsource", "noto-sans")));
  if ([...folders].some((folder) => folder.endsWith("/pdfkit"))) notices.set(...metricsNotice());
  const texts = [...notices.keys()].sort().map((title) => `${title}\n\n${notices.get(title)}\n`);
  return ["Seatwright's bundles hold these libraries, each under its own licence.\n", ...texts].join(
    `\n${"─".repeat(72)}\n\n`,
  );
}

/**
 * The widths of the two standard fonts that the sheets are set in come with the PDF library, from Adobe's font metrics. Those may be used,
 * copied and passed on without charge as long as their copyright notices stay with them.
 *
 * @returns {[string, string]}
 */
function metricsNotice() {
  const notices = ["Helvetica", "Helvetica-Bold"].map((name) => {
    const metrics = readFileSync(join(root, "node_modules", "pdfkit", "js", "data", `${name}.afm`), "utf8");
    const [copyright] = /Copyright[^\r\n]*/.exec(metrics) ?? [];
    if (!copyright) throw new Error(`The metrics of ${name} have no copyright notice to show.`);
    return `${name}: ${copyright}`;
  });
  return ["Font metrics of Helvetica and Helvetica-Bold", notices.join("\n")];
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
