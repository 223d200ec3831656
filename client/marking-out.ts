/**
 * Marking-out sheets of the chair at hand, made in a worker and saved as a PDF where the maker says. All by way of VS Code's own files, so
 * that it works on the web too.
 */
import { l10n, type TextDocument, Uri, window, workspace } from "vscode";
import * as z from "zod";
import type { Step } from "../server/drawing/markout/figures.ts";
import { LETTER_FILES, type LetterFiles } from "../server/drawing/markout/letters/files.ts";
import type { MarkoutOptions } from "../server/drawing/markout/pages.ts";
import type { PaperName } from "../server/drawing/markout/paper.ts";
import { handOver } from "./handing-over.ts";
import { inWorker, type StartWorker } from "./in-worker.ts";
import { nameOf } from "./names.ts";
import { saveBeside } from "./panel/saving.ts";
import { today } from "./today.ts";

const made = z.object({ bytes: z.instanceof(Uint8Array), pages: z.number() });

type Made = z.infer<typeof made>;

const papers: { label: string; description: string; paper: PaperName }[] = [
  { label: "A4", description: "210 × 297 mm", paper: "a4" },
  { label: "A3", description: "297 × 420 mm", paper: "a3" },
  { label: "Letter", description: "8 1/2 × 11 in", paper: "letter" },
  { label: "Tabloid", description: "11 × 17 in", paper: "tabloid" },
];

/** Asks for the paper, makes the sheets, asks where and writes them. */
export async function markOut(document: TextDocument, start: StartWorker, extension: Uri): Promise<void> {
  const chosen = await window.showQuickPick(papers, {
    title: l10n.t("Marking-Out Sheets"),
    placeHolder: l10n.t("Which paper"),
  });
  if (!chosen) return;
  const step = stepOf(workspace.getConfiguration("seatwright", document).get("markout.inchStep"));
  const options: MarkoutOptions = { paper: chosen.paper, step, dayUnlessNoted: today() };
  const result = await inWorker(document, start, {
    bundle: "markout",
    doing: l10n.t("Marking out {file}", { file: nameOf(document.uri) }),
    progress: (done, of) => l10n.t("page {done} of {of}", { done, of }),
    asked: {
      options,
      date: Date.now(),
      letters: await lettersIn(Uri.joinPath(extension, "dist", "letters")),
    },
    made,
  });
  if (!result) return;
  if ("refused" in result) {
    void window.showWarningMessage(
      l10n.t("{file} was not marked out: {why}.", {
        file: nameOf(document.uri),
        why: result.refused,
      }),
    );
    return;
  }
  await keep(document, result);
}

/** The letters of the sheets, packed with the extension; none where they cannot be read, so that standard fonts stand in. */
async function lettersIn(folder: Uri): Promise<LetterFiles | undefined> {
  try {
    const read = async (name: string) =>
      [name, await workspace.fs.readFile(Uri.joinPath(folder, name))] as const;
    return Object.fromEntries(await Promise.all(LETTER_FILES.map(read)));
  } catch {
    return undefined;
  }
}

const stepOf = (given: unknown): Step => (given === "1/16" ? 16 : given === "1/64" ? 64 : 32);

async function keep({ uri }: TextDocument, { bytes, pages }: Made): Promise<void> {
  const saved = await saveBeside({ uri: uri.toString() }, bytes, {
    title: l10n.t("Save Marking-Out Sheets"),
    extension: "pdf",
    kind: l10n.t("Marking-out sheets"),
  });
  if (!saved) return;
  // Each page says how its scale is checked.
  await handOver(saved, {
    says: l10n.t("Saved {file}: {pages} pages, to print at 100 %.", { file: nameOf(saved), pages }),
    as: "seen",
  });
}
