/**
 * Prints a drawing to scale. A panel may not print: VS Code's frame around it forbids dialogs on the desktop as on the web. So the
 * drawing is put on a page of its own, saved where the maker says, which the maker's browser opens and prints. It is not put into the
 * extension's own folder: a browser that is shut off from hidden folders, as some systems install it, could not read it there.
 */
import { l10n, window } from "vscode";
import { withPicture } from "../../server/drawing/pictorial/on-sheet.ts";
import type { DrawingParams } from "../../server/main/protocol.ts";
import { handOver } from "../handing-over.ts";
import { nameOf } from "../names.ts";
import type { PictureShown } from "./messages.ts";
import { type Paper, papers, printablePage, scaleOn } from "./printable-page.ts";
import { saveBeside, stalely } from "./saving.ts";

/** Asks for the paper, makes the page, saves it and offers to open it. */
export async function printDrawing(drawing: DrawingParams, picture?: PictureShown): Promise<void> {
  if (!drawing.sheet)
    return void window.showWarningMessage(
      l10n.t("There is no drawing to print. {why}", { why: drawing.reason ?? "" }),
    );
  const sheet = withPicture(drawing.sheet, picture);
  const offers = papers.map((paper) => {
    return { label: paper.name, description: `1 : ${scaleOn(paper, sheet).scale}`, paper };
  });
  const chosen = await window.showQuickPick(offers, {
    title: l10n.t("Print Drawing"),
    placeHolder: l10n.t("Which paper"),
  });
  if (!chosen) return;
  const page = printablePage(sheet, chosen.paper as Paper);
  const saved = await saveBeside(drawing, page, {
    extension: "html",
    kind: l10n.t("Page to print"),
    title: l10n.t("Save Page to Print"),
  });
  if (!saved) return;
  const { scale } = scaleOn(chosen.paper, sheet);
  await handOver(saved, {
    says:
      l10n.t("Saved {file}: print it from a browser at 1 : {scale} on {paper}.", {
        file: nameOf(saved),
        scale,
        paper: chosen.paper.name,
      }) + stalely(drawing),
    as: "seen",
  });
}
