/**
 * The bundle of what is worked out late, in a web worker: a script that the client says where to find.
 */
import type { LateWork } from "../../strength/late.ts";

/** What that script leaves behind. */
declare global {
  var seatwrightStrength: { lateSteps: LateWork } | undefined;
}

declare function importScripts(address: string): void;

/** Where it is among what the client sends at first, as `bundles.strength`; nothing where it does not say. */
export function addressOf(options: unknown): string | undefined {
  const { bundles } = (options ?? {}) as { bundles?: { strength?: unknown } | null };
  return typeof bundles?.strength === "string" ? bundles.strength : undefined;
}

/** Loads it when it is asked for first. Throws where it cannot be found. */
export function lateFrom(address: string | undefined): LateWork {
  if (!globalThis.seatwrightStrength) {
    if (address === undefined) throw new Error("The client has not said where the bundle for strength is.");
    importScripts(address);
  }
  if (!globalThis.seatwrightStrength) throw new Error("The bundle for strength could not be started.");
  return globalThis.seatwrightStrength.lateSteps;
}
