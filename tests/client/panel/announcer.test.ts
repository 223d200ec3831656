import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { createAnnouncer, REST } from "../../../client/panel/webview/announcer.ts";
import type { Sheet } from "../../../server/drawing/sheet.ts";
import type { DrawingParams } from "../../../server/main/protocol.ts";

const sheet = { title: "", views: [] } as unknown as Sheet;
const good: DrawingParams = { uri: "file:///a.chair", version: 1, sheet, stale: false, faults: [] };
const stale: DrawingParams = { ...good, stale: true, reason: "crest cannot be drawn." };

let said: string[];
let announcer: ReturnType<typeof createAnnouncer>;
beforeEach(() => {
  vi.useFakeTimers();
  said = [];
  announcer = createAnnouncer((words) => said.push(words));
});
afterEach(() => {
  vi.useRealTimers();
});

describe("what a screen reader is told", () => {
  it("is one sentence once typing rests, not one for each drawing", () => {
    for (let version = 1; version <= 30; version++) {
      announcer.drawn({ ...good, version });
      vi.advanceTimersByTime(40);
    }
    expect(said).toEqual([]);
    vi.advanceTimersByTime(REST);
    expect(said).toEqual(["Drawing shown. Nothing found wrong."]);
    announcer.drawn({ ...good, version: 31 });
    vi.advanceTimersByTime(REST);
    expect(said.slice(1)).toEqual(["Drawing updated. Nothing found wrong."]);
  });

  it("says out of date with the reason, once however long it lasts", () => {
    for (const drawing of [good, stale, stale]) {
      announcer.drawn(drawing);
      vi.advanceTimersByTime(REST);
    }
    expect(said.slice(1)).toEqual(["Out of date: crest cannot be drawn."]);
    announcer.drawn(good);
    vi.advanceTimersByTime(REST);
    announcer.drawn(stale);
    vi.advanceTimersByTime(REST);
    expect(said.slice(2)).toEqual([
      "Drawing updated. Nothing found wrong.",
      "Out of date: crest cannot be drawn.",
    ]);
  });

  it("says nothing of trouble that is over before typing rests", () => {
    announcer.drawn(good);
    vi.advanceTimersByTime(REST);
    announcer.drawn(stale);
    vi.advanceTimersByTime(REST / 2);
    announcer.drawn(good);
    vi.advanceTimersByTime(REST);
    expect(said.slice(1)).toEqual(["Drawing updated. Nothing found wrong."]);
  });

  it("counts what is found", () => {
    const fault = { letter: "A", code: "x", message: "", at: 0, parts: [] };
    const faults = (["error", "warning", "warning"] as const).map((severity) => ({ ...fault, severity }));
    announcer.drawn({ ...good, faults });
    vi.advanceTimersByTime(REST);
    expect(said).toEqual(["Drawing shown. 1 error and 2 warnings."]);
  });
});
