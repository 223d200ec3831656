import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { readDrawing, readFromPanel } from "../../../client/panel/messages.ts";
import { sheetSteps } from "../../../server/drawing/draw-sheet.ts";
import { defaultSettings } from "../../../server/editor/settings.ts";
import { createComparing, isOldChair } from "../../../server/main/comparing.ts";
import { chosenSince, notebook } from "../../../server/main/comparison.ts";
import { createDrawings } from "../../../server/main/drawings.ts";
import { study } from "../../../server/study.ts";
import { plainView } from "../editor/view.ts";

const sample = readFileSync(new URL("../../../samples/boathouse-mess-chair.chair", import.meta.url), "utf8");
const changed = sample.replace("kick 4deg", "kick 5deg").concat('note 2026-11-27 "Feet further | <back>."\n');
const address = "file:///mess/here.chair";
const old = { label: "saved version", text: sample, address };

describe("an open chair beside an old one", () => {
  const drawn = async (text: string) => {
    let studies = 0;
    const comparing = createComparing((asked) => {
      studies++;
      return study(asked);
    });
    const drawings = createDrawings(
      sheetSteps,
      (error) => {
        throw error;
      },
      comparing,
    );
    drawings.watch(address, true, { overlays: [], compareWith: old });
    const drawing = await drawings.draw(plainView(text, address), defaultSettings, () => false);
    await drawings.draw(plainView(`${text}\n`, address), defaultSettings, () => false);
    return { drawing, studies };
  };

  it("is drawn with the old chair behind and what differs in words, the old one worked out once", async () => {
    const { drawing, studies } = await drawn(changed);
    expect(studies).toBe(1);
    const sent = readDrawing(JSON.parse(JSON.stringify(drawing)));
    expect(sent).toEqual(JSON.parse(JSON.stringify(drawing)));
    expect(sent?.comparison?.label).toBe("saved version");
    expect(sent?.comparison?.sections.map(({ name }) => name)).toEqual(["chosen", "follows", "anew"]);
    const kick = sent?.comparison?.sections[0]?.rows.find(({ cells }) => cells[1] === "kick");
    expect(kick?.cells).toEqual(["back", "kick", "4deg below 100 over 50 → 5deg below 100 over 50"]);
    expect(changed.slice(kick?.at?.start, kick?.at?.end)).toBe("kick");
    const strokes = sent?.sheet?.views.flatMap((view) => view.strokes) ?? [];
    expect(strokes.filter(({ is }) => is === "before").length).toBeGreaterThan(20);
    const heavy = new Set(strokes.filter((stroke) => stroke.changed).map(({ part }) => part));
    expect(heavy).toContain("back.left");
    expect(heavy).not.toContain("front.left");
  });

  it("says so when nothing differs, and is drawn alone when nobody compares", async () => {
    const { drawing } = await drawn(sample.replaceAll("  ", "\t"));
    expect(drawing?.comparison).toEqual({
      label: "saved version",
      says: "No change of the chair: only layout, order or comments differ.",
      sections: [],
    });
    const drawings = createDrawings(sheetSteps, () => {});
    drawings.watch(address, true);
    const alone = await drawings.draw(plainView(sample, address), defaultSettings, () => false);
    expect(alone?.comparison).toBeUndefined();
    expect(alone?.sheet?.views.flatMap((view) => view.strokes).some(({ is }) => is === "before")).toBe(false);
  });

  it("is told in phrases since an earlier version, its notes left out", () => {
    expect(chosenSince(plainView(changed, address), old, study)).toEqual([
      "back kick: 4deg below 100 over 50 → 5deg below 100 over 50",
    ]);
  });

  it("has a notebook of its versions: notes, what changed, how values moved", () => {
    const first = { label: "2026-03-01 First", text: sample.replace(/^note.*\n/gm, ""), address };
    const text = notebook(plainView(changed, address), [first, { ...old, label: "2026-04-03 Two notes" }]);
    expect(text).toContain(
      "# Boathouse mess chair\n\n## 2026-03-01 First\n\n\nseat.height 439.7 mm · seat.slope",
    );
    expect(text).toContain("## 2026-04-03 Two notes\n\n**2026-03-14** First one sat in");
    expect(text).toContain(
      "## now\n\n**2026-11-27** Feet further \\| &lt;back>.\n\n- back kick: 4deg below 100 over 50 → 5deg below 100 over 50\n",
    );
    expect(text).toMatch(/seat\.depth 411 mm → 409\.3 mm/);
  });

  it("takes only what is an old chair, and only messages that are ones", () => {
    expect([old, { ...old, text: 1 }, undefined, { label: "x" }].map(isOldChair)).toEqual([
      true,
      false,
      false,
      false,
    ]);
    expect(readFromPanel({ type: "revealPlace", start: 1, end: 2 })).toEqual({
      type: "revealPlace",
      start: 1,
      end: 2,
    });
    expect(readFromPanel({ type: "revealPlace", start: -1, end: 2 })).toBeUndefined();
    expect(readFromPanel({ type: "endComparison" })).toEqual({ type: "endComparison" });
  });
});
