/**
 * Ranges of all samples and of 50 random chairs against a scan of 400 places each.
 */
import { runTests } from "../run-tests.mjs";

/** Gives the exit code of the tests. */
export const prove = (/** @type {string[]} */ args) =>
  runTests(["tests/outside/range", ...args], { SEATWRIGHT_PROVE: "ranges" });
