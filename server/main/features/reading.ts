/**
 * Features that show what the text means and what follows from it.
 */
import type {
  CodeLensParams,
  DocumentDiagnosticParams,
  DocumentLinkParams,
  DocumentSymbolParams,
  InlayHintParams,
  SemanticTokensParams,
  SemanticTokensRangeParams,
} from "vscode-languageserver";
import { codeLenses } from "../../editor/code-lens.ts";
import { diagnostics } from "../../editor/diagnostics.ts";
import { inlayHints } from "../../editor/inlay-hints.ts";
import { documentLinks } from "../../editor/links.ts";
import { semanticLegend, semanticTokens } from "../../editor/semantic-tokens.ts";
import type { Settings } from "../../editor/settings.ts";
import { documentSymbols } from "../../editor/symbols.ts";
import { spanOf, type View } from "../../editor/view.ts";
import { messageOf } from "../../mends/words.ts";
import { type Feature, onDocument } from "../feature.ts";
import { canDo } from "../own-capabilities.ts";
import { filesCome } from "../world.ts";
import { hoverFeature } from "./hovering.ts";

export const readingFeatures: Feature[] = [
  onDocument({
    name: "diagnostics",
    method: "textDocument/diagnostic",
    capability: {
      diagnosticProvider: {
        identifier: "seatwright",
        interFileDependencies: true,
        workspaceDiagnostics: false,
      },
    },
    when: (client) => client.textDocument?.diagnostic !== undefined,
    empty: { kind: "full", items: [] } as unknown,
    async answer(view, { previousResultId }: DocumentDiagnosticParams, world) {
      await filesCome(view, world.files);
      const settings = await world.settings(view.uri);
      const resultId = resultIdOf(view, settings);
      if (resultId === previousResultId) return { kind: "unchanged", resultId };
      return { kind: "full", resultId, items: diagnostics(view, settings) };
    },
  }),
  hoverFeature,
  onDocument({
    name: "symbols",
    method: "textDocument/documentSymbol",
    capability: { documentSymbolProvider: true },
    empty: [],
    answer: (view, _: DocumentSymbolParams) => documentSymbols(view),
  }),
  onDocument({
    name: "semantic-tokens",
    method: "textDocument/semanticTokens/full",
    capability: { semanticTokensProvider: { legend: semanticLegend, full: true, range: true } },
    empty: { data: [] },
    answer: (view, _: SemanticTokensParams) => semanticTokens(view),
  }),
  onDocument({
    name: "semantic-tokens",
    method: "textDocument/semanticTokens/range",
    empty: { data: [] },
    answer: (view, { range }: SemanticTokensRangeParams) =>
      semanticTokens(view, spanOf(view.document, range)),
  }),
  onDocument({
    name: "inlay-hints",
    method: "textDocument/inlayHint",
    capability: { inlayHintProvider: true },
    empty: [],
    answer: async (view, { range }: InlayHintParams, world) =>
      inlayHints(view, spanOf(view.document, range), await world.settings(view.uri)),
  }),
  onDocument({
    name: "code-lens",
    method: "textDocument/codeLens",
    capability: { codeLensProvider: {} },
    empty: [],
    answer: async (view, _: CodeLensParams, world) =>
      codeLenses(view, await world.settings(view.uri), { commands: canDo(world.client, "commands") }),
  }),
  onDocument({
    name: "links",
    method: "textDocument/documentLink",
    capability: { documentLinkProvider: {} },
    empty: [],
    answer: (view, _: DocumentLinkParams) => documentLinks(view),
  }),
];

const resultIds = new WeakMap<object, WeakMap<object, string>>();
let results = 0;

/** One name for the findings of one study under one set of settings, and the mends known by then, so that they need not be sent twice. */
function resultIdOf({ study }: View, settings: Settings): string {
  const tried = study.problems.filter((problem) => messageOf(problem) !== problem.message).length;
  return `${seenBefore(study, settings)}.${tried}`;
}

function seenBefore(study: object, settings: Settings): string {
  const bySettings = resultIds.get(study) ?? new WeakMap<object, string>();
  resultIds.set(study, bySettings);
  const id = bySettings.get(settings) ?? String(++results);
  bySettings.set(settings, id);
  return id;
}
