import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { createSchedule } from "../../../server/main/schedule.ts";

describe("the schedule", () => {
  beforeEach(() => void vi.useFakeTimers());
  afterEach(() => void vi.useRealTimers());

  it("looks once for a burst, and not later for every further keystroke", () => {
    const looked: string[] = [];
    const schedule = createSchedule((uri) => void looked.push(uri), { wait: 25, longest: 400 });
    for (let k = 0; k < 10; k++) {
      schedule.touch("a");
      vi.advanceTimersByTime(10);
    }
    expect(looked.length).toBeGreaterThanOrEqual(3);
    expect(looked.length).toBeLessThanOrEqual(4);
  });

  it("waits as long as the last look took, up to a limit", () => {
    let cost = 100;
    const times: number[] = [];
    const schedule = createSchedule(
      () => {
        times.push(performance.now());
        vi.advanceTimersByTime(cost);
      },
      { wait: 25, longest: 400 },
    );
    schedule.touch("a");
    vi.advanceTimersByTime(25);
    cost = 1000;
    const touched = performance.now();
    schedule.touch("a");
    vi.advanceTimersByTime(99);
    expect(times).toHaveLength(1);
    vi.advanceTimersByTime(1);
    expect(times.at(-1)).toBe(touched + 100);
    schedule.touch("a");
    vi.advanceTimersByTime(400);
    expect(times).toHaveLength(3);
  });

  it("counts a look that gives a promise until it is kept", async () => {
    let kept = () => {};
    const looked: number[] = [];
    const schedule = createSchedule(
      () => {
        looked.push(performance.now());
        return new Promise<void>((resolve) => (kept = resolve));
      },
      { wait: 25, longest: 400 },
    );
    schedule.touch("a");
    vi.advanceTimersByTime(25);
    await vi.advanceTimersByTimeAsync(100);
    kept();
    await vi.advanceTimersByTimeAsync(0);
    const touched = performance.now();
    schedule.touch("a");
    await vi.advanceTimersByTimeAsync(99);
    expect(looked).toHaveLength(1);
    await vi.advanceTimersByTimeAsync(1);
    expect(looked.at(-1)).toBe(touched + 100);
    schedule.dispose();
  });

  it("forgets files that are closed, and all of them at the end", () => {
    const looked: string[] = [];
    const schedule = createSchedule((uri) => void looked.push(uri), { wait: 25, longest: 400 });
    schedule.touch("a");
    schedule.touch("b");
    schedule.drop("a");
    vi.advanceTimersByTime(30);
    expect(looked).toEqual(["b"]);
    schedule.touch("c");
    schedule.dispose();
    vi.advanceTimersByTime(1000);
    expect(looked).toEqual(["b"]);
  });
});
