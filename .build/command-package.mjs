/**
 * The command line as a tarball that `npm install -g` turns into `seatwright`: the bundles it runs, with nothing else to install.
 */
import { execFileSync } from "node:child_process";
import { cp, mkdir, mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { dist, root } from "./places.mjs";

/** What the program reads, from beside itself. */
const programFiles = [
  "cli.js",
  "stdio.js",
  "markout.js",
  "export.js",
  "boards.js",
  "strength.js",
  "examples",
  "letters",
  "explanations.json",
  "notices.txt",
];
const papers = ["README.md", "CHANGELOG.md", "LICENSE.txt"];

/** Files and folders that the page of the program shows or leads to. */
async function ledTo() {
  const page = await readFile(join(root, "README.md"), "utf8");
  return [...new Set([...page.matchAll(/\]\(([^):#]+)\)/g)].map(([, path]) => /** @type {string} */ (path)))];
}

/**
 * Packs what stands in dist.
 *
 * @param {string} packagePath where the tarball goes
 */
export async function makeCommandPackage(packagePath) {
  const { name, version, description, license, engines } = JSON.parse(
    await readFile(join(root, "package.json"), "utf8"),
  );
  const stage = await mkdtemp(join(tmpdir(), "seatwright-command-"));
  try {
    await mkdir(join(stage, "bin"));
    for (const each of programFiles)
      await cp(join(dist, each), join(stage, "bin", each), { recursive: true });
    const shown = await ledTo();
    for (const each of new Set([...papers, ...shown]))
      await cp(join(root, each), join(stage, each), { recursive: true });
    const manifest = {
      name,
      version,
      description,
      license,
      bin: { [name]: "bin/cli.js" },
      engines: { node: engines.node },
      files: ["bin", "CHANGELOG.md", ...shown],
    };
    await writeFile(join(stage, "package.json"), `${JSON.stringify(manifest, null, 2)}\n`);
    const npm = process.platform === "win32" ? "npm.cmd" : "npm";
    execFileSync(npm, ["pack", "--silent"], { cwd: stage, shell: process.platform === "win32" });
    await cp(join(stage, `${name}-${version}.tgz`), packagePath);
  } finally {
    await rm(stage, { recursive: true, force: true });
  }
  return packagePath;
}
