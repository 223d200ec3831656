/**
 * Every part of every sample and of 500 random chairs cut from its sheet alone; SEATWRIGHT_RUNS says how many.
 */
import { spawnSync } from "node:child_process";
import { join } from "node:path";
import { root } from "../places.mjs";

/** Gives the exit code of the tests. */
export function prove(/** @type {string[]} */ args) {
  const vitest = join(root, "node_modules", "vitest", "vitest.mjs");
  const options = ["run", "--config", "tests/vitest.config.mts", "tests/outside/sheets", ...args];
  const env = { ...process.env, SEATWRIGHT_RUNS: process.env.SEATWRIGHT_RUNS ?? "500" };
  return spawnSync(process.execPath, [vitest, ...options], { cwd: root, stdio: "inherit", env }).status ?? 1;
}
