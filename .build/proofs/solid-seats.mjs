/**
 * 500 random chairs on a solid seat through every law and the commands, of which slow ones go round the chairs in a fixed order; some ten
 * minutes on two quiet cores, a share on each. SEATWRIGHT_RUNS says how many, SEATWRIGHT_FROM after how many of them. Arguments: a share such as `1/2`; the shares together are the whole. What fails is written to `.cache/solid-seats/` as it is found.
 */
import { runs, runTests } from "../run-tests.mjs";

/** Gives the exit code of the tests, 2 when the share is not one. */
export function prove(/** @type {string[]} */ [share = "1/1"]) {
  const [part = 0, of = 0] = share.split("/").map(Number);
  if (!(Number.isInteger(part) && part >= 1 && part <= of)) {
    console.error("Name a share of the chairs, as 1/2.");
    return 2;
  }
  return runTests(["tests/outside/seats/random.test.ts"], {
    ...runs(500),
    SEATWRIGHT_PROVE: "solid-seats",
    SEATWRIGHT_SHARE: `${part}/${of}`,
  });
}
