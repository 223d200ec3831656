/**
 * Chairs with every token, sign or line taken out, every beginning of them and 100 000 random edits: they are read, built, marked out, and
 * every editor feature answers.
 */
import { spawnSync } from "node:child_process";
import { join } from "node:path";
import { root } from "../places.mjs";

const tests = [
  "tests/grammar/broken.test.ts",
  "tests/grammar/random-edits.test.ts",
  "tests/server/chair/build.test.ts",
  "tests/server/drawing/markout/odd-chairs.test.ts",
  "tests/server/editor/broken-text.test.ts",
];

/** Gives the exit code of the tests. Arguments instead of the list: the tests to run. */
export function prove(/** @type {string[]} */ args) {
  const vitest = join(root, "node_modules", "vitest", "vitest.mjs");
  const chosen = args.length > 0 ? args : tests;
  const options = ["run", "--config", "tests/vitest.config.mts", ...chosen];
  const env = { ...process.env, SEATWRIGHT_PROVE: "damage" };
  return spawnSync(process.execPath, [vitest, ...options], { cwd: root, stdio: "inherit", env }).status ?? 1;
}
