import { afterEach, beforeEach, expect, it, vi } from "vitest";
import type { View } from "../../../server/editor/view.ts";
import { createLooks, type Looks } from "../../../server/main/looks.ts";

const uri = "file:///a.chair";
const late = vi.fn(async () => () => [] as never);

/** Looks at a file of which only the newest version is open; `strength` says whether its drawing shows how hard joints work. */
function looking({ strength = false } = {}): { type(): Promise<void> } {
  let newest: View | undefined;
  let version = 0;
  const looks: Looks = createLooks({
    connection: { sendDiagnostics: async () => undefined },
    views: { opened: () => newest },
    files: {},
    drawings: { watched: () => false, showsStrength: () => strength },
    settings: async () => ({}),
    late,
    pulls: () => true,
    refresh: () => undefined,
    report: (_: string, error: unknown) => {
      throw error;
    },
  } as never);
  return {
    type() {
      version++;
      const view = {
        uri,
        document: { version, getText: () => "" },
        *work() {},
        study: { problems: [], failures: [] },
        *deepen() {},
      };
      newest = view as never;
      return looks.look(newest!);
    },
  };
}

beforeEach(() => void vi.useFakeTimers());
afterEach(() => {
  vi.useRealTimers();
  late.mockClear();
});

/** Everything that waits for no timer is done. */
const settled = () => vi.advanceTimersByTimeAsync(0);

it("what is late is worked out at once after the first look, and once when typing rests", async () => {
  const { type } = looking();
  await type();
  await settled();
  expect(late).toHaveBeenCalledTimes(1);
  for (let k = 0; k < 5; k++) {
    await type();
    await vi.advanceTimersByTimeAsync(100);
  }
  expect(late).toHaveBeenCalledTimes(1);
  await vi.advanceTimersByTimeAsync(1000);
  expect(late).toHaveBeenCalledTimes(2);
});

it("one edit alone waits for nothing, nor does a drawing that shows how hard joints work", async () => {
  const { type } = looking();
  await type();
  await vi.advanceTimersByTimeAsync(5000);
  await type();
  await settled();
  expect(late).toHaveBeenCalledTimes(2);
  const shown = looking({ strength: true });
  await shown.type();
  await settled();
  await shown.type();
  await settled();
  expect(late).toHaveBeenCalledTimes(4);
});
