/**
 * The server in a web worker.
 */
import { BrowserMessageReader, BrowserMessageWriter, createConnection } from "vscode-languageserver/browser";
import { cancelling } from "./cancelling.ts";
import { filesOfClient } from "./files-client.ts";
import { rooms } from "./rooms.ts";
import { serve } from "./serve.ts";
import { addressOf, lateFrom } from "./strength/script.ts";
import { version } from "./version.ts";

declare const self: DedicatedWorkerGlobalScope;

const connection = createConnection(new BrowserMessageReader(self), new BrowserMessageWriter(self), {
  connectionStrategy: cancelling,
});
let strength: string | undefined;
serve(connection, {
  services: { ...rooms, late: async () => lateFrom(strength) },
  files: filesOfClient(connection),
  version,
  told: (options) => {
    strength = addressOf(options);
  },
});
