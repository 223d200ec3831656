/**
 * Hidden lines of every sample from 12 random sides, and of four times as many random chairs, against rays cast at the solids;
 * SEATWRIGHT_RUNS says from how many.
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
    "tests/server/drawing/pictorial.test.ts",
    ...args,
  ];
  const env = { ...process.env, SEATWRIGHT_RUNS: process.env.SEATWRIGHT_RUNS ?? "12" };
  return spawnSync(process.execPath, [vitest, ...options], { cwd: root, stdio: "inherit", env }).status ?? 1;
}
