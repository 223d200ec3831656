import { describe, expect, it } from "vitest";
import { lex } from "../../../grammar/tokens.ts";
import { inlayHints } from "../../../server/editor/inlay-hints.ts";
import { defaultSettings } from "../../../server/editor/settings.ts";
import { at, changed, type Placed } from "./frame.ts";

const none = { lengths: false, bevels: false, values: false, strength: false };

/** Each line that has hints, with them. */
function shown({ view, text }: Placed, wanted: Partial<typeof none>): string[] {
  const settings = { ...defaultSettings, inlayHints: { ...none, ...wanted } };
  return inlayHints(view, { start: 0, end: text.length }, settings).map(({ position, label }) => {
    const line = view.document.getText({ start: { line: position.line, character: 0 }, end: position });
    return `${line.trim()} ‹${label}›`;
  });
}

describe("inlay hints", () => {
  it("show the length between shoulders where a rail runs", () => {
    expect(shown(at("chair|"), { lengths: true })).toEqual([
      "across front ‹↔ 370 mm›",
      expect.stringMatching(/^from front to back ‹↔ \d+(\.\d)? mm›$/),
      expect.stringMatching(/^across back ‹↔ \d+(\.\d)? mm›$/),
    ]);
  });

  it("show both bevels of both ends", () => {
    expect(shown(at("chair|"), { bevels: true })[1]).toMatch(
      /^from front to back ‹→ front: face .*, edge 8\d\.\d° \(1:[\d.]+\); back: face .*, edge .*›$/,
    );
  });

  it("show what an expression comes to and leave plain numbers alone", () => {
    expect(shown(at("chair|"), { values: true })).toEqual([
      "let top = seat-height + 490 ‹→ 930 mm›",
      "height seat-height - 12 ‹→ 428 mm›",
      "height top ‹→ 930 mm›",
      ...Array.from({ length: 3 }, () => "up seat-height - 12 ‹→ 428 mm›"),
      expect.stringMatching(/^angle back-rake ‹→ \d(\.\d)?°›$/),
      expect.stringMatching(/^require seat-side\.left\.front\.edge-bevel ‹→ 8\d(\.\d)?°›$/),
      expect.stringMatching(/^require seat\.slope ‹→ .*°›$/),
    ]);
  });

  it("begin with a sign that no text of the language begins with", () => {
    const { view, text } = at("chair|");
    const all = {
      ...defaultSettings,
      inlayHints: { lengths: true, bevels: true, values: true, strength: true },
    };
    const hints = inlayHints(view, { start: 0, end: text.length }, all);
    expect(hints.length).toBeGreaterThan(8);
    for (const { label, tooltip } of hints) {
      expect(tooltip).toBeTruthy();
      expect(lex(String(label)).tokens[0]?.tokenType.name).toBe("Error");
    }
  });

  it("are none when all kinds are turned off, and only those of the stretch asked for", () => {
    expect(shown(at("chair|"), {})).toEqual([]);
    const { view, text } = at("chair|");
    const start = text.indexOf("rail seat-back");
    expect(
      inlayHints(
        view,
        { start, end: start + 40 },
        { ...defaultSettings, inlayHints: { ...none, lengths: true } },
      ),
    ).toHaveLength(1);
  });

  it("show what is still known in broken text", () => {
    expect(shown(changed("  splay 2deg", "  splay (("), { lengths: true, values: true })).toEqual(
      expect.arrayContaining(["across front ‹↔ 370 mm›", "height top ‹→ 930 mm›"]),
    );
  });
});
