import type { CompletionParams } from "vscode-languageserver";
import { completion, takesFile } from "../../editor/completion.ts";
import type { View } from "../../editor/view.ts";
import { type Feature, onDocument } from "../feature.ts";
import { namesFrom, resolveNamed } from "../named-files.ts";
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
    const beside = takesFile(view, offset) ? await filesBeside(view, world) : { files: [] };
    return completion({ document, tree, vocabulary, rules, study }, offset, {
      ...beside,
      snippets: world.client.textDocument?.completion?.completionItem?.snippetSupport === true,
      bySpace: context?.triggerCharacter === " ",
    });
  },
});

/** A list that comes late is no use, ms. */
const LONGEST_LIST = 1000;

/** Most files of which it is looked at whether they are chairs. */
const MOST_LOOKED_AT = 60;

/** The chair files of the workspace as this one would name them, those beside it first, and which of them bring joints and values alone. */
async function filesBeside(
  { uri }: View,
  { files, folders, views }: World,
): Promise<{ files: string[]; libraries?: ReadonlySet<string> }> {
  const until = performance.now() + LONGEST_LIST;
  const found = await within(files.list(folders), until);
  const named = namesFrom(uri, found ?? []);
  const addresses = named.slice(0, MOST_LOOKED_AT).flatMap((path) => {
    const address = resolveNamed(uri, path);
    return address === undefined ? [] : [{ path, address }];
  });
  // Asked for all at once, so that a client that must be asked for each is waited for only once.
  if (files.pending) for (const { address } of addresses) files.read(address);
  const pending = files.pending?.();
  if (pending) await within(pending, until);
  const libraries = addresses.filter(({ address }) => {
    const outline = views.get(address)?.outline;
    return (
      outline &&
      ![...outline.declared.values()].some(({ word }) => word === "post") &&
      outline.declared.size > 0 &&
      !startsFromAnother(outline)
    );
  });
  return { files: named, libraries: new Set(libraries.map(({ path }) => path)) };
}

const startsFromAnother = ({ links }: View["outline"]): boolean => links.some(({ word }) => word === "like");

/** What comes of it in time. */
async function within<T>(wait: Promise<T>, until: number): Promise<T | undefined> {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const late = new Promise<undefined>((resolve) => {
    timer = setTimeout(() => resolve(undefined), until - performance.now());
  });
  return await Promise.race([wait, late]).finally(() => clearTimeout(timer));
}
