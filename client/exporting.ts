/**
 * The chair at hand written for other programs, in a worker, and saved where the maker says. All by way of VS Code's own files, so that it
 * works on the web too.
 */
import { l10n, type TextDocument, Uri, window, workspace } from "vscode";
import * as z from "zod";
import { type ExportKind, exportKinds } from "../server/exports/kinds.ts";
import { handOver } from "./handing-over.ts";
import { inWorker, type StartWorker } from "./in-worker.ts";
import { nameOf } from "./names.ts";
import { saveBeside } from "./panel/saving.ts";

const made = z.object({
  files: z.array(z.object({ name: z.string(), bytes: z.instanceof(Uint8Array) })),
  leftOut: z.array(z.string()),
});

type Made = z.infer<typeof made>;

/** Asks for the kind, makes the files, asks where and writes them. */
export async function exportChair(document: TextDocument, start: StartWorker): Promise<void> {
  const chosen = await window.showQuickPick(
    exportKinds.map((kind) => ({ label: kind.label, description: kind.about, as: kind })),
    { title: l10n.t("Export"), placeHolder: l10n.t("As what kind of file") },
  );
  if (!chosen) return;
  const kind = chosen.as;
  const result = await inWorker(document, start, {
    bundle: "export",
    doing: l10n.t("Exporting {file}", { file: nameOf(document.uri) }),
    progress: (done, of) => l10n.t("part {done} of {of}", { done, of }),
    asked: { kind: kind.kind },
    made,
  });
  if (!result) return;
  if ("refused" in result) {
    void window.showWarningMessage(
      l10n.t("{file} was not exported: {why}.", { file: nameOf(document.uri), why: result.refused }),
    );
    return;
  }
  const saved = kind.each ? await saveInFolder(document, result) : await saveOne(document, kind, result);
  if (!saved) return;
  const left = result.leftOut.length
    ? ` ${l10n.t("Left out, as no sound solid comes of them: {parts}.", { parts: result.leftOut.join(", ") })}`
    : "";
  if (kind.each) void window.showInformationMessage(`${saved.says}.${left}`);
  else await handOver(saved.at, { says: `${saved.says}.${left}`, as: "kept" });
}

/** What was written: in a few words, and where. */
interface Saved {
  says: string;
  at: Uri;
}

async function saveOne(
  { uri }: TextDocument,
  { ending, label }: ExportKind,
  { files }: Made,
): Promise<Saved | undefined> {
  const place = { title: l10n.t("Save Export"), extension: ending, kind: label };
  const target = await saveBeside({ uri: uri.toString() }, files[0]!.bytes, place);
  return target && { says: l10n.t("Saved {file}", { file: nameOf(target) }), at: target };
}

async function saveInFolder({ uri }: TextDocument, { files }: Made): Promise<Saved | undefined> {
  const [folder] =
    (await window.showOpenDialog({
      title: l10n.t("Folder for {count} Files", { count: files.length }),
      openLabel: l10n.t("Save Here"),
      canSelectFiles: false,
      canSelectFolders: true,
      ...(uri.scheme === "untitled" ? {} : { defaultUri: Uri.joinPath(uri, "..") }),
    })) ?? [];
  if (!folder) return undefined;
  try {
    for (const { name, bytes } of files) await workspace.fs.writeFile(Uri.joinPath(folder, name), bytes);
  } catch (error) {
    void window.showErrorMessage(
      l10n.t("The files could not be written: {why}", { why: (error as Error).message }),
    );
    return undefined;
  }
  return {
    says: l10n.t("Saved {count} files in {folder}", {
      count: files.length,
      folder: nameOf(folder) || folder.path,
    }),
    at: folder,
  };
}
