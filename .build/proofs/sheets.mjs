/**
 * Every part of every sample and of 500 random chairs cut from its sheet alone, and put together again; SEATWRIGHT_RUNS says how many.
 * Arguments: a share such as `3/20`, so that a part of it can be run; the shares together are the whole.
 */
import { runs, runTests } from "../run-tests.mjs";

/** Gives the exit code of the tests, 2 when the share is not one. */
export function prove(/** @type {string[]} */ [share = "1/1"]) {
  const [part = 0, of = 0] = share.split("/").map(Number);
  if (!(Number.isInteger(part) && part >= 1 && part <= of)) {
    console.error("Name a share of the chairs, as 3/20.");
    return 2;
  }
  // What is not a list of chairs belongs to the first share.
  const tests = part === 1 ? "tests/outside/sheets" : "tests/outside/sheets/cut.test.ts";
  return runTests([tests], {
    ...runs(500),
    SEATWRIGHT_PROVE: "sheets",
    SEATWRIGHT_SHARE: `${part}/${of}`,
  });
}
