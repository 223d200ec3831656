/**
 * Options that several commands have.
 */
import type { Option } from "./command.ts";

/** Which of its formats a command answers in. */
export const formatOption: Option = {
  type: "string",
  does: "the form of the answer; the first unless given",
};

/** Where the answer goes. */
export const outOption: Option = {
  type: "string",
  short: "o",
  values: "FILE",
  does: "write the answer into this file instead of standard output",
};
