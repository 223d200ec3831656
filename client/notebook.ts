/**
 * The notes of the chair at hand: reading them in order with what changed between them, and writing today's.
 */
import {
  commands,
  l10n,
  type Position,
  SnippetString,
  type TextDocument,
  type TextDocumentContentProvider,
  Uri,
  window,
} from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import * as z from "zod";
import {
  CHOSEN_SINCE,
  type ChosenSinceParams,
  NOTEBOOK,
  type NotebookParams,
  type OldChair,
} from "../server/main/protocol.ts";
import { chairText } from "./chair-text.ts";
import { type FileVersions, versionsOf } from "./git-extension.ts";
import { nameOf } from "./names.ts";
import { today } from "./today.ts";

/** Where notebooks are shown from. */
export const NOTEBOOK_SCHEME = "seatwright-notebook";
/** Most versions that a notebook goes through. */
const MOST = 200;

interface Notebooks extends TextDocumentContentProvider {
  /** Makes the notebook of a chair and shows it beside. */
  show(document: TextDocument): Promise<void>;
}

/** No notebooks yet; the client need not have started. */
export function createNotebooks(client: BaseLanguageClient): Notebooks {
  const made = new Map<string, string>();
  return {
    provideTextDocumentContent: (uri) => made.get(uri.toString()) ?? "",
    async show(document) {
      const uri = client.code2ProtocolConverter.asUri(document.uri);
      const params: NotebookParams = { uri, versions: await earlier(document) };
      const text = z
        .string()
        .nullable()
        .safeParse(await client.sendRequest(NOTEBOOK, params)).data;
      if (!text) return;
      // Another address each time, since a text that is open already is not asked for again.
      const path = `/Notebook of ${nameOf(document.uri)}.md`;
      const address = Uri.from({ scheme: NOTEBOOK_SCHEME, path, query: `${document.version}-${made.size}` });
      made.set(address.toString(), text);
      await commands.executeCommand("markdown.showPreviewToSide", address);
    },
  };
}

/** Versions of the file from the oldest: its commits where there are any, else the saved one. */
async function earlier(document: TextDocument): Promise<OldChair[]> {
  const address = document.uri.toString();
  const versions = await versionsOf(document.uri);
  const commits = (await versions?.commits(MOST)) ?? [];
  if (!versions || commits.length === 0) {
    const saved = document.isUntitled ? null : await chairText(document.uri);
    return saved === null ? [] : [{ label: l10n.t("saved"), text: saved, address }];
  }
  const found = await Promise.all(
    commits.map(async ({ hash, label }) => ({ label, text: await versions.textAt(hash), address })),
  );
  return found.flatMap(({ text, ...rest }) => (text === undefined ? [] : [{ ...rest, text }])).reverse();
}

/** Writes today's note behind the others, with what was changed since the last one ready to be edited. One step to undo. */
export async function addNote(document: TextDocument, client: BaseLanguageClient): Promise<void> {
  const uri = client.code2ProtocolConverter.asUri(document.uri);
  const old = await sinceLastNote(document);
  const params: ChosenSinceParams | undefined = old && { uri, old };
  const answer = params ? await client.sendRequest(CHOSEN_SINCE, params).catch(() => []) : [];
  const chosen = z.array(z.string()).safeParse(answer).data ?? [];
  const words = chosen.length > 0 ? `${chosen.join("; ")}.` : l10n.t("What was tried, and what came of it.");
  const editor = await window.showTextDocument(document);
  const place = behindNotes(document);
  const snippet = new SnippetString(place.before)
    .appendText(`note ${today()} "`)
    .appendPlaceholder(words.replaceAll("\\", "\\\\").replaceAll('"', '\\"'))
    .appendText(`"${place.after}`);
  await editor.insertSnippet(snippet, place.at);
}

const notesIn = (text: string): string[] => text.match(/^[ \t]*note[ \t].*$/gm) ?? [];

/** The version in which the last note was written; the saved one where no versions are kept. */
async function sinceLastNote(document: TextDocument): Promise<OldChair | undefined> {
  const address = document.uri.toString();
  const versions = await versionsOf(document.uri);
  const found = versions && (await firstWith(versions, notesIn(document.getText()).at(-1)));
  const text = found ?? (document.isUntitled ? null : await chairText(document.uri));
  return text === null ? undefined : { label: l10n.t("last note"), text, address };
}

/** The oldest version of those that have a note. */
async function firstWith(versions: FileVersions, note: string | undefined): Promise<string | undefined> {
  let oldest: string | undefined;
  for (const { hash } of await versions.commits(MOST)) {
    const text = await versions.textAt(hash);
    if (
      text === undefined ||
      (note !== undefined && !notesIn(text).some((each) => each.trim() === note.trim()))
    )
      break;
    oldest = text;
  }
  return oldest;
}

/** Where a note goes: behind the last one, else at the end. */
function behindNotes(document: TextDocument): { at: Position; before: string; after: string } {
  for (let line = document.lineCount - 1; line >= 0; line--) {
    const { text, range } = document.lineAt(line);
    if (/^[ \t]*note[ \t]/.test(text)) return { at: range.end, before: "\n", after: "" };
  }
  const last = document.lineAt(document.lineCount - 1);
  return { at: last.range.end, before: last.isEmptyOrWhitespace ? "\n" : "\n\n", after: "\n" };
}
