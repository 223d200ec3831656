/**
 * A thousand random sensible changes of a chair, each told by the comparison and nothing else; SEATWRIGHT_RUNS says how many.
 */
import { runs, runTests } from "../run-tests.mjs";

/** Gives the exit code of the tests. */
export const prove = (/** @type {string[]} */ args) =>
  runTests(["tests/server/compare/random.test.ts", ...args], runs(1000));
