/**
 * The other places of the name under the cursor, in this file.
 */
import { type DocumentHighlight, DocumentHighlightKind } from "vscode-languageserver-types";
import { mentionAt } from "./names/mentions.ts";
import { mentionsIn } from "./names/names.ts";
import { rangeOf, type View } from "./view.ts";

/** Every mention of the thing at a place; its declaration is marked as written, the others as read. */
export function highlight(view: View, offset: number): DocumentHighlight[] {
  const all = mentionsIn(view);
  const asked = mentionAt(all, offset);
  if (!asked) return [];
  return all
    .filter(({ name }) => name === asked.name)
    .map((mention) => ({
      range: rangeOf(view.document, mention),
      kind: mention.is === "declaration" ? DocumentHighlightKind.Write : DocumentHighlightKind.Read,
    }));
}
