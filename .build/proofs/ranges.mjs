/**
 * Ranges of all samples and of 50 random chairs against a scan of 400 places each.
 */
import { spawnSync } from "node:child_process";
import { join } from "node:path";
import { root } from "../places.mjs";

/** Gives the exit code of the tests. */
export function prove(/** @type {string[]} */ args) {
  const vitest = join(root, "node_modules", "vitest", "vitest.mjs");
  const options = ["run", "--config", "tests/vitest.config.mts", "tests/outside/range", ...args];
  const env = { ...process.env, SEATWRIGHT_PROVE: "ranges" };
  return spawnSync(process.execPath, [vitest, ...options], { cwd: root, stdio: "inherit", env }).status ?? 1;
}
