import { codeActions, FIX_ALL } from "../../../server/editor/code-actions.ts";
import { codeLenses } from "../../../server/editor/code-lens.ts";
import { completion } from "../../../server/editor/completion.ts";
import { definition, definitionLinks } from "../../../server/editor/definition.ts";
import { diagnostics } from "../../../server/editor/diagnostics.ts";
import { folding } from "../../../server/editor/folding.ts";
import { formatting, onTypeFormatting, rangeFormatting } from "../../../server/editor/formatting.ts";
import { highlight } from "../../../server/editor/highlight.ts";
import { hover } from "../../../server/editor/hover.ts";
import { inlayHints } from "../../../server/editor/inlay-hints.ts";
import { documentLinks } from "../../../server/editor/links.ts";
import { references } from "../../../server/editor/references.ts";
import { prepareRename, rename } from "../../../server/editor/rename.ts";
import { selectionRanges } from "../../../server/editor/selection-ranges.ts";
import { semanticTokens } from "../../../server/editor/semantic-tokens.ts";
import { defaultSettings } from "../../../server/editor/settings.ts";
import { documentSymbols } from "../../../server/editor/symbols.ts";
import type { View } from "../../../server/editor/view.ts";
import { workspaceSymbols } from "../../../server/editor/workspace-symbols.ts";

const settings = {
  ...defaultSettings,
  inlayHints: { lengths: true, bevels: true, values: true, strength: true },
};
const options = { insertSpaces: true, tabSize: 2 };

/** Asks everything that is asked of a whole file. */
export function askOfFile(view: View): void {
  const whole = { start: 0, end: view.document.getText().length };
  diagnostics(view, settings);
  documentSymbols(view);
  workspaceSymbols([view], "a");
  folding(view);
  semanticTokens(view);
  semanticTokens(view, { start: whole.end >> 2, end: whole.end >> 1 });
  inlayHints(view, whole, settings);
  codeLenses(view, settings);
  documentLinks(view);
  formatting(view, options);
  rangeFormatting(view, 1, 3, options);
  codeActions(view, whole, settings);
  codeActions(view, whole, settings, { only: [FIX_ALL] });
}

/** Asks everything that is asked of a place. */
export function askAt(view: View, offset: number): void {
  hover(view, offset);
  completion(view, offset, { snippets: true });
  completion(view, offset, { snippets: false, bySpace: true });
  definition(view, offset);
  definitionLinks(view, offset);
  highlight(view, offset);
  references(view, offset, [], true);
  prepareRename(view, offset);
  rename(view, offset, "other-name", []);
  selectionRanges(view, [offset]);
  const { line } = view.document.positionAt(offset);
  onTypeFormatting(view, line, "\n", options);
  onTypeFormatting(view, line, "}", options);
}
