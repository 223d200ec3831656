import { describe, expect, it } from "vitest";
import { DocumentHighlightKind } from "vscode-languageserver-types";
import { highlight } from "../../../server/editor/highlight.ts";
import { at, changed } from "./frame.ts";

describe("highlight", () => {
  it("marks every place of the name, where it is given as written", () => {
    const { view, offset } = at("height seat-h|eight");
    const marked = highlight(view, offset);
    expect(new Set(marked.map(({ range }) => view.document.getText(range)))).toEqual(
      new Set(["seat-height"]),
    );
    expect(marked.map(({ kind }) => kind === DocumentHighlightKind.Write)).toEqual([
      true,
      false,
      false,
      false,
      false,
      false,
    ]);
  });

  it("marks nothing on words of the language", () => {
    const { view, offset } = at("sec|tion 40");
    expect(highlight(view, offset)).toEqual([]);
  });

  it("works in broken text", () => {
    const broken = changed("  across front", "  across front ((");
    expect(highlight(broken.view, broken.text.indexOf("post front") + 6).length).toBeGreaterThan(2);
  });
});
