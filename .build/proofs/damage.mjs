/**
 * Chairs with every token, sign or line taken out, every beginning of them and 100 000 random edits: they are read, built, marked out, and
 * every editor feature answers.
 */
import { runTests } from "../run-tests.mjs";

const tests = [
  "tests/grammar/broken.test.ts",
  "tests/grammar/random-edits.test.ts",
  "tests/server/chair/build.test.ts",
  "tests/server/drawing/markout/odd-chairs.test.ts",
  "tests/server/editor/broken-text.test.ts",
];

/** Gives the exit code of the tests. Arguments instead of the list: the tests to run. */
export const prove = (/** @type {string[]} */ args) =>
  runTests(args.length > 0 ? args : tests, { SEATWRIGHT_PROVE: "damage" });
