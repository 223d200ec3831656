import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { createRun, HOLD, PAUSE } from "../../../client/panel/webview/slider-run.ts";

let told: [number, boolean][];
let run: ReturnType<typeof createRun>;
beforeEach(() => {
  vi.useFakeTimers();
  told = [];
  run = createRun((value, done) => told.push([value, done]));
});
afterEach(() => {
  vi.useRealTimers();
});

describe("a move along a maker's rule", () => {
  it("by mouse lasts until it is let go, however long it rests", () => {
    run.pressed();
    run.moved(441);
    vi.advanceTimersByTime(10 * PAUSE);
    run.moved(442);
    expect(run.going).toBe(true);
    run.released();
    expect(told.filter(([, done]) => done)).toEqual([[442, true]]);
    expect(told.at(-1)).toEqual([442, true]);
    expect(run.going).toBe(false);
    const count = told.length;
    vi.advanceTimersByTime(10 * PAUSE);
    expect(told).toHaveLength(count);
  });

  it("by mouse is told again while it is held still, so that no save comes between", () => {
    run.pressed();
    vi.advanceTimersByTime(3 * HOLD);
    expect(told).toEqual([]);
    run.moved(441);
    vi.advanceTimersByTime(3 * HOLD);
    expect(told).toEqual(Array(4).fill([441, false]));
  });

  it("by keys lasts over a run of them", () => {
    for (const value of [441, 442, 443]) {
      run.moved(value);
      vi.advanceTimersByTime(PAUSE / 2);
    }
    expect(told.filter(([, done]) => done)).toEqual([]);
    vi.advanceTimersByTime(PAUSE);
    expect(told.at(-1)).toEqual([443, true]);
    expect(run.going).toBe(false);
  });

  it("by keys ends when the maker turns to the mouse", () => {
    run.moved(441);
    run.pressed();
    run.moved(450);
    run.released();
    expect(told.filter(([, done]) => done)).toEqual([
      [441, true],
      [450, true],
    ]);
  });

  it("that goes nowhere is none", () => {
    run.pressed();
    expect(run.going).toBe(true);
    run.released();
    expect(told).toEqual([]);
    expect(run.going).toBe(false);
  });
});
