/**
 * Long work that rests after each small step, so that whoever runs it can answer others in between. Its value comes at the end.
 */
export type Steps<T> = Generator<undefined, T, undefined>;

/** All of it at one go. */
export function finish<T>(steps: Steps<T>): T {
  for (;;) {
    const { value, done } = steps.next();
    if (done) return value;
  }
}
