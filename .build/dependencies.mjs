/**
 * Brings node_modules in line with the lock file, so that every script works on a fresh machine.
 */
import { spawnSync } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { root } from "./places.mjs";

/** Installs what the lock file names when it is not all there; does nothing when it is. */
export function ensureDependencies() {
  if (installed()) return;
  console.log("Installing the packages named in package-lock.json …");
  const npm = process.platform === "win32" ? "npm.cmd" : "npm";
  const shell = process.platform === "win32";
  const { status } = spawnSync(npm, ["ci", "--no-audit", "--no-fund"], {
    cwd: root,
    stdio: "inherit",
    shell,
  });
  if (status !== 0) {
    console.error("npm ci failed, so nothing else can run.");
    process.exit(1);
  }
}

function installed() {
  const record = join(root, "node_modules", ".package-lock.json");
  if (!existsSync(record)) return false;
  const wanted = packages(join(root, "package-lock.json"));
  const present = packages(record);
  return Object.entries(wanted).every(
    ([path, { version, optional }]) => path === "" || optional || present[path]?.version === version,
  );
}

/** @returns {Record<string, { version?: string, optional?: boolean }>} */
function packages(/** @type {string} */ file) {
  return JSON.parse(readFileSync(file, "utf8")).packages ?? {};
}
