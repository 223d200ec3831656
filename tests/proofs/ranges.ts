/**
 * `npm run prove ranges`: ranges of all samples and of 50 random chairs against a scan of 400 places each.
 *
 *     node .build/run.mjs prove ranges [SHARE]
 *
 * SHARE such as 1/2: every second range, from the first; the shares together are the whole. SEATWRIGHT_RUNS says how many random chairs.
 */
import { boundedCases, randomCases, strays } from "../outside/range/scan.ts";
import { samples } from "../server/range/files.ts";

/** Places of each scan. */
const PLACES = 400;

const [share = "1/1"] = process.argv.slice(2);
const [first = 0, every = 0] = share.split("/").map(Number);
if (!(Number.isInteger(every) && Number.isInteger(first) && first >= 1 && first <= every)) {
  console.error("Name a share of the ranges, as 1/2.");
  process.exitCode = 2;
} else {
  const cases = [
    ...Object.entries(samples).flatMap(([name, text]) => boundedCases(name, text)),
    ...randomCases(Number(process.env.SEATWRIGHT_RUNS ?? 50)),
  ].filter((_, at) => at % every === first - 1);
  let wrong = 0;
  for (const [k, each] of cases.entries()) {
    const begun = process.cpuUsage();
    const found = strays(each, PLACES);
    const { user, system } = process.cpuUsage(begun);
    wrong += found.length;
    for (const line of found) console.log(`${each.called}: ${line}`);
    if (found.length > 0) console.log(each.text);
    console.log(
      `${k + 1} of ${cases.length}: ${each.called}, ${each.choice}: ${found.length === 0 ? "as the scan" : "not as the scan"}, ${((user + system) / 1e6).toFixed(1)} s of processor time`,
    );
  }
  console.log(`${cases.length} ranges, ${wrong} stray findings`);
  process.exitCode = wrong === 0 ? 0 : 1;
}
