import { describe, expect, it } from "vitest";
import { readDrawing, readFromPanel, readPanelState } from "../../../client/panel/messages.ts";

describe("messages that are not what they should be", () => {
  const good = { uri: "file:///a.chair", version: 3, sheet: null, stale: false, reason: "Nothing yet." };

  it("are told from a drawing", () => {
    expect(readDrawing(good)).toEqual(good);
    for (const bad of [null, "drawing", { ...good, version: "3" }, { ...good, sheet: { title: 4 } }]) {
      expect(readDrawing(bad)).toBeUndefined();
    }
  });

  it("are told from those of the panel", () => {
    expect(readFromPanel({ type: "reveal", part: "front.left" })).toEqual({
      type: "reveal",
      part: "front.left",
    });
    for (const bad of [undefined, { type: "reveal" }, { type: "run", part: "front" }]) {
      expect(readFromPanel(bad)).toBeUndefined();
    }
  });

  it("are told from a panel's state", () => {
    expect(readPanelState({ uri: "file:///a.chair" })).toEqual({ uri: "file:///a.chair" });
    expect(readPanelState(undefined)).toBeUndefined();
  });
});
