/**
 * Work on the chair at hand that a worker of its own does: with progress, until it is called off. The worker reads no files; what a chair
 * names it asks for.
 */
import { ProgressLocation, type TextDocument, Uri, window, workspace } from "vscode";
import * as z from "zod";
import { chairText } from "./chair-text.ts";

/** What every such worker is sent, beside what it is asked to make. */
interface ChairSent {
  text: string;
  address: string;
  /** Other files' texts by their addresses; null where there is none. */
  files: Record<string, string | null>;
}

/** Starts a worker from the bundle of that name, wherever it runs. `heard` gets what it says, `failed` what went wrong with it. */
export type StartWorker = (
  bundle: "markout" | "export" | "boards",
  heard: (message: unknown) => void,
  failed: (because: string) => void,
) => { send(request: ChairSent): void; stop(): void };

const says = z.discriminatedUnion("is", [
  z.object({ is: z.literal("missing"), addresses: z.array(z.string()) }),
  z.object({ is: z.literal("progress"), done: z.number(), of: z.number() }),
  z.looseObject({ is: z.literal("made") }),
  z.object({ is: z.literal("refused"), because: z.string() }),
]);

interface WorkAsked<Made> {
  bundle: "markout" | "export";
  /** What stands over the progress: "Marking out mess-chair.chair". */
  doing: string;
  /** How far it is: "page 2 of 9". */
  progress(done: number, of: number): string;
  /** What the worker is sent beside the chair. */
  asked: object;
  /** What it made, checked. */
  made: z.ZodType<Made>;
}

/** What the worker made, why it did not, or nothing when it was called off. */
export async function inWorker<Made>(
  document: TextDocument,
  start: StartWorker,
  { bundle, doing, progress: words, asked, made }: WorkAsked<Made>,
): Promise<Made | { refused: string } | undefined> {
  const request: ChairSent = {
    text: document.getText(),
    address: document.uri.toString(),
    files: {},
    ...asked,
  };
  const place = {
    location: ProgressLocation.Notification,
    title: doing,
    cancellable: true,
  };
  return window.withProgress(
    place,
    (progress, cancelled) =>
      new Promise<Made | { refused: string } | undefined>((resolve) => {
        const end = (what: Made | { refused: string } | undefined) => {
          worker.stop();
          resolve(what);
        };
        const fetchAll = async (addresses: readonly string[]) => {
          const texts = await Promise.all(addresses.map(async (each) => [each, await textAt(each)] as const));
          request.files = { ...request.files, ...Object.fromEntries(texts) };
          worker.send(request);
        };
        const worker = start(
          bundle,
          (message) => {
            const said = says.safeParse(message).data;
            if (said?.is === "progress")
              progress.report({ increment: 100 / said.of, message: words(said.done, said.of) });
            if (said?.is === "refused") end({ refused: said.because });
            if (said?.is === "missing") void fetchAll(said.addresses);
            const result = said?.is === "made" ? made.safeParse(said).data : undefined;
            if (result) end(result);
          },
          (because) => end({ refused: because }),
        );
        cancelled.onCancellationRequested(() => end(undefined));
        worker.send(request);
      }),
  );
}

/** Another chair's text: as it stands in the editor when it is open. Only chairs are read, whatever a file names. */
export async function textAt(address: string): Promise<string | null> {
  const uri = Uri.parse(address);
  if (!/\.chair$/i.test(uri.path)) return null;
  const open = workspace.textDocuments.find((each) => each.uri.toString() === uri.toString());
  return open ? open.getText() : chairText(uri);
}
