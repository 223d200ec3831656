/**
 * Where the thing under the cursor is given.
 */
import type { Location, LocationLink } from "vscode-languageserver-types";
import { linkAt } from "./links.ts";
import { nameAt } from "./names/names.ts";
import { rangeOf, type View } from "./view.ts";

/** The header of the part, joint, angle or let named here; for `use` and `like`, the file. Empty where there is none. */
export function definition(view: View, offset: number): Location[] {
  const link = linkAt(view, offset);
  if (link) {
    const start = { line: 0, character: 0 };
    return view.other(link.address) ? [{ uri: link.address, range: { start, end: start } }] : [];
  }
  const mention = nameAt(view, offset);
  const declared = mention && view.study.design.names.get(mention.name);
  if (!declared) return [];
  const address = declared.file ?? view.uri;
  const document = address === view.uri ? view.document : view.other(address);
  return document ? [{ uri: address, range: rangeOf(document, declared.at) }] : [];
}

/** The same with the stretch it was asked from, for clients that show it. */
export function definitionLinks(view: View, offset: number): LocationLink[] {
  const from = linkAt(view, offset) ?? nameAt(view, offset);
  return definition(view, offset).map(({ uri, range }) => ({
    targetUri: uri,
    targetRange: range,
    targetSelectionRange: range,
    ...(from && { originSelectionRange: rangeOf(view.document, from) }),
  }));
}
