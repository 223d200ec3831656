/**
 * Seatwright in VS Code on the desktop: the language server is a Node process of its own.
 */
import { type ExtensionContext, Uri } from "vscode";
import { LanguageClient, TransportKind } from "vscode-languageclient/node";
import { start } from "./start.ts";

let running: { stop(): Promise<void> } | undefined;

export async function activate(context: ExtensionContext): Promise<void> {
  running = await start(context, (options) => {
    const module = Uri.joinPath(context.extensionUri, "dist", "server.js").fsPath;
    return new LanguageClient("seatwright", "Seatwright", { module, transport: TransportKind.ipc }, options);
  });
}

export function deactivate(): Promise<void> | undefined {
  return running?.stop();
}
