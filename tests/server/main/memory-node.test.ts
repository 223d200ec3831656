import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { collectsAtRest } from "../../../server/main/memory-node.ts";

describe("memory is given back", () => {
  beforeEach(() => void vi.useFakeTimers());
  afterEach(() => void vi.useRealTimers());

  /** A heap that each look fills, and how often it was emptied. */
  function heap(each: number) {
    const state = { used: 0, collected: 0 };
    const looked = collectsAtRest({
      wait: 1000,
      least: 100,
      used: () => state.used,
      collect() {
        state.collected++;
        state.used = 0;
      },
    });
    const look = () => {
      looked();
      state.used += each;
    };
    return { state, look };
  }

  it("once the looks rest, and not while they go on", async () => {
    const { state, look } = heap(60);
    for (let turn = 0; turn < 5; turn++) {
      look();
      await vi.advanceTimersByTimeAsync(900);
    }
    expect(state.collected).toBe(0);
    await vi.advanceTimersByTimeAsync(100);
    expect(state).toEqual({ used: 0, collected: 1 });
    await vi.advanceTimersByTimeAsync(10_000);
    expect(state.collected).toBe(1);
  });

  it("only where there is enough of it", async () => {
    const { state, look } = heap(99);
    look();
    await vi.advanceTimersByTimeAsync(5000);
    expect(state.collected).toBe(0);
    look();
    await vi.advanceTimersByTimeAsync(5000);
    expect(state.collected).toBe(1);
  });
});

it("V8 collects what nothing holds any more", async () => {
  vi.useFakeTimers();
  const looked = collectsAtRest({ wait: 1, least: 0 });
  let held: object | undefined = { some: "thing" };
  const left = new WeakRef(held);
  held = undefined;
  looked();
  await vi.advanceTimersByTimeAsync(1);
  vi.useRealTimers();
  await vi.waitFor(() => expect(left.deref()).toBeUndefined(), { timeout: 20_000 });
});
