/**
 * Seatwright in VS Code on the desktop: the language server is a Node process of its own.
 */
import { Worker } from "node:worker_threads";
import { type ExtensionContext, Uri } from "vscode";
import { LanguageClient, TransportKind } from "vscode-languageclient/node";
import { start } from "./start.ts";

let running: { stop(): Promise<void> } | undefined;

export async function activate(context: ExtensionContext): Promise<void> {
  const bundle = (name: string) => Uri.joinPath(context.extensionUri, "dist", name).fsPath;
  running = await start(
    context,
    (options) => {
      const server = { module: bundle("server.js"), transport: TransportKind.ipc };
      return new LanguageClient("seatwright", "Seatwright", server, options);
    },
    (name, heard, failed) => {
      const worker = new Worker(bundle(`${name}.js`));
      worker.on("message", heard).on("error", ({ message }) => failed(message));
      return { send: (request) => worker.postMessage(request), stop: () => void worker.terminate() };
    },
  );
}

export function deactivate(): Promise<void> | undefined {
  return running?.stop();
}
