/**
 * Every part of every sample and of 500 random chairs cut from its sheet alone; SEATWRIGHT_RUNS says how many.
 */
import { runs, runTests } from "../run-tests.mjs";

/** Gives the exit code of the tests. */
export const prove = (/** @type {string[]} */ args) => runTests(["tests/outside/sheets", ...args], runs(500));
