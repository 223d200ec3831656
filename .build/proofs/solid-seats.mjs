/**
 * 500 random chairs on a solid seat through every command and every law; SEATWRIGHT_RUNS says how many, SEATWRIGHT_FROM after how many of
 * them. What fails is written to `.cache/solid-seats/` as it is found.
 */
import { spawnSync } from "node:child_process";
import { join } from "node:path";
import { root } from "../places.mjs";

/** Gives the exit code of the tests. */
export function prove(/** @type {string[]} */ args) {
  const vitest = join(root, "node_modules", "vitest", "vitest.mjs");
  const options = [
    "run",
    "--config",
    "tests/vitest.config.mts",
    "tests/outside/seats/random.test.ts",
    ...args,
  ];
  const env = { ...process.env, SEATWRIGHT_RUNS: process.env.SEATWRIGHT_RUNS ?? "500" };
  return spawnSync(process.execPath, [vitest, ...options], { cwd: root, stdio: "inherit", env }).status ?? 1;
}
