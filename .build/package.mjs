/**
 * The VSIX: the bundles and what the manifest names, with no node_modules.
 */
import { join } from "node:path";
import { createVSIX, listFiles, PackageManager } from "@vscode/vsce";
import { buildBundles } from "./bundles.mjs";
import { root } from "./places.mjs";

const { version } = (await import("../package.json", { with: { type: "json" } })).default;

/** Builds and packs; gives the exit code. */
export async function makePackage(packagePath = join(root, `seatwright-${version}.vsix`)) {
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
