/**
 * The webview panel that a drawing is shown in: its page and its icon, which are the same whatever chair it shows.
 */
import { Uri, ViewColumn, type WebviewPanel, window } from "vscode";
import { nameOf } from "../names.ts";
import { panelPage } from "./page.ts";

export const VIEW_TYPE = "seatwright.drawing";

/** A new one beside the text, which keeps the caret. */
export const openBeside = (): WebviewPanel =>
  window.createWebviewPanel(VIEW_TYPE, "Drawing", { viewColumn: ViewColumn.Beside, preserveFocus: true });

/** Gives it the page, from the extension's folder. */
export function setPage(panel: WebviewPanel, extension: Uri): void {
  const dist = Uri.joinPath(extension, "dist");
  const file = (name: string) => panel.webview.asWebviewUri(Uri.joinPath(dist, name)).toString();
  const icon = (kind: string) => Uri.joinPath(extension, "client", "icons", `chair-${kind}.svg`);
  panel.iconPath = { light: icon("light"), dark: icon("dark") };
  panel.webview.options = { enableScripts: true, localResourceRoots: [dist] };
  panel.webview.html = panelPage({
    cspSource: panel.webview.cspSource,
    nonce: crypto.randomUUID(),
    script: file("panel.js"),
    pictorial: file("panel-pictorial.js"),
    boards: file("panel-boards.js"),
    strength: file("panel-strength.js"),
    style: file("panel.css"),
  });
}

/** What the tab says; a panel that stays with its chair has its name in brackets, as VS Code's own previews have. */
export const titleOf = (uri: Uri, locked: boolean): string =>
  locked ? `[Drawing of ${nameOf(uri)}]` : `Drawing of ${nameOf(uri)}`;
