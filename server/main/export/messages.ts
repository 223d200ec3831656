/**
 * What passes between the client and the worker that exports. The worker reads no files: what a chair names and was not sent, it asks for.
 */
import type { ExportKind } from "../../exports/kinds.ts";

export interface ExportRequest {
  text: string;
  address: string;
  /** Other files' texts by their addresses; null where there is none. */
  files: Record<string, string | null>;
  kind: ExportKind["kind"];
  part?: string;
}

export type ExportReply =
  /** Send it all again with these too. */
  | { is: "missing"; addresses: string[] }
  | { is: "progress"; done: number; of: number }
  | { is: "made"; files: { name: string; bytes: Uint8Array }[]; parts: number; leftOut: string[] }
  /** It cannot be done: one sentence in the maker's words. */
  | { is: "refused"; because: string };
