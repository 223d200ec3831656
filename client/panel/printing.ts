/**
 * Prints a drawing to scale. A panel may not print: VS Code's frame around it forbids dialogs on the desktop as on the web. So the
 * drawing is put on a page of its own, which the maker's browser opens and prints; where VS Code cannot reach a browser with a file, the
 * page is saved for the maker to open.
 */
import { env, UIKind, Uri, window, workspace } from "vscode";
import { withPicture } from "../../server/drawing/pictorial/on-sheet.ts";
import type { DrawingParams } from "../../server/main/protocol.ts";
import type { PictureShown } from "./messages.ts";
import { type Paper, papers, printablePage, scaleOn } from "./printable-page.ts";
import { nameOf, saveBeside, stalely } from "./saving.ts";

/** Asks for the paper, makes the page and has it opened. `storage` is the extension's own folder. */
export async function printDrawing(
  drawing: DrawingParams,
  storage: Uri,
  picture?: PictureShown,
): Promise<void> {
  if (!drawing.sheet)
    return void window.showWarningMessage(`There is no drawing to print. ${drawing.reason ?? ""}`);
  const sheet = withPicture(drawing.sheet, picture);
  const offers = papers.map((paper) => {
    return { label: paper.name, description: `1 : ${scaleOn(paper, sheet).scale}`, paper };
  });
  const chosen = await window.showQuickPick(offers, { title: "Print Drawing", placeHolder: "Which paper" });
  if (!chosen) return;
  const page = printablePage(sheet, chosen.paper as Paper);
  if (env.uiKind === UIKind.Desktop && storage.scheme === "file" && !env.remoteName) {
    const name = nameOf(Uri.parse(drawing.uri)).replace(/\.chair$/, "");
    const file = Uri.joinPath(storage, `${name}-drawing.html`);
    await workspace.fs.createDirectory(storage);
    await workspace.fs.writeFile(file, new TextEncoder().encode(page));
    if (await env.openExternal(file)) return;
  }
  const saved = await saveBeside(drawing, page, { extension: "html", kind: "Page to print" });
  if (!saved) return;
  void window.showInformationMessage(
    `Open ${nameOf(saved)} in a browser: it asks to be printed, at 1 : ${scaleOn(chosen.paper, sheet).scale} on ${chosen.paper.name}.${stalely(drawing)}`,
  );
}
