/**
 * Parts and joints that were built for an earlier version of a file. One whose facts are equal to the last bit and whose neighbours are the
 * very same is taken over: a figure that is moved changes few of a chair's parts.
 */
import type { Fault } from "./fault.ts";

/** What one version of a chair was built of, by the names of its parts and joints. */
export type Made = ReadonlyMap<string, readonly Making[]>;

interface Making {
  from: From;
  made: unknown;
}

/** All that something is built from. */
interface From {
  /** Things that have to be the same ones, such as the bodies it lies against. */
  same: readonly unknown[];
  /** Facts and figures that have to be equal. */
  equal: readonly unknown[];
}

/** What is being built, and what an earlier version was built of. */
export interface Reuse {
  before: Made | undefined;
  now: Map<string, Making[]>;
}

/**
 * What `make` builds, or what it built before from the same, as `copy` gives it: with the facts of today, so that no version before the last
 * stays alive, and apart from what is kept here, so that it may be changed in place. It must depend on nothing but `from`. What it tells of
 * among the faults it has to tell again, so that is not kept.
 */
export function madeOnce<T>(
  { before, now }: Reuse,
  name: string,
  from: From,
  { faults, make, copy }: { faults: Fault[]; make: () => T; copy: (made: T) => T },
): T {
  const known = find(now.get(name), from) ?? find(before?.get(name), from);
  const told = faults.length;
  const made = known ? (known.made as T) : make();
  if (faults.length > told) return made;
  const kept = now.get(name) ?? [];
  if (!known || !kept.includes(known)) now.set(name, [...kept, { from, made: copy(made) }]);
  return copy(made);
}

const find = (some: readonly Making[] | undefined, { same, equal }: From): Making | undefined =>
  some?.find(
    ({ from }) =>
      from.same.length === same.length &&
      from.same.every((one, k) => one === same[k]) &&
      isEqual(from.equal, equal),
  );

/** Whether two facts say the same to the last bit, wherever their statements stand in a tree. */
function isEqual(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== "object" || typeof b !== "object" || a === null || b === null) return false;
  if (Array.isArray(a))
    return Array.isArray(b) && a.length === b.length && a.every((one, k) => isEqual(one, b[k]));
  if (Object.getPrototypeOf(a) !== Object.prototype) return false;
  let fields = 0;
  for (const key in a) {
    if (!(key in b)) return false;
    if (key !== "statement" && !isEqual(a[key as keyof typeof a], b[key as keyof typeof b])) return false;
    fields++;
  }
  for (const _ in b) fields--;
  return fields === 0;
}
