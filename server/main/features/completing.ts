import type { CompletionParams } from "vscode-languageserver";
import { completion, takesFile } from "../../editor/completion.ts";
import type { View } from "../../editor/view.ts";
import { type Feature, onDocument } from "../feature.ts";
import { namesFrom } from "../named-files.ts";
import { type World, worked } from "../world.ts";

/** Completion needs the tree of the text as it is, and of all that follows from it no more than was known last: it waits for nothing. */
export const completionFeature: Feature = onDocument({
  name: "completion",
  method: "textDocument/completion",
  capability: { completionProvider: { triggerCharacters: [".", " ", '"'], resolveProvider: false } },
  empty: [],
  textAlone: true,
  async answer(view, { position, context }: CompletionParams, world, token) {
    // Names and values of a moment ago will do; a list that comes late will not.
    const study = view.lastStudy ?? (await worked(view, () => token.isCancellationRequested));
    if (!study) return [];
    const { document, tree, vocabulary, rules } = view;
    const offset = document.offsetAt(position);
    const files = takesFile(view, offset) ? await filesBeside(view, world) : [];
    return completion({ document, tree, vocabulary, rules, study }, offset, {
      files,
      snippets: world.client.textDocument?.completion?.completionItem?.snippetSupport === true,
      bySpace: context?.triggerCharacter === " ",
    });
  },
});

/** A list that comes late is no use, ms. */
const LONGEST_LIST = 1000;

/** The chair files of the workspace as this one would name them, those beside it first. */
async function filesBeside({ uri }: View, { files, folders }: World): Promise<string[]> {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const late = new Promise<string[]>((resolve) => {
    timer = setTimeout(() => resolve([]), LONGEST_LIST);
  });
  const found = await Promise.race([files.list(folders), late]).finally(() => clearTimeout(timer));
  return namesFrom(uri, found);
}
