import type { CompletionParams } from "vscode-languageserver";
import { completion } from "../../editor/completion.ts";
import { type Feature, onDocument } from "../feature.ts";
import { worked } from "../world.ts";

/** Completion needs the tree of the text as it is, and of all that follows from it no more than was known last: it waits for nothing. */
export const completionFeature: Feature = onDocument({
  name: "completion",
  method: "textDocument/completion",
  capability: { completionProvider: { triggerCharacters: [".", " "], resolveProvider: false } },
  empty: [],
  textAlone: true,
  async answer(view, { position, context }: CompletionParams, world, token) {
    // Names and values of a moment ago will do; a list that comes late will not.
    const study = view.lastStudy ?? (await worked(view, () => token.isCancellationRequested));
    if (!study) return [];
    const { document, tree, vocabulary, rules } = view;
    return completion({ document, tree, vocabulary, rules, study }, document.offsetAt(position), {
      snippets: world.client.textDocument?.completion?.completionItem?.snippetSupport === true,
      bySpace: context?.triggerCharacter === " ",
    });
  },
});
