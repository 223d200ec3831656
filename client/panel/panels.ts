/**
 * All drawing panels: opening them, having one follow the chair that is being written, bringing them back after a reload, and passing on
 * what the server draws. One panel follows; others were locked to their chair. No two show the same chair.
 */
import { Disposable, type TextDocument, Uri, type WebviewPanel, window, workspace } from "vscode";
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
import { readDrawing, readPanelState, readRange, type ToPanel } from "./messages.ts";
import { createPanel, type DrawingPanel, type Keep } from "./panel.ts";
import { tellContext } from "./panel-context.ts";
import { printDrawing } from "./printing.ts";
import { saveDrawing } from "./saving.ts";
import { openBeside, setPage, titleOf, VIEW_TYPE } from "./webview-panel.ts";

export interface Panels extends Disposable {
  /** Shows the drawing of a file beside its text: in the panel that has it, in the one that follows, or in a new one. */
  open(uri: Uri): void;
  /** The same, with an old chair laid behind. */
  compare(uri: Uri, old: OldChair): void;
  /** Saves or prints the drawing of the panel in use, or else of this text. */
  save(document: TextDocument | undefined): Promise<void>;
  print(document: TextDocument | undefined): Promise<void>;
  /** The chair of the panel that is the editor in use. */
  readonly activeChair: Uri | undefined;
  /** Has the panel in use do something. */
  send(message: ToPanel): void;
  /** Has the panel in use stay with its chair, or follow the one that is being written. */
  lock(locked: boolean): void;
}

/** A webview panel with the chair it shows now. */
interface Held {
  panel: WebviewPanel;
  drawing: DrawingPanel;
  locked: boolean;
}

