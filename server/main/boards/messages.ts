/**
 * What passes between the client and the worker that plans the boards. The worker reads no files: what a chair names and was not sent, it
 * asks for.
 */
import type { BoardsShown } from "../../drawing/boards/shown.ts";

export interface BoardsRequest {
  text: string;
  address: string;
  /** The text's version, given back with what is shown. */
  version: number;
  /** Other files' texts by their addresses; null where there is none. */
  files: Record<string, string | null>;
}

export type BoardsReply =
  /** Send it all again with these too. */
  | { is: "missing"; addresses: string[] }
  /** The stock list at first, then it with each better plan; `done` with the last. */
  | { is: "boards"; version: number; shown: BoardsShown; pass: number; of: number; done: boolean }
  /** It cannot be done: one sentence in the maker's words. */
  | { is: "refused"; version: number; because: string };
