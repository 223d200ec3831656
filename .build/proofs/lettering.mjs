/**
 * Words on words on the drawing, over every sample, many sizes of panel and all that can be laid over it. Arguments: a share such as `1/20`.
 */
import { runTypescript } from "../run-typescript.mjs";

/** Gives 0 when no words lie on others. */
export const prove = (/** @type {string[]} */ args) => runTypescript("tests/proofs/lettering.ts", args);
