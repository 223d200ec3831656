/**
 * What the extension does in every VS Code; the desktop and the web differ only in how the language server runs.
 */
import { commands, type ExtensionContext, type TextDocument, Uri, window, workspace } from "vscode";
import type { BaseLanguageClient, LanguageClientOptions, StaticFeature } from "vscode-languageclient";
import { chooseOldChair } from "./compare-with.ts";
import { exportChair } from "./exporting.ts";
import type { StartWorker } from "./in-worker.ts";
import { markOut } from "./marking-out.ts";
import { newChair } from "./new-chair.ts";
import { addNote, createNotebooks, NOTEBOOK_SCHEME } from "./notebook.ts";
import { createPanels } from "./panel/panels.ts";
import { reachFigure } from "./reach-figure.ts";
import { answerFileRequests } from "./server-files.ts";
import { createStatus } from "./status.ts";
import { done, watchFindings } from "./walkthrough.ts";

const LANGUAGE = "chair";

/**
 * The chair that a menu of the explorer was opened on, else the one being written; from the walkthrough or a view beside, where no text is active, the one in sight or the only one that is open.
 * Where there is none, the maker is told so and may start one.
 */
async function chairAtHand(asked?: unknown): Promise<TextDocument | undefined> {
  if (asked instanceof Uri) {
    const document = await workspace.openTextDocument(asked);
    // VS Code soon closes a text that no editor shows.
    if (!window.visibleTextEditors.some((editor) => editor.document === document))
      await window.showTextDocument(document);
    return document;
  }
  const isChair = (document: TextDocument | undefined) => document?.languageId === LANGUAGE;
  const inSight = [window.activeTextEditor, ...window.visibleTextEditors].map((editor) => editor?.document);
  const open = workspace.textDocuments.filter(isChair);
  const found = inSight.find(isChair) ?? (open.length === 1 ? open[0] : undefined);
  if (found) return found;
  const start = "New Chair";
  const chosen = await window.showInformationMessage("Open a chair first, or start a new one.", start);
  if (chosen === start) await commands.executeCommand("seatwright.newChair");
  return undefined;
}

/** VS Code's hovers show images; the server draws joints for those that do. */
const hoverPictures: StaticFeature = {
  fillClientCapabilities(capabilities) {
    capabilities.experimental = { ...capabilities.experimental, seatwright: { hoverPictures: true } };
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
    middleware: {
      async provideHover(document, position, token, next) {
        const hover = await next(document, position, token);
        if (hover) done("hoverShown");
        return hover;
      },
    },
  });
  client.registerFeature(hoverPictures);
  const panels = createPanels(context, client, startWorker);
  const notebooks = createNotebooks(client);
  context.subscriptions.push(
    workspace.registerTextDocumentContentProvider(NOTEBOOK_SCHEME, notebooks),
    panels,
    answerFileRequests(client),
    createStatus(client, LANGUAGE),
    watchFindings(LANGUAGE),
    commands.registerCommand("seatwright.newChair", async () => {
      if (await newChair(context.extensionUri, LANGUAGE)) done("chairStarted");
    }),
    commands.registerCommand("seatwright.openDrawing", async (asked: unknown) => {
      const document = await chairAtHand(asked);
      if (!document) return;
      panels.open(document.uri);
      done("drawingOpened");
    }),
    commands.registerCommand("seatwright.saveDrawing", async () => panels.save(await chairAtHand())),
    commands.registerCommand("seatwright.printDrawing", async () => panels.print(await chairAtHand())),
    commands.registerCommand("seatwright.markOut", async (asked: unknown) => {
      const document = await chairAtHand(asked);
      if (document) await markOut(document, startWorker, context.extensionUri);
    }),
    commands.registerCommand("seatwright.reachFigure", async (asked: unknown) => {
      const document = await chairAtHand(asked);
      if (document) await reachFigure(document, client);
    }),
    commands.registerCommand("seatwright.compareWith", async (asked: unknown) => {
      const document = await chairAtHand(asked);
      const old = document && (await chooseOldChair(document));
      if (document && old) panels.compare(document.uri, old);
    }),
    commands.registerCommand("seatwright.notebook", async (asked: unknown) => {
      const document = await chairAtHand(asked);
      if (document) await notebooks.show(document);
    }),
    commands.registerCommand("seatwright.addNote", async (asked: unknown) => {
      const document = await chairAtHand(asked);
      if (document) await addNote(document, client);
    }),
    commands.registerCommand("seatwright.export", async (asked: unknown) => {
      const document = await chairAtHand(asked);
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
