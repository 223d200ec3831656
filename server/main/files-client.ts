/**
 * Files by way of the client, for the server in a web worker, which has no disk of its own.
 */
import type { Connection } from "vscode-languageserver";
import * as z from "zod/mini";
import { type Files, LARGEST, MOST_FILES } from "./files.ts";
import { FIND_FILES, READ_FILE } from "./protocol.ts";

const readResult = z.object({ text: z.nullable(z.string()) });
const findResult = z.object({ uris: z.array(z.string()) });

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
      const { text } = readResult.parse(await connection.sendRequest(READ_FILE, { uri }));
      return text === null || text.length > LARGEST ? undefined : text;
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
        return findResult.parse(await connection.sendRequest(FIND_FILES, {})).uris.slice(0, MOST_FILES);
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
