/**
 * What the extension does in every VS Code; the desktop and the web differ only in how the language server runs.
 */
import {
  commands,
  type ExtensionContext,
  l10n,
  type TextDocument,
  Uri,
  ViewColumn,
  window,
  workspace,
} from "vscode";
import type { BaseLanguageClient, LanguageClientOptions, StaticFeature } from "vscode-languageclient";
import { pageCommand, pageKinds } from "../server/editor/pages/kinds.ts";
import { chooseOldChair } from "./compare-with.ts";
import { exportChair } from "./exporting.ts";
import type { StartWorker } from "./in-worker.ts";
import { markOut } from "./marking-out.ts";
import { newChair } from "./new-chair.ts";
import { addNote, createNotebooks, NOTEBOOK_SCHEME } from "./notebook.ts";
import { createPages } from "./pages.ts";
import { panelCommands } from "./panel/panel-commands.ts";
import { createPanels, type Panels } from "./panel/panels.ts";
import { reachFigure } from "./reach-figure.ts";
import { answerFileRequests } from "./server-files.ts";
import { showingCommands } from "./showing.ts";
import { createStatus } from "./status.ts";
import { done, watchFindings } from "./walkthrough.ts";

const LANGUAGE = "chair";

/**
 * The chair that a menu of the explorer was opened on, or that the drawing in use is of, else the one being written; from the walkthrough or a view beside, where no text is active, the one in sight or the only one that is open.
 * Where there is none, the maker is told so and may start one.
 */
async function chairAtHand(panels: Panels, asked?: unknown): Promise<TextDocument | undefined> {
  const told = asked instanceof Uri && asked.scheme !== "webview-panel" ? asked : panels.activeChair;
  if (told) {
    const document = await workspace.openTextDocument(told);
    // VS Code soon closes a text that no editor shows.
    if (!window.visibleTextEditors.some((editor) => editor.document === document))
      await window.showTextDocument(document, panels.activeChair ? ViewColumn.One : undefined);
    return document;
  }
  const isChair = (document: TextDocument | undefined) => document?.languageId === LANGUAGE;
  const inSight = [window.activeTextEditor, ...window.visibleTextEditors].map((editor) => editor?.document);
  const open = workspace.textDocuments.filter(isChair);
  const found = inSight.find(isChair) ?? (open.length === 1 ? open[0] : undefined);
  if (found) return found;
  const start = l10n.t("New Chair");
  const chosen = await window.showInformationMessage(
    l10n.t("Open a chair first, or start a new one."),
    start,
  );
  if (chosen === start) await commands.executeCommand("seatwright.newChair");
  return undefined;
}

/** VS Code's hovers show images and links, its lenses run commands: the server gives them to those that say so. */
const ownCapabilities: StaticFeature = {
  fillClientCapabilities(capabilities) {
    capabilities.experimental = {
      ...capabilities.experimental,
      seatwright: { hoverPictures: true, commands: true },
    };
  },
  initialize() {},
  clear() {},
  getState: () => ({ kind: "static" }),
};

/** Starts the server by `makeClient` and registers the commands and the drawing panel; `startWorker` starts the
 * workers that make sheets and files and plan boards. */
export async function start(
  context: ExtensionContext,
  makeClient: (options: LanguageClientOptions) => BaseLanguageClient,
  startWorker: StartWorker,
): Promise<{ stop(): Promise<void> }> {
  const client = makeClient({
    documentSelector: [{ language: LANGUAGE }],
    outputChannelName: "Seatwright",
    diagnosticCollectionName: "seatwright",
    ...(l10n.bundle && { initializationOptions: { translation: l10n.bundle } }),
    markdown: { isTrusted: { enabledCommands: pageKinds.map(pageCommand) } },
    middleware: {
      async provideHover(document, position, token, next) {
        const hover = await next(document, position, token);
        if (hover) done("hoverShown");
        return hover;
      },
    },
  });
  client.registerFeature(ownCapabilities);
  const panels = createPanels(context, client, startWorker, LANGUAGE);
  const atHand = (asked?: unknown) => chairAtHand(panels, asked);
  const notebooks = createNotebooks(client);
  context.subscriptions.push(
    workspace.registerTextDocumentContentProvider(NOTEBOOK_SCHEME, notebooks),
    panels,
    panelCommands(panels),
    showingCommands(panels),
    createPages(client, atHand),
    answerFileRequests(client),
    createStatus(client, LANGUAGE),
    watchFindings(LANGUAGE),
    commands.registerCommand("seatwright.newChair", async () => {
      if (await newChair(context.extensionUri, LANGUAGE)) done("chairStarted");
    }),
    commands.registerCommand("seatwright.openDrawing", async (asked: unknown) => {
      const document = await atHand(asked);
      if (!document) return;
      panels.open(document.uri);
      done("drawingOpened");
    }),
    commands.registerCommand("seatwright.saveDrawing", async () => panels.save(await atHand())),
    commands.registerCommand("seatwright.printDrawing", async () => panels.print(await atHand())),
    commands.registerCommand("seatwright.markOut", async (asked: unknown) => {
      const document = await atHand(asked);
      if (document) await markOut(document, startWorker, context.extensionUri);
    }),
    commands.registerCommand("seatwright.reachFigure", async (asked: unknown) => {
      const document = await atHand(asked);
      if (document) await reachFigure(document, client);
    }),
    commands.registerCommand("seatwright.compareWith", async (asked: unknown) => {
      const document = await atHand(asked);
      const old = document && (await chooseOldChair(document));
      if (document && old) panels.compare(document.uri, old);
    }),
    commands.registerCommand("seatwright.notebook", async (asked: unknown) => {
      const document = await atHand(asked);
      if (document) await notebooks.show(document);
    }),
    commands.registerCommand("seatwright.addNote", async (asked: unknown) => {
      const document = await atHand(asked);
      if (document) await addNote(document, client);
    }),
    commands.registerCommand("seatwright.export", async (asked: unknown) => {
      const document = await atHand(asked);
      if (document) await exportChair(document, startWorker);
    }),
    commands.registerCommand("seatwright.restartServer", async () => {
      await client.stop();
      await client.start();
    }),
  );
  await client.start();
  return { stop: () => client.stop() };
}
