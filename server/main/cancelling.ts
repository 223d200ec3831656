/**
 * A request called off while it still waits its turn is answered at once and never run.
 */
import { type ConnectionStrategy, LSPErrorCodes } from "vscode-languageserver";

export const cancelling: ConnectionStrategy = {
  cancelUndispatched: (message) => ({
    jsonrpc: "2.0",
    id: "id" in message ? (message.id as number) : null,
    error: { code: LSPErrorCodes.RequestCancelled, message: "Called off." },
  }),
};
