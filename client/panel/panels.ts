/**
 * All drawing panels: opening them, bringing them back after a reload, and passing on what the server draws.
 */
import { Disposable, type TextDocument, Uri, ViewColumn, type WebviewPanel, window, workspace } from "vscode";
import { type BaseLanguageClient, State } from "vscode-languageclient";
import {
  DRAW,
  DRAWING,
  type DrawingParams,
  type DrawParams,
  type OldChair,
  RANGE,
  type RangeParams,
  type RangeResult,
  WATCH_DRAWING,
  type WatchDrawingParams,
} from "../../server/main/protocol.ts";
import type { StartWorker } from "../in-worker.ts";
import { readDrawing, readPanelState, readRange } from "./messages.ts";
import { createPanel, type DrawingPanel, type Keep } from "./panel.ts";
import { printDrawing } from "./printing.ts";
import { saveDrawing } from "./saving.ts";

const VIEW_TYPE = "seatwright.drawing";

interface Panels extends Disposable {
  /** Opens the drawing of a file beside its text, or shows the one that is open. */
  open(uri: Uri): void;
  /** The same, with an old chair laid behind. */
  compare(uri: Uri, old: OldChair): void;
  /** Saves or prints the drawing of the panel in use, or else of this text. */
  save(document: TextDocument | undefined): Promise<void>;
  print(document: TextDocument | undefined): Promise<void>;
}

/** No panels yet; the client need not have started. `storage` is the extension's own folder. */
export function createPanels(
  { extensionUri: extension, globalStorageUri: storage }: { extensionUri: Uri; globalStorageUri: Uri },
  client: BaseLanguageClient,
  startWorker: StartWorker,
): Panels {
  const panels = new Map<string, DrawingPanel>();

  function adopt(uri: Uri, panel: WebviewPanel) {
    const key = uri.toString();
    const closed = () => {
      panels.delete(key);
      watch(uri, false);
    };
    const keep: Keep = (what, drawing, picture) =>
      void (what === "save" ? saveDrawing(drawing, picture) : printDrawing(drawing, storage, picture));
    const range = (name: string) => rangeOf(uri, name);
    panels.set(
      key,
      createPanel({
        uri,
        panel,
        extension,
        closed,
        overlaid: () => watch(uri, true),
        range,
        keep,
        startWorker,
      }),
    );
    watch(uri, true);
  }

  async function rangeOf(uri: Uri, name: string): Promise<RangeResult | undefined> {
    if (client.state !== State.Running) return undefined;
    const params: RangeParams = { uri: client.code2ProtocolConverter.asUri(uri), name };
    return readRange(await client.sendRequest(RANGE, params));
  }

  const inUse = () => [...panels.values()].find(({ active }) => active);

  async function drawingOf(document: TextDocument): Promise<DrawingParams | undefined> {
    const params: DrawParams = { uri: client.code2ProtocolConverter.asUri(document.uri) };
    return readDrawing(await client.sendRequest(DRAW, params));
  }

  function open(uri: Uri) {
    const there = panels.get(uri.toString());
    if (there) return there.show();
    const where = { viewColumn: ViewColumn.Beside, preserveFocus: true };
    adopt(uri, window.createWebviewPanel(VIEW_TYPE, "Drawing", where));
  }

  function watch(uri: Uri, on: boolean) {
    if (client.state !== State.Running) return;
    const panel = panels.get(uri.toString());
    const params: WatchDrawingParams = {
      uri: client.code2ProtocolConverter.asUri(uri),
      watch: on,
      overlays: [...(panel?.overlays ?? [])],
      ...(panel?.post !== undefined && { post: panel.post }),
      ...(panel?.compareWith && { compareWith: panel.compareWith }),
      ...(panel?.pictorial && { pictorial: panel.pictorial }),
    };
    void client.sendNotification(WATCH_DRAWING, params);
  }

  const listening = Disposable.from(
    client.onNotification(DRAWING, (params) => {
      const drawing = readDrawing(params);
      if (!drawing) return client.error("The server sent a drawing that cannot be read.", params, false);
      panels.get(client.protocol2CodeConverter.asUri(drawing.uri).toString())?.draw(drawing);
    }),
    client.onDidChangeState(({ newState }) => {
      if (newState !== State.Running) return;
      for (const panel of panels.values()) {
        panel.reset();
        watch(panel.uri, true);
      }
    }),
    workspace.onDidOpenTextDocument(({ uri }) => {
      const panel = panels.get(uri.toString());
      if (!panel) return;
      panel.reset();
      watch(uri, true);
    }),
    window.registerWebviewPanelSerializer(VIEW_TYPE, {
      async deserializeWebviewPanel(panel, state) {
        const kept = readPanelState(state);
        if (!kept) return panel.dispose();
        const uri = Uri.parse(kept.uri);
        adopt(uri, panel);
        // The server draws open files only.
        await workspace.openTextDocument(uri);
      },
    }),
  );

  return {
    async save(document) {
      const panel = inUse();
      if (panel?.latest) return panel.keep("save");
      const drawing = document && (await drawingOf(document));
      if (drawing) await saveDrawing(drawing);
    },
    async print(document) {
      const panel = inUse();
      if (panel?.latest) return panel.keep("print");
      const drawing = document && (await drawingOf(document));
      if (drawing) await printDrawing(drawing, storage);
    },
    open,
    compare(uri, old) {
      open(uri);
      panels.get(uri.toString())?.compare(old);
    },
    dispose: () => listening.dispose(),
  };
}
