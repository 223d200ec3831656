/**
 * `npm run fuzz -- [--seed N] [--time S] [NAME…]`: the fuzzers of tests/fuzz, each for so many seconds from a seed; names narrow them.
 */
import { parseArgs } from "node:util";
import { runTests } from "./run-tests.mjs";

/** Gives the exit code of the tests; 2 when the arguments are wrong. */
export function fuzz(/** @type {string[]} */ args) {
  /** @type {{ values: { seed?: string, time?: string }, positionals: string[] }} */
  let given;
  try {
    const options = /** @type {const} */ ({ seed: { type: "string" }, time: { type: "string" } });
    given = parseArgs({ args, options, allowPositionals: true });
  } catch (error) {
    console.error(String(error));
    return 2;
  }
  const { seed = String(Date.now() % 1_000_000_000), time = "60" } = given.values;
  if (!(Number.isSafeInteger(Number(seed)) && Number(time) > 0)) {
    console.error("--seed takes a whole number, --time a number of seconds.");
    return 2;
  }
  console.log(`seed ${seed}, ${time} s each`);
  const names = given.positionals.length > 0 ? given.positionals : [""];
  // One file at a time: some measure how soon a server answers.
  const tests = names.map((name) => `tests/fuzz/${name}`);
  return runTests(["--maxWorkers=1", ...tests], { SEATWRIGHT_SEED: seed, SEATWRIGHT_TIME: time });
}
