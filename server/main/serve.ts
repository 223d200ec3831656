/**
 * The language server over any connection: a process's standard streams, its parent's channel or a web worker's messages.
 */

import type { Connection } from "vscode-languageserver";
import { followDocuments } from "./serving/documents.ts";
import { answerDrawing } from "./serving/drawing-requests.ts";
import { shakeHands } from "./serving/handshake.ts";
import { answerFeatures } from "./serving/requests.ts";
import { type Host, Session } from "./serving/session.ts";

/** Serves one client until it says exit. */
export function serve(connection: Connection, host: Host): void {
  const session = new Session(connection, host);
  shakeHands(session);
  followDocuments(session);
  answerDrawing(session);
  answerFeatures(session);
  connection.listen();
}
