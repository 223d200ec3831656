/**
 * Hidden lines of every sample from 12 random sides, and of four times as many random chairs, against rays cast at the solids;
 * SEATWRIGHT_RUNS says from how many.
 */
import { runs, runTests } from "../run-tests.mjs";

/** Gives the exit code of the tests. */
export const prove = (/** @type {string[]} */ args) =>
  runTests(["tests/server/drawing/pictorial.test.ts", ...args], runs(12));
