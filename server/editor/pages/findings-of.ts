import type { Problem } from "../../../grammar/problem.ts";
import { partsNamed } from "../../design/identity.ts";

/** What is found wrong with a part and its joints, a sentence each. */
export const findingsOf = (part: string, problems: readonly Problem[]): string[] =>
  problems
    .filter(({ subject }) => subject !== undefined && partsNamed(subject).includes(part))
    .map(({ severity, message }) => `${severity}: ${message}`);
