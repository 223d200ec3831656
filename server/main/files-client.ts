/**
 * Files by way of the client, for the server in a web worker, which has no disk of its own.
 */
import type { Connection } from "vscode-languageserver";
import { type Files, LARGEST, MOST_FILES } from "./files.ts";
import { FIND_FILES, type FindFilesResult, READ_FILE, type ReadFileResult } from "./protocol.ts";

/**
 * Files that the client reads. `read` answers from what has come already and asks for the rest; the listener of
 * `onArrival` hears when an answer has come. A client that knows no such request has no other files.
 */
export function filesOfClient(connection: Pick<Connection, "sendRequest">): Files {
  const texts = new Map<string, string | undefined>();
  /** The newest question about each address; the answer to an older one is passed over. */
  const asked = new Map<string, Promise<void>>();
  let arrived: (uri: string) => void = () => {};

  function ask(uri: string) {
    const question = textOf(uri).then((text) => {
      if (asked.get(uri) !== question) return;
      asked.delete(uri);
      texts.set(uri, text);
      arrived(uri);
    });
    asked.set(uri, question);
  }

  async function textOf(uri: string): Promise<string | undefined> {
    try {
      const { text } = await connection.sendRequest<Partial<ReadFileResult>>(READ_FILE, { uri });
      return typeof text !== "string" || text.length > LARGEST ? undefined : text;
    } catch {
      return undefined;
    }
  }

  return {
    read(uri) {
      if (!texts.has(uri) && !asked.has(uri)) ask(uri);
      return texts.get(uri);
    },
    forget(uri) {
      texts.delete(uri);
      asked.delete(uri);
    },
    async list() {
      try {
        const { uris = [] } = await connection.sendRequest<Partial<FindFilesResult>>(FIND_FILES, {});
        return uris.slice(0, MOST_FILES).filter((uri) => typeof uri === "string");
      } catch {
        return [];
      }
    },
    pending: () => (asked.size ? Promise.all(asked.values()) : undefined),
    onArrival: (listener) => {
      arrived = listener;
    },
  };
}
