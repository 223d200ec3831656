/**
 * The laws of the fixes of reading on 100 000 damaged texts. Arguments: a share such as `3/20`, so that a part of it can be run; the shares
 * together are the whole. SEATWRIGHT_RUNS says how many texts in all.
 */
import { runTests } from "../run-tests.mjs";

/** Where the texts begin. */
const SEED = 1_000_000;

/** Gives the exit code of the tests, 2 when the share is not one. */
export function prove(/** @type {string[]} */ [share = "1/1"]) {
  const [part = 0, of = 0] = share.split("/").map(Number);
  if (!(Number.isInteger(part) && part >= 1 && part <= of)) {
    console.error("Name a share of the texts, as 3/20.");
    return 2;
  }
  const all = Number(process.env.SEATWRIGHT_RUNS ?? 100_000);
  const [from, end] = [part - 1, part].map((at) => Math.round((all * at) / of));
  return runTests(["tests/fuzz/certain-fixes.test.ts"], {
    SEATWRIGHT_SEED: String(SEED + from),
    SEATWRIGHT_RUNS: String(end - from),
    SEATWRIGHT_TIME: undefined,
  });
}
