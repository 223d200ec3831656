import type { Steps } from "../../../grammar/steps.ts";

/** Long work at one go, with a line on standard error that says how far it is while somebody watches. */
export function finishWatched<T>(steps: Steps<T>, doing: string, of?: number): T {
  const watched = process.stderr.isTTY === true;
  let told = performance.now();
  for (let count = 0; ; count++) {
    const { value, done } = steps.next();
    if (done) {
      if (watched) process.stderr.write("\r\u001b[K");
      return value;
    }
    if (!watched || performance.now() - told < 200) continue;
    told = performance.now();
    process.stderr.write(`\r\u001b[K${doing}: ${count}${of === undefined ? "" : ` of about ${of}`}`);
  }
}
