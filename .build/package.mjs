/**
 * What is handed out: the VSIX, with the bundles and what the manifest names and no node_modules, and the command line's tarball.
 */
import { join } from "node:path";
import { createVSIX, listFiles, PackageManager } from "@vscode/vsce";
import { buildBundles } from "./bundles.mjs";
import { makeCommandPackage } from "./command-package.mjs";
import { root } from "./places.mjs";

const { version } = (await import("../package.json", { with: { type: "json" } })).default;

/** Builds, and packs the extension and the command line, each into a file at the top; gives the exit code. */
export async function makePackages() {
  await makePackage(join(root, `seatwright-${version}.vsix`));
  console.log(` DONE  Packaged: ${await makeCommandPackage(join(root, `seatwright-${version}.tgz`))}`);
  return 0;
}

/** Builds and packs the extension; gives the exit code. */
export async function makePackage(/** @type {string} */ packagePath) {
  await buildBundles();
  await createVSIX({
    cwd: root,
    packagePath,
    dependencies: false,
    rewriteRelativeLinks: false,
    allowMissingRepository: true,
  });
  return 0;
}

/** The files that go into the VSIX, by their paths in the checkout. */
export function packagedFiles() {
  return listFiles({ cwd: root, packageManager: PackageManager.None });
}
