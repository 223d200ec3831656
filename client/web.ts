/**
 * Seatwright in VS Code for the web: the language server is a web worker.
 */
import { type ExtensionContext, Uri } from "vscode";
import {
  BrowserMessageReader,
  BrowserMessageWriter,
  LanguageClient,
  type MessageTransports,
} from "vscode-languageclient/browser";
import { start } from "./start.ts";

let running: { stop(): Promise<void> } | undefined;
let worker: Worker | undefined;

export async function activate(context: ExtensionContext): Promise<void> {
  const bundle = (name: string) => Uri.joinPath(context.extensionUri, "dist", name).toString(true);
  running = await start(
    context,
    (options) =>
      new LanguageClient(
        "seatwright",
        "Seatwright",
        async () => startWorker(bundle("server-web.js")),
        // A worker does not know where it came from, so it is told where to find what it loads late.
        {
          ...options,
          initializationOptions: {
            ...options.initializationOptions,
            bundles: { strength: bundle("strength-web.js") },
          },
        },
      ),
    (name, heard, failed) => {
      const marker = new Worker(bundle(`${name}-web.js`));
      marker.onmessage = ({ data }) => heard(data);
      marker.onerror = ({ message }) => failed(message || "its worker could not be started");
      return { send: (request) => marker.postMessage(request), stop: () => marker.terminate() };
    },
  );
}

export async function deactivate(): Promise<void> {
  await running?.stop();
  worker?.terminate();
}

/** A fresh server each time, so that a restart is one. */
function startWorker(address: string): MessageTransports {
  worker?.terminate();
  worker = new Worker(address);
  return { reader: new BrowserMessageReader(worker), writer: new BrowserMessageWriter(worker) };
}
