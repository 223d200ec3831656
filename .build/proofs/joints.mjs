/**
 * The outside checks of joints on 10 000 random chairs instead of some hundreds; SEATWRIGHT_RUNS says how many.
 */
import { runs, runTests } from "../run-tests.mjs";

/** Gives the exit code of the tests. */
export const prove = (/** @type {string[]} */ args) =>
  runTests(["tests/outside/joinery", ...args], runs(10_000));
