import { type TextDocument, type TextEditor, type ViewColumn, type WebviewPanel, window } from "vscode";

/** ms. VS Code asks the panel's page now and then whether it has the focus, and may hear of a click in it after the text was shown. */
const LATE = 500;

/** Shows a text that was asked for by a click in the panel, and once more if the panel is then taken to be the editor in use. */
export async function showText(
  document: TextDocument,
  column: ViewColumn,
  panel: WebviewPanel,
): Promise<TextEditor> {
  const editor = await window.showTextDocument(document, column);
  const listening = panel.onDidChangeViewState(() => {
    if (!panel.active) return;
    listening.dispose();
    void window.showTextDocument(document, column);
  });
  setTimeout(() => listening.dispose(), LATE);
  return editor;
}
