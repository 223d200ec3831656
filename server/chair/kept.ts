import type { Steps } from "../../grammar/steps.ts";
import type { Chair } from "./chair.ts";

/**
 * The answer to a question asked of a chair, worked out once and kept on that chair. What is asked must depend on its parts and joints
 * alone, which never change once it is built.
 */
export function kept<T>(chair: Chair, ask: (chair: Chair) => T): T {
  if (!chair.answers.has(ask)) chair.answers.set(ask, ask(chair));
  return chair.answers.get(ask) as T;
}

/** The same, resting within when it is asked for the first time; `steps` work out what `ask` gives. */
export function* keptSteps<T>(
  chair: Chair,
  ask: (chair: Chair) => T,
  steps: (chair: Chair) => Steps<T>,
): Steps<T> {
  if (!chair.answers.has(ask)) chair.answers.set(ask, yield* steps(chair));
  return chair.answers.get(ask) as T;
}
