/**
 * Asks which worked-out value should come to which figure, and offers the single choices that give it. What is chosen is one step to undo.
 */
import {
  l10n,
  ProgressLocation,
  type QuickPickItem,
  Range,
  type TextDocument,
  TextEditorRevealType,
  WorkspaceEdit,
  window,
  workspace,
} from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import * as z from "zod";
import {
  REACH,
  type ReachParams,
  type ReachResult,
  VALUES,
  type ValuesParams,
  type ValuesResult,
} from "../server/main/protocol.ts";

const values = z.array(
  z.object({ name: z.string(), printed: z.string(), meaning: z.string() }),
) satisfies z.ZodType<ValuesResult>;

const reached = z.object({
  refused: z.string().optional(),
  version: z.number().int(),
  ways: z.array(
    z.object({
      title: z.string(),
      detail: z.string(),
      met: z.boolean(),
      edits: z.array(z.object({ start: z.number().int(), end: z.number().int(), text: z.string() })),
    }),
  ),
}) satisfies z.ZodType<ReachResult>;

/** Asks for the value and its figure, seeks, offers what was found and writes what is chosen. */
export async function reachFigure(document: TextDocument, client: BaseLanguageClient): Promise<void> {
  const uri = client.code2ProtocolConverter.asUri(document.uri);
  const params: ValuesParams = { uri };
  const known = values.safeParse(await client.sendRequest(VALUES, params)).data ?? [];
  if (known.length === 0) {
    void window.showInformationMessage(l10n.t("This chair has no worked-out values yet."));
    return;
  }
  const chosen = await window.showQuickPick(
    known.map(({ name, printed, meaning }) => ({ label: name, description: printed, detail: meaning })),
    {
      title: l10n.t("Reach a Figure"),
      placeHolder: l10n.t("Which value should change"),
      matchOnDetail: true,
    },
  );
  if (!chosen) return;
  const figure = await window.showInputBox({
    title: l10n.t("Reach a Figure"),
    prompt: l10n.t('{value} is {now}. A figure such as 2deg or 450, or "at least 450".', {
      value: chosen.label,
      now: chosen.description ?? "",
    }),
    placeHolder: chosen.description ?? "",
    validateInput: (text) => (text.trim() ? undefined : l10n.t("Write the figure it should come to.")),
  });
  if (figure === undefined) return;
  const asked = /^\s*(at |from |over |under |[<>=])/.test(figure)
    ? `${chosen.label} ${figure}`
    : `${chosen.label} = ${figure}`;
  const found = await sought(client, { uri, asked });
  if (!found) return;
  if (found.refused !== undefined) {
    void window.showWarningMessage(found.refused);
    return;
  }
  await offer(document, found, asked);
}

async function sought(client: BaseLanguageClient, params: ReachParams): Promise<ReachResult | undefined> {
  const options = {
    location: ProgressLocation.Notification,
    title: l10n.t("Seeking {asked}", { asked: params.asked }),
    cancellable: true,
  };
  return window.withProgress(options, async (_, cancelled) => {
    const answer = await client.sendRequest(REACH, params, cancelled).catch(() => undefined);
    return reached.safeParse(answer).data;
  });
}

async function offer(document: TextDocument, { ways, version }: ReachResult, asked: string): Promise<void> {
  if (ways.length === 0) {
    void window.showInformationMessage(l10n.t("No single choice of this file moves it: {asked}.", { asked }));
    return;
  }
  const items = ways.map((way): QuickPickItem & { way: (typeof ways)[number] } => ({
    label: way.title,
    detail: way.detail,
    ...(way.met ? {} : { description: l10n.t("not quite") }),
    way,
  }));
  const chosen = await window.showQuickPick(items, {
    title: l10n.t("Reach a Figure"),
    placeHolder: l10n.t("What to change for {asked}", { asked }),
  });
  if (!chosen) return;
  if (document.version !== version) {
    void window.showWarningMessage(l10n.t("The text has changed meanwhile. Ask again."));
    return;
  }
  const edit = new WorkspaceEdit();
  for (const { start, end, text } of chosen.way.edits)
    edit.replace(document.uri, new Range(document.positionAt(start), document.positionAt(end)), text);
  await workspace.applyEdit(edit);
  // The line may lie far from what is in sight: who chose it sees what it became.
  const [first] = chosen.way.edits;
  const editor = window.visibleTextEditors.find((each) => each.document === document);
  if (!first || !editor) return;
  const at = document.positionAt(first.start);
  editor.revealRange(new Range(at, at), TextEditorRevealType.InCenterIfOutsideViewport);
}
