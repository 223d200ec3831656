/**
 * Where the server reads files that are not open in the editor. One form for Node (from disk) and for the browser (by asking the client).
 */
export interface Files {
  /** The text at an address, or nothing if there is none (or, in the browser, if it has not come yet). */
  read(uri: string): string | undefined;
  /** What was read of this address no longer holds. */
  forget(uri: string): void;
  /** The chair files of these workspace folders, for searches over the workspace. */
  list(folders: readonly string[]): Promise<string[]>;
  /** Settles when every text asked for so far has come; absent or undefined when none is awaited. */
  pending?: () => Promise<unknown> | undefined;
  /** Called with an address whose text has come after it was asked for. */
  onArrival?: (listener: (uri: string) => void) => void;
}

/** Files larger than this are not read: no chair is 10 MB long. */
export const LARGEST = 10 * 1024 * 1024;

/** Most chair files looked at in one workspace. */
export const MOST_FILES = 2000;
