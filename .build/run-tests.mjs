/**
 * The project's tests, run by its own settings.
 */
import { spawnSync } from "node:child_process";
import { join } from "node:path";
import { root } from "./places.mjs";

/** Runs tests by their paths (other arguments of vitest beside them), with more in the environment; gives its exit code. */
export function runTests(
  /** @type {string[]} */ args,
  /** @type {Record<string, string | undefined>} */ environment = {},
) {
  const vitest = join(root, "node_modules", "vitest", "vitest.mjs");
  const options = [vitest, "run", "--config", "tests/vitest.config.mts", ...args];
  const env = { ...process.env, ...environment };
  return spawnSync(process.execPath, options, { cwd: root, stdio: "inherit", env }).status ?? 1;
}

/** How many random cases a proof takes: as SEATWRIGHT_RUNS says, else `usual`. */
export const runs = (/** @type {number} */ usual) => ({
  SEATWRIGHT_RUNS: process.env.SEATWRIGHT_RUNS ?? String(usual),
});
