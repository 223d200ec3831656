import { describe, expect, it } from "vitest";
import type { DocumentSymbol } from "vscode-languageserver-types";
import { documentSymbols } from "../../../server/editor/symbols.ts";
import { at, changed } from "./frame.ts";

function outline(symbols: readonly DocumentSymbol[], indent = ""): string[] {
  return symbols.flatMap(({ name, detail, children }) => [
    `${indent}${name}: ${detail}`,
    ...outline(children ?? [], `${indent}  `),
  ]);
}

describe("the outline", () => {
  it("lists the chair's things, the joints under their rails", () => {
    const lines = outline(documentSymbols(at("chair|").view));
    expect(lines.slice(0, 6)).toEqual([
      "Mess frame: chair",
      "seat-height: let",
      "top: let",
      "rail-tenon: joint",
      "front: post",
      "back: post",
    ]);
    expect(lines).toEqual(
      expect.arrayContaining([
        "seat-side: rail",
        "  end back: end",
        "  seat-side.left to front.left: tenon 7.3 mm × 54 mm, 25 mm long",
        "  seat-side.left to back.left: tenon 7.3 mm × 54 mm, 25 mm long",
        "seat: seat",
        "back-rake: angle",
        "seat.slope from -1deg to 3deg: require",
      ]),
    );
    expect(lines.filter((line) => line.includes(".right to"))).toEqual([]);
  });

  it("keeps each name's place inside its whole", () => {
    const offsetAt = at("chair|").view.document.offsetAt.bind(at("chair|").view.document);
    const inside = (symbol: DocumentSymbol): boolean =>
      offsetAt(symbol.selectionRange.start) >= offsetAt(symbol.range.start) &&
      offsetAt(symbol.selectionRange.end) <= offsetAt(symbol.range.end) &&
      (symbol.children ?? []).every(inside);
    expect(documentSymbols(at("chair|").view).every(inside)).toBe(true);
  });

  it("goes on past broken lines", () => {
    const { view } = changed("post front pair {\n  section 40 x 40", "post front pair\n  sectin 40 x");
    expect(outline(documentSymbols(view))).toEqual(
      expect.arrayContaining(["front: post", "back: post", "seat-back: rail"]),
    );
  });
});
