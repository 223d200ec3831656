/**
 * Features of the text's shape alone: laying out, folding, growing selections.
 */
import type {
  DocumentFormattingParams,
  DocumentOnTypeFormattingParams,
  DocumentRangeFormattingParams,
  DocumentRangesFormattingParams,
  FoldingRangeParams,
  SelectionRangeParams,
} from "vscode-languageserver";
import { folding } from "../../editor/folding.ts";
import { formatting, onTypeFormatting, rangeFormatting, rangesFormatting } from "../../editor/formatting.ts";
import { selectionRanges } from "../../editor/selection-ranges.ts";
import { type Feature, onDocument } from "../feature.ts";

export const layoutFeatures: Feature[] = [
  onDocument({
    textAlone: true,
    name: "formatting",
    method: "textDocument/formatting",
    capability: { documentFormattingProvider: true },
    empty: [],
    answer: (view, { options }: DocumentFormattingParams) => formatting(view, options),
  }),
  onDocument({
    textAlone: true,
    name: "formatting",
    method: "textDocument/rangeFormatting",
    capability: { documentRangeFormattingProvider: { rangesSupport: true } },
    empty: [],
    answer: (view, { range: { start, end }, options }: DocumentRangeFormattingParams) =>
      rangeFormatting(view, start.line, end.line, options),
  }),
  onDocument({
    textAlone: true,
    name: "formatting",
    method: "textDocument/rangesFormatting",
    empty: [],
    answer: (view, { ranges, options }: DocumentRangesFormattingParams) =>
      rangesFormatting(view, ranges, options),
  }),
  onDocument({
    textAlone: true,
    name: "formatting",
    method: "textDocument/onTypeFormatting",
    capability: {
      documentOnTypeFormattingProvider: { firstTriggerCharacter: "\n", moreTriggerCharacter: ["}"] },
    },
    empty: [],
    answer: (view, { position, ch, options }: DocumentOnTypeFormattingParams) =>
      onTypeFormatting(view, position.line, ch, options),
  }),
  onDocument({
    textAlone: true,
    name: "folding",
    method: "textDocument/foldingRange",
    capability: { foldingRangeProvider: true },
    empty: [],
    answer: (view, _: FoldingRangeParams, world) =>
      folding(view, world.client.textDocument?.foldingRange?.rangeLimit),
  }),
  onDocument({
    textAlone: true,
    name: "selection-ranges",
    method: "textDocument/selectionRange",
    capability: { selectionRangeProvider: true },
    empty: [],
    answer: (view, { positions }: SelectionRangeParams) =>
      selectionRanges(
        view,
        positions.map((position) => view.document.offsetAt(position)),
      ),
  }),
];
