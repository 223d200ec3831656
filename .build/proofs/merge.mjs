/**
 * The laws of merging on two thousand random triples of a chair; SEATWRIGHT_RUNS says how many.
 */
import { runs, runTests } from "../run-tests.mjs";

/** Gives the exit code of the tests. */
export const prove = (/** @type {string[]} */ args) =>
  runTests(["tests/server/compare/merge.test.ts", ...args], runs(2000));
