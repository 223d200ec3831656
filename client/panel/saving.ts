/**
 * Keeps a drawing as an SVG file where the maker says. All by way of VS Code's own files, so that it works on the web too.
 */
import { l10n, Uri, window, workspace } from "vscode";
import { withPicture } from "../../server/drawing/pictorial/on-sheet.ts";
import { sheetToSvg } from "../../server/drawing/svg.ts";
import type { DrawingParams } from "../../server/main/protocol.ts";
import { handOver } from "../handing-over.ts";
import { nameOf } from "../names.ts";
import type { PictureShown } from "./messages.ts";

/** Asks where, writes the file and offers to open it; with the pictorial view if one is shown. */
export async function saveDrawing(drawing: DrawingParams, picture?: PictureShown): Promise<void> {
  const { sheet } = drawing;
  if (!sheet)
    return void window.showWarningMessage(
      l10n.t("There is no drawing to save. {why}", { why: drawing.reason ?? "" }),
    );
  const saved = await saveBeside(drawing, sheetToSvg(withPicture(sheet, picture)), {
    extension: "svg",
    kind: l10n.t("SVG drawing"),
  });
  if (!saved) return;
  await handOver(saved, {
    says: l10n.t("Saved {file}.", { file: nameOf(saved) }) + stalely(drawing),
    as: "asText",
  });
}

/** What to add about a drawing that the text has left behind. */
export function stalely({ stale, reason }: DrawingParams): string {
  return stale
    ? ` ${l10n.t("It is the last good drawing: {why}", { why: reason ?? l10n.t("the text has moved on.") })}`
    : "";
}

/** Asks for a place, the chair's own folder first, and writes the file there; nothing when the maker thinks better of it. */
export async function saveBeside(
  { uri }: Pick<DrawingParams, "uri">,
  content: string | Uint8Array,
  { extension, kind, title = l10n.t("Save Drawing") }: { extension: string; kind: string; title?: string },
): Promise<Uri | undefined> {
  const target = await window.showSaveDialog({
    title,
    filters: { [kind]: [extension] },
    ...placeBeside(Uri.parse(uri), extension),
  });
  if (!target) return undefined;
  try {
    const bytes = typeof content === "string" ? new TextEncoder().encode(content) : content;
    await workspace.fs.writeFile(target, bytes);
    return target;
  } catch (error) {
    void window.showErrorMessage(
      l10n.t("{file} could not be written: {why}", { file: nameOf(target), why: (error as Error).message }),
    );
    return undefined;
  }
}

/** The chair's name with another ending, in its folder or, while it has none yet, in that of the workspace. */
function placeBeside(chair: Uri, extension: string): { defaultUri?: Uri } {
  const name = `${nameOf(chair).replace(/\.chair$/, "")}.${extension}`;
  if (chair.scheme !== "untitled") return { defaultUri: Uri.joinPath(chair, "..", name) };
  const folder = workspace.workspaceFolders?.[0];
  return folder ? { defaultUri: Uri.joinPath(folder.uri, name) } : {};
}
