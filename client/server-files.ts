/**
 * Answers the server that runs in a web worker and has no files of its own: texts of files named by `use` and `like`, and the
 * addresses of the workspace's chairs.
 */
import { Disposable, Uri } from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import * as z from "zod";
import { FIND_FILES, type FindFilesResult, READ_FILE, type ReadFileResult } from "../server/main/protocol.ts";
import { chairText } from "./chair-text.ts";
import { findChairs } from "./find-chairs.ts";

const readParams = z.object({ uri: z.string() });

/** Answers while the client runs, and stops when disposed. */
export function answerFileRequests(client: BaseLanguageClient): Disposable {
  return Disposable.from(
    client.onRequest(READ_FILE, async (params): Promise<ReadFileResult> => {
      const asked = readParams.safeParse(params);
      return { text: asked.success ? await chairText(Uri.parse(asked.data.uri)) : null };
    }),
    client.onRequest(FIND_FILES, async (): Promise<FindFilesResult> => {
      return { uris: (await findChairs()).map(String) };
    }),
  );
}
