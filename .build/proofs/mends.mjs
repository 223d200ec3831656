/**
 * Every mend tried again: over the rules' examples, the samples with each number moved, and random chairs. Arguments: a share such as
 * `1/20`, so that a part of it can be run.
 */
import { runTypescript } from "../run-typescript.mjs";

/** Gives 0 when every mend held. */
export const prove = (/** @type {string[]} */ args) => runTypescript("tests/proofs/mends.ts", args);
