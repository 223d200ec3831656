import { Range, type Uri, WorkspaceEdit, window, workspace } from "vscode";
import type { OpenText } from "./adjusting.ts";

/** A file's text as VS Code has it. */
export async function openText(uri: Uri): Promise<OpenText> {
  const document = await workspace.openTextDocument(uri);
  const rangeOf = ({ start, end }: { start: number; end: number }) =>
    new Range(document.positionAt(start), document.positionAt(end));
  const editor = window.visibleTextEditors.find((each) => each.document === document);
  return {
    get version() {
      return document.version;
    },
    // Without an editor in sight each edit would be a step of its own.
    inSight: editor !== undefined,
    slice: (span) => document.getText(rangeOf(span)),
    async replace(span, text, { begins, ends }) {
      const range = rangeOf(span);
      if (editor) {
        const stops = { undoStopBefore: begins, undoStopAfter: ends };
        return editor.edit((edit) => edit.replace(range, text), stops);
      }
      const edit = new WorkspaceEdit();
      edit.replace(uri, range, text);
      return workspace.applyEdit(edit);
    },
  };
}