/** No panels yet; the client need not have started. */
export function createPanels(
  { extensionUri: extension }: { extensionUri: Uri },
  client: BaseLanguageClient,
  startWorker: StartWorker,
  language: string,
): Panels {
  /** The one used last is the last. */
  const all: Held[] = [];
  const keep: Keep = (what, drawing, picture) =>
    void (what === "save" ? saveDrawing(drawing, picture) : printDrawing(drawing, picture));

  const showing = (uri: Uri) => all.find(({ drawing }) => drawing.uri.toString() === uri.toString());
  const follower = () => all.filter(({ locked }) => !locked).at(-1);
  const inUse = () =>
    all.find(({ panel }) => panel.active) ?? all.filter(({ panel }) => panel.visible).at(-1);
  const tell = () => tellContext(inUse());

  function adopt(uri: Uri, panel: WebviewPanel, locked: boolean) {
    const held: Held = { panel, locked, drawing: fill(uri, panel, () => held) };
    all.push(held);
    panel.title = titleOf(uri, locked);
    panel.onDidChangeViewState(() => {
      if (panel.active) all.push(...all.splice(all.indexOf(held), 1));
      tell();
    });
    panel.onDidDispose(() => {
      const { uri: shown } = held.drawing;
      held.drawing.release();
      all.splice(all.indexOf(held), 1);
      watch(shown, undefined);
      tell();
    });
    watch(uri, held.drawing);
    setPage(panel, extension);
    tell();
  }

  function fill(uri: Uri, panel: WebviewPanel, held: () => Held): DrawingPanel {
    return createPanel({
      uri,
      panel,
      locked: () => held().locked,
      shownChanged: tell,
      overlaid: () => watch(uri, held().drawing),
      range: (name) => rangeOf(uri, name),
      keep,
      startWorker,
    });
  }

  /** Has a panel show another chair. */
  function turn(held: Held, uri: Uri) {
    const { panel, drawing } = held;
    drawing.release();
    watch(drawing.uri, undefined);
    held.drawing = fill(uri, panel, () => held);
    panel.title = titleOf(uri, held.locked);
    held.drawing.introduce();
    watch(uri, held.drawing);
  }

  async function rangeOf(uri: Uri, name: string): Promise<RangeResult | undefined> {
    if (client.state !== State.Running) return undefined;
    const params: RangeParams = { uri: client.code2ProtocolConverter.asUri(uri), name };
    return readRange(await client.sendRequest(RANGE, params));
  }

  async function drawingOf(document: TextDocument): Promise<DrawingParams | undefined> {
    const params: DrawParams = { uri: client.code2ProtocolConverter.asUri(document.uri) };
    return readDrawing(await client.sendRequest(DRAW, params));
  }

  function open(uri: Uri) {
    const there = showing(uri);
    if (there) return there.drawing.show();
    const free = follower();
    if (!free) return adopt(uri, openBeside(), false);
    turn(free, uri);
    free.drawing.show();
  }

  function follow(uri: Uri) {
    const held = follower();
    if (held && !showing(uri)) turn(held, uri);
  }

  /** Has the server draw a file for a panel, or no longer. */
  function watch(uri: Uri, panel: DrawingPanel | undefined) {
    if (client.state !== State.Running) return;
    const params: WatchDrawingParams = {
      uri: client.code2ProtocolConverter.asUri(uri),
      watch: panel !== undefined,
      overlays: [...(panel?.overlays ?? [])],
      ...(panel?.post !== undefined && { post: panel.post }),
      ...(panel?.compareWith && { compareWith: panel.compareWith }),
      ...(panel?.strength && { strength: true as const }),
      ...(panel?.pictorial && { pictorial: panel.pictorial }),
    };
    void client.sendNotification(WATCH_DRAWING, params);
  }

  const listening = Disposable.from(
    client.onNotification(DRAWING, (params) => {
      const drawing = readDrawing(params);
      if (!drawing) return client.error("The server sent a drawing that cannot be read.", params, false);
      showing(client.protocol2CodeConverter.asUri(drawing.uri))?.drawing.draw(drawing);
    }),
    client.onDidChangeState(({ newState }) => {
      if (newState !== State.Running) return;
      for (const { drawing } of all) {
        drawing.reset();
        watch(drawing.uri, drawing);
      }
    }),
    workspace.onDidOpenTextDocument(({ uri }) => {
      const held = showing(uri);
      if (!held) return;
      held.drawing.reset();
      watch(uri, held.drawing);
    }),
    workspace.onDidCloseTextDocument(({ uri, isUntitled }) => {
      // The server draws open files only: a drawing goes on though the tab of its text is closed.
      if (showing(uri) && !isUntitled) void workspace.openTextDocument(uri).then(undefined, () => undefined);
    }),
    window.onDidChangeActiveTextEditor((editor) => {
      if (editor?.document.languageId === language) follow(editor.document.uri);
    }),
    window.registerWebviewPanelSerializer(VIEW_TYPE, {
      async deserializeWebviewPanel(panel, state) {
        const kept = readPanelState(state);
        const uri = kept && Uri.parse(kept.uri);
        if (!uri || showing(uri)) return panel.dispose();
        adopt(uri, panel, kept.locked);
        // The server draws open files only.
        await workspace.openTextDocument(uri);
      },
    }),
  );

  return {
    async save(document) {
      const drawing = inUse()?.drawing;
      if (drawing?.latest) return drawing.keep("save");
      const drawn = document && (await drawingOf(document));
      if (drawn) await saveDrawing(drawn);
    },
    async print(document) {
      const drawing = inUse()?.drawing;
      if (drawing?.latest) return drawing.keep("print");
      const drawn = document && (await drawingOf(document));
      if (drawn) await printDrawing(drawn);
    },
    get activeChair() {
      return all.find(({ panel }) => panel.active)?.drawing.uri;
    },
    send: (message) => inUse()?.drawing.send(message),
    lock(locked) {
      const held = inUse();
      if (!held || held.locked === locked) return;
      // One follows: the one that did stays where it is.
      const changed = locked ? [held] : [held, ...all.filter((each) => each !== held && !each.locked)];
      for (const each of changed) {
        each.locked = each === held ? locked : true;
        each.panel.title = titleOf(each.drawing.uri, each.locked);
        each.drawing.introduce();
      }
      const editor = window.activeTextEditor ?? window.visibleTextEditors[0];
      if (!locked && editor?.document.languageId === language) follow(editor.document.uri);
      tell();
    },
    open,
    compare(uri, old) {
      open(uri);
      showing(uri)?.drawing.compare(old);
    },
    dispose: () => listening.dispose(),
  };
}
