/**
 * Marking-out sheets of the chair at hand, made in a worker and saved as a PDF where the maker says. All by way of VS Code's own files, so
 * that it works on the web too.
 */
import { env, ProgressLocation, type TextDocument, Uri, window, workspace } from "vscode";
import * as z from "zod";
import type { Step } from "../server/drawing/markout/figures.ts";
import type { PaperName } from "../server/drawing/markout/paper.ts";
import type { MarkoutReply, MarkoutRequest } from "../server/main/markout/messages.ts";
import { chairText } from "./chair-text.ts";
import { nameOf, saveBeside } from "./panel/saving.ts";

/** A worker that marks out, wherever it runs. `heard` gets what it says, `failed` what went wrong with it. */
export type StartMarker = (
  heard: (message: unknown) => void,
  failed: (because: string) => void,
) => { send(request: MarkoutRequest): void; stop(): void };

const reply = z.discriminatedUnion("is", [
  z.object({ is: z.literal("missing"), addresses: z.array(z.string()) }),
  z.object({ is: z.literal("progress"), done: z.number(), of: z.number() }),
  z.object({ is: z.literal("made"), bytes: z.instanceof(Uint8Array), pages: z.number() }),
  z.object({ is: z.literal("refused"), because: z.string() }),
]);

const papers: { label: string; description: string; paper: PaperName }[] = [
  { label: "A4", description: "210 × 297 mm", paper: "a4" },
  { label: "Letter", description: "8 1/2 × 11 in", paper: "letter" },
];

/** Asks for the paper, makes the sheets, asks where and writes them. */
export async function markOut(document: TextDocument, start: StartMarker): Promise<void> {
  const chosen = await window.showQuickPick(papers, {
    title: "Marking-Out Sheets",
    placeHolder: "Which paper",
  });
  if (!chosen) return;
  const step = stepOf(workspace.getConfiguration("seatwright", document).get("markout.inchStep"));
  const made = await window
    .withProgress(
      {
        location: ProgressLocation.Notification,
        title: `Marking out ${nameOf(document.uri)}`,
        cancellable: true,
      },
      (progress, cancelled) =>
        new Promise<Made | undefined>((resolve, reject) => {
          const options = { paper: chosen.paper, step };
          const marker = begin(document, options, start, {
            told: (done, of) => progress.report({ increment: 100 / of, message: `page ${done} of ${of}` }),
            done: (result) => resolve(result),
            failed: (because) => reject(new Error(because)),
          });
          cancelled.onCancellationRequested(() => {
            marker.stop();
            resolve(undefined);
          });
        }),
    )
    .then(undefined, (error: Error) => ({ refused: error.message }));
  if (!made) return;
  if ("refused" in made) {
    void window.showWarningMessage(`${nameOf(document.uri)} was not marked out: ${made.refused}.`);
    return;
  }
  await keep(document, made);
}

type Made = Pick<Extract<MarkoutReply, { is: "made" }>, "bytes" | "pages">;

const stepOf = (given: unknown): Step => (given === "1/16" ? 16 : given === "1/64" ? 64 : 32);

interface Ending {
  told(done: number, of: number): void;
  done(made: Made): void;
  failed(because: string): void;
}

/** Sends the text, and the files it names as the worker asks for them. */
function begin(
  document: TextDocument,
  options: MarkoutRequest["options"],
  start: StartMarker,
  ending: Ending,
) {
  const request: MarkoutRequest = {
    text: document.getText(),
    address: document.uri.toString(),
    files: {},
    options,
    date: Date.now(),
  };
  const end = (finish: () => void) => {
    marker.stop();
    finish();
  };
  const marker = start(
    (message) => {
      const said = reply.safeParse(message).data;
      if (said?.is === "progress") ending.told(said.done, said.of);
      if (said?.is === "made") end(() => ending.done(said));
      if (said?.is === "refused") end(() => ending.failed(said.because));
      if (said?.is === "missing") void fetchAll(said.addresses).then(() => marker.send(request));
    },
    (because) => end(() => ending.failed(because)),
  );
  const fetchAll = async (addresses: readonly string[]) => {
    const texts = await Promise.all(
      addresses.map(async (address) => [address, await textAt(address)] as const),
    );
    request.files = { ...request.files, ...Object.fromEntries(texts) };
  };
  marker.send(request);
  return marker;
}

/** Another chair's text: as it stands in the editor when it is open. Only chairs are read, whatever a file names. */
async function textAt(address: string): Promise<string | null> {
  const uri = Uri.parse(address);
  if (!/\.chair$/i.test(uri.path)) return null;
  const open = workspace.textDocuments.find((each) => each.uri.toString() === uri.toString());
  return open ? open.getText() : chairText(uri);
}

const OPEN = "Open";

async function keep({ uri }: TextDocument, { bytes, pages }: Made): Promise<void> {
  const saved = await saveBeside({ uri: uri.toString() }, bytes, {
    title: "Save Marking-Out Sheets",
    extension: "pdf",
    kind: "Marking-out sheets",
  });
  if (!saved) return;
  const sentence = `${nameOf(saved)}: ${pages} pages. Print at 100 %, and check the 100 mm square before using a template.`;
  // Only a file on a disk can be given to the program that shows such files.
  const offers = saved.scheme === "file" ? [OPEN] : [];
  if ((await window.showInformationMessage(sentence, ...offers)) === OPEN) await env.openExternal(saved);
}
