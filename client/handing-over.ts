/**
 * Says in a few words that a file was written, with a way to it: the program that the system opens such files with where there is
 * one, else the browser's own downloads.
 */
import { commands, env, l10n, UIKind, type Uri, ViewColumn, window, workspace } from "vscode";
import { nameOf } from "./names.ts";

/** Whether the system's own programs can be given the file: it is on the disk of the machine that VS Code is shown on. */
const isOnThisMachine = ({ scheme }: Uri): boolean =>
  scheme === "file" && env.uiKind === UIKind.Desktop && env.remoteName === undefined;

/** Says that a file was written. `asText` files can be read in the editor, `seen` ones are opened by a program of their own. */
export async function handOver(
  file: Uri,
  { says, as }: { says: string; as: "seen" | "asText" | "kept" },
): Promise<void> {
  const here = isOnThisMachine(file);
  const [open, fetched, show] = [l10n.t("Open"), l10n.t("Download"), l10n.t("Show in Folder")];
  const offers = here ? [as === "kept" ? show : open] : as === "asText" ? [open, fetched] : [fetched];
  const chosen = await window.showInformationMessage(says, ...offers);
  if (chosen === open && here) await env.openExternal(file);
  // Not over the drawing.
  else if (chosen === open) await commands.executeCommand("vscode.open", file, ViewColumn.One);
  if (chosen === show) await commands.executeCommand("revealFileInOS", file);
  if (chosen === fetched) await download(file);
}

/** Gives a file to the browser that VS Code is shown in, by way of a page that asks for nothing else. */
export async function download(file: Uri): Promise<void> {
  const name = nameOf(file);
  const bytes = await workspace.fs.readFile(file);
  const panel = window.createWebviewPanel("seatwright.download", name, ViewColumn.Active, {
    enableScripts: true,
    localResourceRoots: [],
  });
  panel.webview.onDidReceiveMessage(() => panel.webview.postMessage({ name, bytes }));
  panel.webview.html = downloadPage(crypto.randomUUID());
}

/** The page: it gets the file as a message, starts the download at once and keeps a link for another. */
export function downloadPage(nonce: string): string {
  const policy = `default-src 'none'; script-src 'nonce-${nonce}'; style-src 'nonce-${nonce}'`;
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<title>Download</title>
<style nonce="${nonce}">body { padding: 24px; font-size: var(--vscode-font-size); }</style>
</head>
<body>
<main><p>The file is in your browser’s downloads. <a id="file">Download it again</a></p></main>
<script nonce="${nonce}">
const link = document.getElementById("file");
// VS Code opens links itself, and would not open this one.
link.addEventListener("click", (event) => event.stopPropagation());
addEventListener("message", ({ data }) => {
  link.href = URL.createObjectURL(new Blob([data.bytes]));
  link.download = data.name;
  link.click();
});
acquireVsCodeApi().postMessage("ready");
</script>
</body>
</html>`;
}
