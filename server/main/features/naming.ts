/**
 * Features that follow names from place to place, over the files of the workspace where need be.
 */
import {
  type CancellationToken,
  type ClientCapabilities,
  type DefinitionParams,
  type DocumentHighlightParams,
  LSPErrorCodes,
  type PrepareRenameParams,
  type ReferenceParams,
  type RenameParams,
  ResponseError,
  type WorkspaceSymbolParams,
} from "vscode-languageserver";
import { TextDocument } from "vscode-languageserver-textdocument";
import type { TextEdit } from "vscode-languageserver-types";
import { definition, definitionLinks } from "../../editor/definition.ts";
import { highlight } from "../../editor/highlight.ts";
import { references } from "../../editor/references.ts";
import { prepareRename, type Refused, rename } from "../../editor/rename.ts";
import { keepsMeaning } from "../../editor/rename-check.ts";
import type { View } from "../../editor/view.ts";
import { workspaceSymbols } from "../../editor/workspace-symbols.ts";
import { sameAddress } from "../addresses.ts";
import { type Feature, onDocument } from "../feature.ts";
import { finishInTurns } from "../in-turns.ts";
import { resolveNamed } from "../named-files.ts";
import { everyView, filesCome, type World, worked } from "../world.ts";

export const namingFeatures: Feature[] = [
  onDocument({
    name: "definition",
    method: "textDocument/definition",
    capability: { definitionProvider: true },
    empty: [] as unknown[],
    async answer(view, { position }: DefinitionParams, world) {
      await filesCome(view, world.files);
      const linked = world.client.textDocument?.definition?.linkSupport;
      return (linked ? definitionLinks : definition)(view, view.document.offsetAt(position));
    },
  }),
  onDocument({
    name: "references",
    method: "textDocument/references",
    capability: { referencesProvider: true },
    empty: [],
    answer: async (view, { position, context }: ReferenceParams, world) =>
      references(view, view.document.offsetAt(position), await everyView(world), context.includeDeclaration),
  }),
  onDocument({
    name: "highlight",
    method: "textDocument/documentHighlight",
    capability: { documentHighlightProvider: true },
    empty: [],
    answer: (view, { position }: DocumentHighlightParams) =>
      highlight(view, view.document.offsetAt(position)),
  }),
  onDocument({
    name: "rename",
    method: "textDocument/rename",
    capability: { renameProvider: true },
    when: (client) => !preparesRename(client),
    empty: null as unknown,
    answer: (view, params: RenameParams, world, token) => renamed(view, params, world, token),
  }),
  onDocument({
    name: "rename",
    method: "textDocument/prepareRename",
    capability: { renameProvider: { prepareProvider: true } },
    when: preparesRename,
    empty: null as unknown,
    async answer(view, { position }: PrepareRenameParams, world) {
      await filesCome(view, world.files);
      return orError(prepareRename(view, view.document.offsetAt(position)));
    },
  }),
  {
    name: "workspace-symbols",
    method: "workspace/symbol",
    capability: { workspaceSymbolProvider: true },
    empty: [],
    answer: async (world, { query }: WorkspaceSymbolParams) =>
      workspaceSymbols(await everyView(world), query),
  },
];

async function renamed(
  view: Parameters<typeof rename>[0],
  { position, newName }: RenameParams,
  world: World,
  token: CancellationToken,
) {
  const stop = () => token.isCancellationRequested;
  await filesCome(view, world.files);
  const edit = orError(rename(view, view.document.offsetAt(position), newName, await everyView(world)));
  const from = orError(prepareRename(view, view.document.offsetAt(position))).placeholder;
  const to = newName.trim();
  const touched = Object.keys(edit.changes ?? {}).flatMap((uri) => world.views.get(uri) ?? []);
  const texts = new Map(
    touched.map(({ uri, document }) => [sameAddress(uri), edited(document, edit.changes?.[uri] ?? [])]),
  );
  const read = (each: View) => (uri: string) => texts.get(sameAddress(uri)) ?? each.other(uri)?.getText();
  for (const each of [view, ...touched.filter((other) => other !== view)].slice(0, MOST_CHECKED)) {
    await worked(each, stop);
    const files = { resolve: resolveNamed, read: read(each) };
    const text = texts.get(sameAddress(each.uri)) ?? each.document.getText();
    const again = world.services.study({ text, address: each.uri, files });
    const kept = await finishInTurns(keepsMeaning(each.study, again, { from, to }), stop);
    if (stop()) return null;
    if (kept === false)
      throw new ResponseError(
        LSPErrorCodes.RequestFailed,
        `With ${to} for ${from}, ${nameOf(each.uri)} would say something else; choose another name.`,
      );
  }
  return edit;
}

/** Files in which a new name is tried out, the one at hand first. */
const MOST_CHECKED = 12;

const edited = (document: TextDocument, edits: readonly TextEdit[]) =>
  TextDocument.applyEdits(document, [...edits]);

const nameOf = (uri: string) => uri.slice(uri.lastIndexOf("/") + 1);

function preparesRename(client: ClientCapabilities): boolean {
  return client.textDocument?.rename?.prepareSupport === true;
}

/** A refusal reaches the maker as the request's error. */
function orError<T>(answer: T | Refused): T {
  if (typeof answer === "object" && answer !== null && "refused" in answer) {
    throw new ResponseError(LSPErrorCodes.RequestFailed, answer.refused);
  }
  return answer as T;
}
