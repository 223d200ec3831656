/**
 * Plans of 300 random sets of parts cut again by another library, and the exact packing of 60 against HiGHS; SEATWRIGHT_RUNS says how many plans.
 */
import { runs, runTests } from "../run-tests.mjs";

/** Gives the exit code of the tests. */
export const prove = (/** @type {string[]} */ args) => runTests(["tests/outside/boards", ...args], runs(300));
