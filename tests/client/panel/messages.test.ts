import { describe, expect, it } from "vitest";
import { readDrawing, readFromPanel, readPanelState } from "../../../client/panel/messages.ts";
import { drawSheet } from "../../../server/drawing/draw-sheet.ts";
import { study } from "../../../server/study.ts";
import { projectFiles, read } from "../../house/project-files.ts";

describe("a drawing from the server", () => {
  const samples = projectFiles().filter((path) => /^samples\/.*\.chair$/.test(path));
  const files = {
    resolve: (_from: string, path: string) => `samples/${path}`,
    read: (path: string) => (samples.includes(path) ? read(path) : undefined),
  };

  it.each(samples)("of %s arrives whole", (address) => {
    const { chair } = study({ text: read(address), address, files });
    const sheet = drawSheet(chair);
    const sent = JSON.parse(JSON.stringify({ uri: address, version: 1, sheet, stale: false }));
    expect(readDrawing(sent)).toEqual(sent);
  });
});

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
