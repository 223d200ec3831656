/**
 * Asks what the chair at hand is to be compared with, and gets that chair's text.
 */
import {
  l10n,
  type QuickPickItem,
  QuickPickItemKind,
  type TextDocument,
  type Uri,
  window,
  workspace,
} from "vscode";
import type { OldChair } from "../server/main/protocol.ts";
import { chairText } from "./chair-text.ts";
import { findChairs } from "./find-chairs.ts";
import { versionsOf } from "./git-extension.ts";
import { nameOf } from "./names.ts";

/** Most commits that are offered. */
const MOST = 200;

type Choice = QuickPickItem & { old?(): Promise<OldChair | undefined> };

/** The saved version, a commit, or another file, as the maker chooses; nothing when they think better of it. */
export async function chooseOldChair(document: TextDocument): Promise<OldChair | undefined> {
  const { uri } = document;
  const address = uri.toString();
  const choices: Choice[] = [];
  if (!document.isUntitled) {
    const label = l10n.t("saved version");
    choices.push({
      label: l10n.t("Saved Version"),
      detail: l10n.t("The file as it was last saved"),
      old: () => fromFile(uri, label),
    });
  }
  const versions = await versionsOf(uri);
  const commits = (await versions?.commits(MOST)) ?? [];
  if (commits.length > 0) choices.push({ label: l10n.t("Commits"), kind: QuickPickItemKind.Separator });
  for (const { hash, label } of commits) {
    choices.push({
      label,
      description: hash.slice(0, 9),
      async old() {
        const text = await versions?.textAt(hash);
        return text === undefined ? cannotRead(label) : { label, text, address };
      },
    });
  }
  if (versions) {
    choices.push({
      label: l10n.t("Another Revision…"),
      detail: l10n.t("A branch, a tag or a commit, by its name"),
      async old() {
        const asked = await window.showInputBox({
          title: l10n.t("Compare Chair With"),
          prompt: l10n.t("The revision by its name, such as main, v2 or HEAD~3"),
        });
        const label = asked?.trim();
        if (!label) return undefined;
        const text = await versions.textAt(label);
        if (text === undefined)
          void window.showWarningMessage(l10n.t('There is no version of this file at "{label}".', { label }));
        return text === undefined ? undefined : { label, text, address };
      },
    });
  }
  const others = (await findChairs()).filter((each) => each.toString() !== address);
  if (others.length > 0) choices.push({ label: l10n.t("Other Files"), kind: QuickPickItemKind.Separator });
  for (const other of others)
    choices.push({ label: workspace.asRelativePath(other), old: () => fromFile(other, nameOf(other)) });
  const chosen = await window.showQuickPick(choices, {
    title: l10n.t("Compare Chair With"),
    placeHolder: l10n.t("The old chair, to be laid behind this one"),
    matchOnDescription: true,
  });
  if (!chosen) return undefined;
  return chosen.old?.();
}

async function fromFile(uri: Uri, label: string): Promise<OldChair | undefined> {
  const text = await chairText(uri);
  return text === null ? cannotRead(label) : { label, text, address: uri.toString() };
}

function cannotRead(label: string): undefined {
  void window.showWarningMessage(l10n.t('"{label}" cannot be read.', { label }));
}
