/**
 * Features that follow names from place to place, over the files of the workspace where need be.
 */
import {
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
import { definition, definitionLinks } from "../../editor/definition.ts";
import { highlight } from "../../editor/highlight.ts";
import { references } from "../../editor/references.ts";
import { prepareRename, type Refused, rename } from "../../editor/rename.ts";
import { workspaceSymbols } from "../../editor/workspace-symbols.ts";
import { type Feature, onDocument } from "../feature.ts";
import { everyView, filesCome, type World } from "../world.ts";

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
    answer: (view, params: RenameParams, world) => renamed(view, params, world),
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
) {
  await filesCome(view, world.files);
  return orError(rename(view, view.document.offsetAt(position), newName, await everyView(world)));
}

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
