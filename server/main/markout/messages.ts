/**
 * What passes between the client and the worker that makes marking-out sheets. The worker reads no files: what a chair names
 * and was not sent, it asks for.
 */
import type { LetterFiles } from "../../drawing/markout/letters/files.ts";
import type { MarkoutOptions } from "../../drawing/markout/pages.ts";

export interface MarkoutRequest {
  text: string;
  address: string;
  /** Other files' texts by their addresses; null where there is none. */
  files: Record<string, string | null>;
  options: MarkoutOptions;
  /** Sheets are written with standard fonts without them. */
  letters?: LetterFiles;
  /** Milliseconds since 1970, for the file's own date. */
  date: number;
}

export type MarkoutReply =
  /** Send it all again with these too. */
  | { is: "missing"; addresses: string[] }
  | { is: "progress"; done: number; of: number }
  | { is: "made"; bytes: Uint8Array; pages: number }
  /** It cannot be done: one sentence in the maker's words. */
  | { is: "refused"; because: string };
