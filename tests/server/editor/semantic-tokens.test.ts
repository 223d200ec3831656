import { describe, expect, it } from "vitest";
import type { Span } from "../../../grammar/problem.ts";
import { semanticLegend, semanticTokens } from "../../../server/editor/semantic-tokens.ts";
import type { View } from "../../../server/editor/view.ts";
import { at, changed } from "./frame.ts";
import { viewOf } from "./view.ts";

/** Each token as its text and what it is said to be. */
function told(view: View, stretch?: Span): string[] {
  const { data } = semanticTokens(view, stretch);
  const found: string[] = [];
  let [line, character] = [0, 0];
  for (let k = 0; k < data.length; k += 5) {
    const [down, right, length, type, bits] = data.slice(k, k + 5) as [
      number,
      number,
      number,
      number,
      number,
    ];
    line += down;
    character = down ? right : character + right;
    const text = view.document.getText({
      start: { line, character },
      end: { line, character: character + length },
    });
    const says = semanticLegend.tokenModifiers.filter((_, bit) => bits & (1 << bit));
    found.push([text, semanticLegend.tokenTypes[type], ...says].join(" "));
  }
  return found;
}

describe("semantic tokens", () => {
  it("tell declarations from mentions and names from directions", () => {
    const { view } = at("chair|");
    expect(told(view)).toEqual(
      expect.arrayContaining([
        "post keyword",
        "back class declaration",
        "back class",
        "back modifier",
        "seat-height variable declaration",
        "top variable declaration readonly",
        "rail-tenon interface",
        "across property",
        "drop-in enumMember",
        "seat.slope property readonly",
        "rail modifier",
      ]),
    );
  });

  it("leave a name that nobody declared plain", () => {
    expect(told(viewOf("rail r {\n  joined nothing\n}\n").view)).toEqual([
      "rail keyword",
      "r class declaration",
      "joined property",
    ]);
  });

  it("of a stretch are those of the whole that lie in it", () => {
    const { view, text } = at("chair|");
    const stretch = { start: text.indexOf("rail seat-front"), end: text.indexOf("rail seat-side") - 1 };
    expect(told(view, stretch)).toEqual(
      told(view)
        .slice(told(view).indexOf("seat-front class declaration") - 1)
        .slice(0, told(view, stretch).length),
    );
    expect(told(view, stretch)[0]).toBe("rail keyword");
  });

  it("come in the order of the text and apart from each other, in broken text too", () => {
    const { view } = changed(
      "  height seat-height - 12\n}",
      "  height max(seat-height, (front.left.length -\n  taper\n",
    );
    const { data } = semanticTokens(view);
    for (let k = 5; k < data.length; k += 5) {
      expect(data[k]).toBeGreaterThanOrEqual(0);
      if (data[k] === 0) expect(data[k + 1]).toBeGreaterThanOrEqual(data[k - 3] as number);
    }
  });
});
