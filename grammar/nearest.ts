/**
 * The number of letters to put in, take out, change or swap with a neighbour to make one word of the other (the optimal
 * string alignment form of the Damerau-Levenshtein distance). Stops counting above `limit` and then gives `limit + 1`.
 */
export function distance(from: string, to: string, limit = Number.POSITIVE_INFINITY): number {
  if (Math.abs(from.length - to.length) > limit) return limit + 1;
  let before: number[] = [];
  let leastAbove = 0;
  let above = Array.from({ length: to.length + 1 }, (_, column) => column);
  for (let row = 1; row <= from.length; row++) {
    const line = [row];
    let least = row;
    for (let column = 1; column <= to.length; column++) {
      const same = from[row - 1] === to[column - 1];
      let cost = Math.min(above[column]! + 1, line[column - 1]! + 1, above[column - 1]! + (same ? 0 : 1));
      if (row > 1 && column > 1 && from[row - 1] === to[column - 2] && from[row - 2] === to[column - 1]) {
        cost = Math.min(cost, before[column - 2]! + 1);
      }
      line.push(cost);
      if (cost < least) least = cost;
    }
    // a swap reaches back two lines, so both must be beyond the limit
    if (least > limit && leastAbove > limit) return limit + 1;
    leastAbove = least;
    before = above;
    above = line;
  }
  return Math.min(above[to.length]!, limit + 1);
}

/** Whether no other candidate is as like a word as its nearest one: only then is it plain what was meant. */
export function isOnlyNearest(word: string, near: string, candidates: Iterable<string>): boolean {
  const lower = word.toLowerCase();
  const slips = distance(lower, near.toLowerCase());
  for (const other of candidates) {
    if (other !== near && other !== word && distance(lower, other.toLowerCase(), slips) <= slips)
      return false;
  }
  return true;
}

/**
 * The candidate most like a word, or undefined when none is near enough: one slip in three letters, three at most. Case is
 * passed over; the first of equals wins.
 */
export function nearest(word: string, candidates: Iterable<string>): string | undefined {
  if (word.length > 60) return undefined;
  const lower = word.toLowerCase();
  let best: string | undefined;
  let limit = Math.min(3, Math.floor((word.length + 1) / 3)) + 1;
  for (const candidate of candidates) {
    if (candidate === word) continue;
    const slips = distance(lower, candidate.toLowerCase(), limit - 1);
    if (slips < limit && slips < candidate.length) {
      best = candidate;
      limit = slips;
      if (slips === 0) break;
    }
  }
  return best;
}
