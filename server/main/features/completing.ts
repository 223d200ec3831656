import type { CompletionParams } from "vscode-languageserver";
import { completion } from "../../editor/completion.ts";
import { type Feature, onDocument } from "../feature.ts";

export const completionFeature: Feature = onDocument({
  name: "completion",
  method: "textDocument/completion",
  capability: { completionProvider: { triggerCharacters: [".", " "], resolveProvider: false } },
  empty: [],
  answer: (view, { position, context }: CompletionParams, world) =>
    completion(view, view.document.offsetAt(position), {
      snippets: world.client.textDocument?.completion?.completionItem?.snippetSupport === true,
      bySpace: context?.triggerCharacter === " ",
    }),
});
