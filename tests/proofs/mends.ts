/**
 * `npm run prove mends`: every mend over the rules' examples, all samples with each number moved, and 300 random chairs.
 *
 *     node .build/run.mjs prove mends [KIND] [SHARE]
 *
 * KIND is `examples`, `random` or `samples`, all of them without it; SHARE such as 2/20: every 20th text, from the second. KIND `strength` is
 * the moved samples again, but only the mends of what strength and moisture find, which costs a fraction of all.
 */

import { isLateFinding } from "../../server/rules/late-findings.ts";
import { type Case, exampleCases, movedSamples, randomCases } from "./mended-texts.ts";
import { outcomeOf, roundAndRound } from "./mends-hold.ts";

const kinds: Record<string, () => Iterable<Case>> = {
  examples: exampleCases,
  random: () => randomCases(300),
  samples: movedSamples,
};
const asked = process.argv.slice(2);
const lateOnly = asked.includes("strength");
const concerns = lateOnly ? isLateFinding : () => true;
const named = lateOnly ? ["samples"] : asked.filter((each) => each in kinds);
const [first = 1, every = 1] = (asked.find((each) => each.includes("/")) ?? "1/1").split("/").map(Number);
const cases = (named.length > 0 ? named : Object.keys(kinds))
  .flatMap((kind) => [...(kinds[kind]?.() ?? [])])
  .filter((_, at) => at % every === first % every);
const total = { findings: 0, mended: 0, mends: 0 };
const failures: string[] = [];
let done = 0;
for (const each of cases) {
  const { failures: failed, ...counts } = outcomeOf(each, concerns);
  for (const key of ["findings", "mended", "mends"] as const) total[key] += counts[key];
  failures.push(...failed);
  // Following mends to their end costs much more, so every eighth text is followed.
  const round = done % 8 === 0 ? roundAndRound(each, concerns) : undefined;
  if (round) failures.push(round);
  if (++done % 50 === 0)
    console.error(`${done} of ${cases.length} texts, ${total.mends} mends, ${failures.length} failures`);
}
for (const line of failures) console.log(line);
console.log(
  `${done} texts: ${total.findings} findings, ${total.mended} with a mend, ${total.mends} mends made, ${failures.length} failures`,
);
process.exitCode = failures.length === 0 ? 0 : 1;
