/**
 * Things of all the workspace's chairs, by name.
 */
import { type SymbolInformation, SymbolKind } from "vscode-languageserver-types";
import { rangeOf, type View } from "./view.ts";

/** Most things listed for one question. */
const MOST = 500;

const kinds: Record<string, SymbolKind> = {
  joint: SymbolKind.Interface,
  angle: SymbolKind.Number,
  let: SymbolKind.Constant,
  board: SymbolKind.Object,
};

/** The declared things whose names hold the letters asked for, in that order though not side by side; best fits first. */
export function workspaceSymbols(views: readonly View[], query: string): SymbolInformation[] {
  const asked = query.toLowerCase();
  const found: { symbol: SymbolInformation; rank: number }[] = [];
  for (const view of views) {
    for (const { name, word, start, end } of view.outline.declared.values()) {
      const rank = rankOf(name.toLowerCase(), asked);
      if (rank === undefined) continue;
      found.push({
        rank,
        symbol: {
          name,
          kind: kinds[word] ?? SymbolKind.Struct,
          containerName: titleOf(view),
          location: { uri: view.uri, range: rangeOf(view.document, { start, end }) },
        },
      });
    }
  }
  return found
    .sort((a, b) => a.rank - b.rank)
    .slice(0, MOST)
    .map(({ symbol }) => symbol);
}

/** 0 the name itself, 1 its beginning, 2 a part of it, 3 its letters in order; nothing when they are not all there. */
function rankOf(name: string, asked: string): number | undefined {
  if (name === asked) return 0;
  if (name.startsWith(asked)) return 1;
  if (name.includes(asked)) return 2;
  let at = -1;
  for (const letter of asked) {
    at = name.indexOf(letter, at + 1);
    if (at < 0) return undefined;
  }
  return 3;
}

function titleOf(view: View): string {
  return view.outline.title || view.uri.slice(view.uri.lastIndexOf("/") + 1);
}
