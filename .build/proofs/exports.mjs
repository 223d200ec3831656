/**
 * Every sample and 50 random chairs exported and read back by other programs, by the slow ones too; SEATWRIGHT_RUNS says how many.
 */
import { runs, runTests } from "../run-tests.mjs";

/** Gives the exit code of the tests. */
export const prove = (/** @type {string[]} */ args) => runTests(["tests/outside/exports", ...args], runs(50));
