/**
 * What is handed out: the VSIX, with the bundles and what the manifest names and no node_modules, and the command line's tarball.
 */
import { cpSync, readFileSync, writeFileSync } from "node:fs";
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

/** Packs the folder kept in memory as an extension with these files in it, for a VS Code whose extensions run in Node; gives its path. */
export async function makeMemoryFiles(
  /** @type {string} */ place,
  /** @type {Record<string, string>} */ files,
) {
  const cwd = join(place, "memory-files");
  cpSync(join(root, ".build", "workbench", "memory-files"), cwd, { recursive: true });
  const manifest = JSON.parse(readFileSync(join(cwd, "package.json"), "utf8"));
  const { browser, ...rest } = manifest;
  writeFileSync(join(cwd, "package.json"), JSON.stringify({ ...rest, main: browser }));
  writeFileSync(join(cwd, "workspace.json"), JSON.stringify(files));
  writeFileSync(join(cwd, "LICENSE"), "For tests alone.\n");
  const packagePath = join(place, "memory-files.vsix");
  await createVSIX({ cwd, packagePath, dependencies: false, allowMissingRepository: true });
  return packagePath;
}

/** The files that go into the VSIX, by their paths in the checkout. */
export function packagedFiles() {
  return listFiles({ cwd: root, packageManager: PackageManager.None });
}
