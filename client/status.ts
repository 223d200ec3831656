/**
 * One item in the status bar while a chair is being written: seat height and back lean, or what the file holds for others. It opens the
 * drawing. Findings are counted by VS Code's own item.
 */
import {
  Disposable,
  l10n,
  languages,
  MarkdownString,
  StatusBarAlignment,
  type TextEditor,
  window,
} from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import * as z from "zod";
import { SUMMARY, type SummaryParams } from "../server/main/protocol.ts";

const summary = z.object({
  title: z.string().optional(),
  seatHeight: z.string().optional(),
  backLean: z.string().optional(),
  weight: z.string().optional(),
  holds: z.string().optional(),
});

/** Follows the active editor until disposed. */
export function createStatus(client: BaseLanguageClient, language: string): Disposable {
  const item = window.createStatusBarItem("seatwright.chair", StatusBarAlignment.Right, 100);
  item.name = l10n.t("Chair");
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
    const { title, seatHeight, backLean, weight, holds } = answer.data;
    const figures = [
      seatHeight && l10n.t("Seat {height}", { height: seatHeight }),
      backLean && l10n.t("backrest {lean} from square to it", { lean: backLean }),
    ].filter(Boolean);
    const words = figures.length > 0 ? figures.join(", ") : holds;
    if (!words) return item.hide();
    item.text = words;
    const lines = [
      title && `**${title.replace(/[\\`*_[\]<>]/g, "\\$&")}**`,
      seatHeight && l10n.t("Seat height {height}, as the chair stands", { height: seatHeight }),
      backLean &&
        l10n.t("The backrest leans {lean} from square to the seat, through the faces that are leant on", {
          lean: backLean,
        }),
      weight && l10n.t("Weighs {weight}", { weight }),
      holds && l10n.t("Holds {what} for other files", { what: holds }),
    ].filter(Boolean);
    item.tooltip = new MarkdownString(lines.join("\n\n"));
    item.accessibilityInformation = { label: l10n.t("Chair: {words}. Opens the drawing.", { words }) };
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
