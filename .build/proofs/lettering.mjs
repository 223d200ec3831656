/**
 * Words on words on the drawing, over every sample, many sizes of panel and all that can be laid over it; then on the sheets of every sample on
 * each paper, with letters as large as there is room for. Arguments: a share of the drawings such as `1/20`, or `sheets` for the sheets alone.
 */
import { runTypescript } from "../run-typescript.mjs";

/** Gives 0 when no words lie on others. */
export async function prove(/** @type {string[]} */ args) {
  const drawings = args.includes("sheets") ? 0 : await runTypescript("tests/proofs/lettering.ts", args);
  return drawings || (await runTypescript("tests/proofs/sheet-letters.ts", []));
}
