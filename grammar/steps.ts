/**
 * Long work that rests after each small step, so that whoever runs it can answer others in between. Its value comes at the end; what it
 * yields on the way is what is known so far, nothing as a rule.
 */
export type Steps<T, Known = undefined> = Generator<Known, T, undefined>;

/** All of it at one go. */
export function finish<T>(steps: Steps<T, unknown>): T {
  for (;;) {
    const { value, done } = steps.next();
    if (done) return value;
  }
}
