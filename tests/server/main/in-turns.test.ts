import { describe, expect, it } from "vitest";
import { inTurns } from "../../../server/main/in-turns.ts";

function* counting(to: number, closed: () => void = () => {}): Generator<number, number> {
  try {
    for (let n = 1; n < to; n++) yield n;
    return to;
  } finally {
    closed();
  }
}

describe("work in turns", () => {
  it("goes to the end when there is time", async () => {
    expect(await inTurns(counting(500), { time: 60_000 })).toEqual({ value: 500, whole: true });
  });

  it("does at least one turn, says that it is not whole, and closes what it leaves", async () => {
    let closed = false;
    const outcome = await inTurns(
      counting(Number.POSITIVE_INFINITY, () => (closed = true)),
      { time: 0, turn: 0 },
    );
    expect(outcome).toEqual({ known: 1, whole: false });
    expect(closed).toBe(true);
  });

  it("lets others in between turns and stops when nobody waits any more", async () => {
    let stop = false;
    setTimeout(() => (stop = true), 0);
    const outcome = await inTurns(counting(Number.POSITIVE_INFINITY), {
      time: 60_000,
      turn: 0,
      stop: () => stop,
    });
    expect(outcome.whole).toBe(false);
    expect("known" in outcome && outcome.known).toBeGreaterThan(0);
  });
});
