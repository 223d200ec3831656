/**
 * Writes a moved value into the text: each move replaces the figure where the newest drawing says it stands, one at a time, and a
 * whole drag is one step to undo. A move that comes while the text and the drawing differ waits for the next drawing.
 */
import { Range, type TextDocument, type Uri, WorkspaceEdit, window, workspace } from "vscode";
import { type Adjustable, written } from "../../server/editor/adjustable.ts";
import type { DrawingParams } from "../../server/main/protocol.ts";

export interface Move {
  name: string;
  /** In the value's own unit. */
  value: number;
  /** It was let go: what comes after is another step to undo. */
  done: boolean;
}

export interface Adjusting {
  move(move: Move): void;
  drawn(drawing: DrawingParams): void;
}

/** Nothing moved yet. */
export function createAdjusting(uri: Uri): Adjusting {
  let known: { version: number; adjustables: Adjustable[] } | undefined;
  let waiting: Move | undefined;
  let writing = false;
  /** The name that is being dragged: its moves are one step. */
  let dragged: string | undefined;

  async function next(): Promise<void> {
    if (writing || !waiting || !known) return;
    const move = waiting;
    const place = known.adjustables.find((each) => each.name === move.name);
    if (!place?.plain) {
      waiting = undefined;
      return;
    }
    const document = await workspace.openTextDocument(uri);
    // The text has moved on since: the drawing of what it says now is on its way.
    if (document.version !== known.version || writing || waiting !== move) return;
    waiting = undefined;
    const text = written(place, move.value);
    const range = new Range(document.positionAt(place.at.start), document.positionAt(place.at.end));
    const begins = dragged !== move.name;
    dragged = move.done ? undefined : move.name;
    if (document.getText(range) === text && !move.done) return;
    writing = true;
    try {
      await write(document, range, text, { begins, ends: move.done });
    } finally {
      writing = false;
    }
  }

  return {
    move(move) {
      // Letting go must not be lost to a later move of the same drag, and the newest place wins.
      waiting = move;
      void next();
    },
    drawn({ version, adjustables }) {
      if (adjustables) known = { version, adjustables };
      void next();
    },
  };
}

async function write(
  document: TextDocument,
  range: Range,
  text: string,
  { begins, ends }: { begins: boolean; ends: boolean },
): Promise<void> {
  const editor = window.visibleTextEditors.find((each) => each.document === document);
  if (editor) {
    await editor.edit((edit) => edit.replace(range, text), { undoStopBefore: begins, undoStopAfter: ends });
    return;
  }
  const edit = new WorkspaceEdit();
  edit.replace(document.uri, range, text);
  await workspace.applyEdit(edit);
}
