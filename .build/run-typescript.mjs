/**
 * Runs a TypeScript file: bundled first, its packages left where they are.
 *
 *     node .build/run-typescript.mjs FILE ARGS…
 */
import { spawnSync } from "node:child_process";
import { basename, join, resolve } from "node:path";
import { argv, execPath } from "node:process";
import { fileURLToPath, pathToFileURL } from "node:url";
import { build } from "esbuild";
import { root } from "./places.mjs";

/** Gives the program's exit code. */
export async function runTypescript(/** @type {string} */ file, /** @type {string[]} */ args) {
  const options = ["--enable-source-maps", await bundleTypescript(file), ...args];
  return spawnSync(execPath, options, { cwd: root, stdio: "inherit" }).status ?? 1;
}

/** Bundles a TypeScript file of a checkout; gives the module that it became. */
export async function bundleTypescript(/** @type {string} */ file, /** @type {string} */ checkout = root) {
  const outfile = join(checkout, ".cache", "run", basename(file).replace(/\.ts$/, ".mjs"));
  await build({
    absWorkingDir: checkout,
    entryPoints: [file],
    outfile,
    bundle: true,
    packages: "external",
    platform: "node",
    format: "esm",
    target: "node20",
    sourcemap: "inline",
    logLevel: "warning",
    plugins: [plainModules],
  });
  return outfile;
}

/** Plain modules need no bundling, and the build's own look at where they lie. */
const plainModules = /** @type {import("esbuild").Plugin} */ ({
  name: "plain-modules",
  setup({ onResolve }) {
    onResolve({ filter: /^\..*\.mjs$/ }, ({ path, resolveDir }) => {
      return { path: pathToFileURL(resolve(resolveDir, path)).href, external: true };
    });
  },
});

if (argv[1] === fileURLToPath(import.meta.url)) {
  const [file = "", ...args] = argv.slice(2);
  process.exitCode = await runTypescript(file, args);
}
