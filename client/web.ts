/**
 * Seatwright in VS Code for the web: the language server is a web worker.
 */
import { type ExtensionContext, Uri } from "vscode";
import { LanguageClient } from "vscode-languageclient/browser";
import { start } from "./start.ts";

let running: { stop(): Promise<void> } | undefined;

export async function activate(context: ExtensionContext): Promise<void> {
  running = await start(context, (options) => {
    const address = Uri.joinPath(context.extensionUri, "dist", "server-web.js").toString(true);
    return new LanguageClient("seatwright", "Seatwright", async () => new Worker(address), options);
  });
}

export function deactivate(): Promise<void> | undefined {
  return running?.stop();
}
