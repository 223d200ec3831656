/**
 * What lenses and links do: a part is shown on the drawing, a finding in the text with what it says.
 */
import { commands, Disposable, Position, Range, Selection, Uri, ViewColumn, window, workspace } from "vscode";
import * as z from "zod";
import type { Panels } from "./panel/panels.ts";

const given = z.tuple([z.string(), z.object({ line: z.number(), character: z.number() })]);

/** Registers the commands until disposed; the palette does not offer them, since they are of a place. */
export function showingCommands(panels: Panels): Disposable {
  return Disposable.from(
    commands.registerCommand("seatwright.showPart", async (...sent: unknown[]) => {
      const uri = await goTo(sent);
      // The caret is in the part, and the drawing marks what the caret is in.
      if (uri) panels.open(uri);
    }),
    commands.registerCommand("seatwright.showFinding", async (...sent: unknown[]) => {
      if (await goTo(sent)) await commands.executeCommand("editor.action.showHover");
    }),
  );
}

async function goTo(sent: unknown): Promise<Uri | undefined> {
  const found = given.safeParse(sent).data;
  if (!found) return undefined;
  const [address, { line, character }] = found;
  const uri = Uri.parse(address);
  const document = await workspace.openTextDocument(uri);
  const open = window.visibleTextEditors.find((editor) => editor.document === document);
  const editor = await window.showTextDocument(document, open?.viewColumn ?? ViewColumn.One);
  const at = new Position(line, character);
  editor.selections = [new Selection(at, at)];
  editor.revealRange(new Range(at, at));
  return uri;
}
