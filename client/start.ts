/**
 * What the extension does in every VS Code; the desktop and the web differ only in how the language server runs.
 */
import { commands, type ExtensionContext, type TextDocument, window, workspace } from "vscode";
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

const LANGUAGE = "chair";

/** The chair being written. */
function chairAtHand(): TextDocument | undefined {
  const document = window.activeTextEditor?.document;
  return document?.languageId === LANGUAGE ? document : undefined;
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
  });
  client.registerFeature(hoverPictures);
  const panels = createPanels(context, client, startWorker);
  const notebooks = createNotebooks(client);
  context.subscriptions.push(
    workspace.registerTextDocumentContentProvider(NOTEBOOK_SCHEME, notebooks),
    panels,
    answerFileRequests(client),
    createStatus(client, LANGUAGE),
    commands.registerCommand("seatwright.newChair", () => newChair(context.extensionUri, LANGUAGE)),
    commands.registerCommand("seatwright.openDrawing", () => {
      const document = chairAtHand();
      if (document) panels.open(document.uri);
    }),
    commands.registerCommand("seatwright.saveDrawing", () => panels.save(chairAtHand())),
    commands.registerCommand("seatwright.printDrawing", () => panels.print(chairAtHand())),
    commands.registerCommand("seatwright.markOut", async () => {
      const document = chairAtHand();
      if (document) await markOut(document, startWorker);
    }),
    commands.registerCommand("seatwright.reachFigure", async () => {
      const document = chairAtHand();
      if (document) await reachFigure(document, client);
    }),
    commands.registerCommand("seatwright.compareWith", async () => {
      const document = chairAtHand();
      const old = document && (await chooseOldChair(document));
      if (document && old) panels.compare(document.uri, old);
    }),
    commands.registerCommand("seatwright.notebook", async () => {
      const document = chairAtHand();
      if (document) await notebooks.show(document);
    }),
    commands.registerCommand("seatwright.addNote", async () => {
      const document = chairAtHand();
      if (document) await addNote(document, client);
    }),
    commands.registerCommand("seatwright.export", async () => {
      const document = chairAtHand();
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
