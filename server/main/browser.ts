/**
 * The server in a web worker.
 */
import { BrowserMessageReader, BrowserMessageWriter, createConnection } from "vscode-languageserver/browser";
import { cancelling } from "./cancelling.ts";
import { filesOfClient } from "./files-client.ts";
import { serve } from "./serve.ts";
import { services } from "./services.ts";
import { version } from "./version.ts";

declare const self: DedicatedWorkerGlobalScope;

const connection = createConnection(new BrowserMessageReader(self), new BrowserMessageWriter(self), {
  connectionStrategy: cancelling,
});
serve(connection, { services, files: filesOfClient(connection), version });
