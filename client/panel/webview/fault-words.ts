import type { Fault } from "../../../server/editor/faults.ts";

/** The findings that speak of a part. */
export function faultsOfPart(faults: readonly Fault[], part: string): Fault[] {
  return faults.filter(({ parts }) => parts.some((each) => each.part === part));
}

/** `A · error: …`: the letter on the drawing, how grave it is, what is wrong. */
export function faultWords({ letter, severity, message }: Fault): string {
  return `${letter} · ${severity}: ${message}`;
}
