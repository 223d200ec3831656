/**
 * Plans of 300 random sets of parts cut again by another library, and the exact packing of 60 against HiGHS; SEATWRIGHT_RUNS says how many plans.
 */
import { spawnSync } from "node:child_process";
import { join } from "node:path";
import { root } from "../places.mjs";

/** Gives the exit code of the tests. */
export function prove(/** @type {string[]} */ args) {
  const vitest = join(root, "node_modules", "vitest", "vitest.mjs");
  const options = ["run", "--config", "tests/vitest.config.mts", "tests/outside/boards", ...args];
  const env = { ...process.env, SEATWRIGHT_RUNS: process.env.SEATWRIGHT_RUNS ?? "300" };
  return spawnSync(process.execPath, [vitest, ...options], { cwd: root, stdio: "inherit", env }).status ?? 1;
}
