import { describe, expect, it } from "vitest";
import { readDrawing, readFromPanel, readPanelState } from "../../../client/panel/messages.ts";
import { sheetSteps } from "../../../server/drawing/draw-sheet.ts";
import { overlayNames, type View } from "../../../server/drawing/sheet.ts";
import { defaultSettings } from "../../../server/editor/settings.ts";
import { createDrawings } from "../../../server/main/drawings.ts";
import { projectFiles, read } from "../../house/project-files.ts";
import { plainView } from "../../server/editor/view.ts";

describe("a drawing from the server", () => {
  const samples = projectFiles().filter((path) => /^samples\/.*\.chair$/.test(path));
  const files = Object.fromEntries(samples.map((path) => [path.slice("samples/".length), read(path)]));

  it.each(samples)("of %s arrives whole", async (address) => {
    const drawings = createDrawings(sheetSteps, (error) => {
      throw error;
    });
    const text = read(address).replace("tenon thick", "tenon thin");
    const view = plainView(text, `file:///mess/${address}`, files);
    drawings.watch(view.uri, true, { overlays: overlayNames, post: "front.left" });
    const drawing = await drawings.draw(view, defaultSettings, () => false);
    const sent = JSON.parse(JSON.stringify(drawing));
    expect(sent.told.length > 0).toBe(sent.sheet !== null);
    expect(readDrawing(sent)).toEqual(sent);
    const overlays = (sent.sheet?.views ?? []).flatMap((seen: View) => seen.overlays ?? []);
    expect(overlays.map(({ name }: { name: string }) => name).sort()).toEqual(
      sent.sheet === null ? [] : ["floor", "sitter"],
    );
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
    expect(readFromPanel({ type: "overlays", names: ["sitter"] })).toEqual({
      type: "overlays",
      names: ["sitter"],
    });
    for (const message of [
      { type: "keep", what: "save" },
      { type: "keep", what: "print", picture: { caption: "", width: 1, height: 1, strokes: [], tenons: [] } },
      { type: "pictorial", wanted: "parts" },
      { type: "pictorial" },
      { type: "revealFault", letter: "B" },
    ])
      expect(readFromPanel(message)).toEqual(message);
    expect(readFromPanel({ type: "revealFault" })).toBeUndefined();
    for (const bad of [
      undefined,
      { type: "ready" },
      { type: "overlays", names: ["walls"] },
      { type: "reveal" },
      { type: "run", part: "front" },
    ]) {
      expect(readFromPanel(bad)).toBeUndefined();
    }
  });

  it("are told from a panel's state", () => {
    expect(readPanelState({ uri: "file:///a.chair" })).toEqual({ uri: "file:///a.chair", locked: false });
    expect(readPanelState({ uri: "file:///a.chair", locked: true })?.locked).toBe(true);
    expect(readPanelState(undefined)).toBeUndefined();
  });
});
