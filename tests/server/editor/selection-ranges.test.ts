import { describe, expect, it } from "vitest";
import type { SelectionRange } from "vscode-languageserver-types";
import { selectionRanges } from "../../../server/editor/selection-ranges.ts";
import { at, frame, type Placed } from "./frame.ts";
import { viewOf } from "./view.ts";

function grown({ view, offset }: Placed): string[] {
  const texts: string[] = [];
  for (
    let range: SelectionRange | undefined = selectionRanges(view, [offset])[0];
    range;
    range = range.parent
  )
    texts.push(view.document.getText(range.range));
  return texts;
}

describe("growing selections", () => {
  it("grow from the number to its expression, line, block and file", () => {
    const texts = grown(at("height seat-height - 1|2"));
    expect(texts.slice(0, 3)).toEqual(["12", "seat-height - 12", "height seat-height - 12"]);
    expect(texts.at(-2)?.startsWith("post front pair {")).toBe(true);
    expect(texts.at(-1)).toBe(frame);
  });

  it("grow from a word inside quotes", () => {
    expect(grown(at('"Mess fr|ame"')).slice(0, 3)).toEqual([
      "Mess frame",
      '"Mess frame"',
      'chair "Mess frame"',
    ]);
  });

  it("each lie inside the next, in broken text too", () => {
    const place = viewOf("post a {\n  section 40 x ((3| + \n  foot");
    const texts = grown(place);
    expect(texts.length).toBeGreaterThan(2);
    for (const [inner, outer] of texts
      .slice(1)
      .map((outer, index) => [texts[index] as string, outer] as const))
      expect(outer).toContain(inner);
  });
});
