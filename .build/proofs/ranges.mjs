/**
 * Ranges of all samples and of 50 random chairs against a scan of 400 places each. A share of them is named as `1/2`. A program of its own,
 * not a test: the tests' runner makes every call between modules dearer, and these are tens of thousands of studies.
 */
import { runTypescript } from "../run-typescript.mjs";

/** Gives the exit code: 1 where a range is not as its scan, 2 when the share is not one. */
export const prove = (/** @type {string[]} */ args) => runTypescript("tests/proofs/ranges.ts", args);
