/**
 * Pages that tell of the chair at hand: how it stands, whom it fits, how it is glued up, all its values. Each is a read-only text that
 * VS Code's own Markdown preview shows, and follows the chair.
 */
import {
  commands,
  Disposable,
  EventEmitter,
  l10n,
  languages,
  type TextDocument,
  type TextDocumentContentProvider,
  Uri,
  workspace,
} from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import * as z from "zod";
import { type PageKind, pageCommand, pageKinds, pageTitles } from "../server/editor/pages/kinds.ts";
import { PAGE, type PageParams } from "../server/main/protocol.ts";
import { nameOf } from "./names.ts";

const PAGE_SCHEME = "seatwright-page";

/** Registers the pages and their commands until disposed; `atHand` gives the chair that a command is for. */
export function createPages(
  client: BaseLanguageClient,
  atHand: (asked?: unknown) => Promise<TextDocument | undefined>,
): Disposable {
  const changed = new EventEmitter<Uri>();
  const provider: TextDocumentContentProvider = {
    onDidChange: changed.event,
    async provideTextDocumentContent(address) {
      // VS Code writes authorities in small letters.
      const kind = pageKinds.find((each) => each.toLowerCase() === address.authority.toLowerCase());
      if (!kind) return "";
      const uri = client.code2ProtocolConverter.asUri(Uri.parse(address.query));
      const params: PageParams = { uri, kind };
      const answer = await client.sendRequest(PAGE, params).catch(() => null);
      return (
        z.string().safeParse(answer).data ??
        l10n.t("Open {file} to see this page.", { file: nameOf(Uri.parse(address.query)) })
      );
    },
  };

  async function show(kind: PageKind, asked: unknown) {
    const document = await atHand(typeof asked === "string" ? Uri.parse(asked) : asked);
    if (!document) return;
    const path = `/${pageTitles[kind]} of ${nameOf(document.uri).replace(/\.chair$/, "")}.md`;
    const address = Uri.from({
      scheme: PAGE_SCHEME,
      authority: kind,
      path,
      query: document.uri.toString(),
    });
    changed.fire(address);
    await commands.executeCommand("markdown.showPreviewToSide", address);
  }

  /** What has been worked out anew is told by its findings. */
  function follow(uris: readonly Uri[]) {
    const known = new Set(uris.map((uri) => uri.toString()));
    for (const { uri } of workspace.textDocuments)
      if (uri.scheme === PAGE_SCHEME && known.has(uri.query)) changed.fire(uri);
  }

  return Disposable.from(
    changed,
    workspace.registerTextDocumentContentProvider(PAGE_SCHEME, provider),
    languages.onDidChangeDiagnostics(({ uris }) => follow(uris)),
    ...pageKinds.map((kind) =>
      commands.registerCommand(pageCommand(kind), (asked: unknown) => show(kind, asked)),
    ),
  );
}
