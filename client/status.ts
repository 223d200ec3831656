/**
 * One item in the status bar while a chair is being written: seat height, back lean, findings. It opens the drawing.
 */
import { Disposable, languages, StatusBarAlignment, type TextEditor, window } from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import * as z from "zod";
import { SUMMARY, type SummaryParams } from "../server/main/protocol.ts";

const summary = z.object({
  seatHeight: z.string().optional(),
  backLean: z.string().optional(),
  errors: z.number(),
  warnings: z.number(),
});

/** Follows the active editor until disposed. */
export function createStatus(client: BaseLanguageClient, language: string): Disposable {
  const item = window.createStatusBarItem("seatwright.chair", StatusBarAlignment.Right, 100);
  item.name = "Chair";
  item.command = "seatwright.openDrawing";
  let asked = 0;

  async function follow(editor: TextEditor | undefined) {
    const mine = ++asked;
    if (editor?.document.languageId !== language) return item.hide();
    const params: SummaryParams = { uri: client.code2ProtocolConverter.asUri(editor.document.uri) };
    const answer = summary.safeParse(await client.sendRequest(SUMMARY, params).catch(() => undefined));
    // A later question is on its way: its answer counts.
    if (mine !== asked) return;
    if (!answer.success) return item.hide();
    const { seatHeight, backLean, errors, warnings } = answer.data;
    const words = [
      seatHeight && `Seat ${seatHeight}`,
      backLean && `backrest ${backLean} from square to the seat`,
      errors + warnings > 0 ? `${errors + warnings} found` : "",
    ].filter(Boolean);
    item.text = words.length > 0 ? words.join(" · ") : "Chair";
    item.tooltip = `Seat height and lean of what the back is leant on, as the chair stands; ${errors} errors, ${warnings} warnings. Opens the drawing.`;
    item.show();
  }

  return Disposable.from(
    item,
    window.onDidChangeActiveTextEditor((editor) => void follow(editor)),
    languages.onDidChangeDiagnostics(({ uris }) => {
      const editor = window.activeTextEditor;
      if (editor && uris.some((uri) => uri.toString() === editor.document.uri.toString()))
        void follow(editor);
    }),
    client.onDidChangeState(() => void follow(window.activeTextEditor)),
  );
}
