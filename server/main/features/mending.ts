import type { CodeActionParams } from "vscode-languageserver";
import { codeActions, FIX_ALL } from "../../editor/code-actions.ts";
import { spanOf } from "../../editor/view.ts";
import { type Feature, onDocument } from "../feature.ts";

export const mendingFeatures: Feature[] = [
  onDocument({
    name: "code-actions",
    method: "textDocument/codeAction",
    capability: { codeActionProvider: { codeActionKinds: ["quickfix", FIX_ALL] } },
    empty: [],
    answer: async (view, { range, context }: CodeActionParams, world) =>
      codeActions(view, spanOf(view.document, range), await world.settings(view.uri), context.only),
  }),
];
