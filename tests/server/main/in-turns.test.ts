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

  it("answers within a few rounds what comes during a turn, before the next begins", async () => {
    let turns = 0;
    let answered: number | undefined;
    const answer = () => {
      answered = turns;
    };
    function* work() {
      for (; answered === undefined; turns++) {
        // A request goes through the event loop three times: it is read, handed over and its answer written.
        if (turns === 5) setImmediate(() => setImmediate(() => setImmediate(answer)));
        yield;
      }
    }
    await inTurns(work(), { turn: 0 });
    expect(answered).toBe(5);
  });

  it("goes on first with what somebody waits for", async () => {
    const done: string[] = [];
    const named = async (name: string, behind: boolean) => {
      await inTurns(counting(20), { turn: 0, behind });
      done.push(name);
    };
    await Promise.all([named("mends", true), named("hover", false), named("rename", false)]);
    expect(done).toEqual(["hover", "rename", "mends"]);
  });
});
