import { describe, expect, it } from "vitest";
import { CancellationToken } from "vscode-languageserver";
import { guard } from "../../../server/main/run-safe.js";

const explode = () => {
  throw new Error("the study exploded");
};

/** Asks the guard for `run` and gives what it logged by then. */
function logging() {
  const lines: string[] = [];
  const safe = guard({ error: (line) => lines.push(line) });
  return { lines, ask: (run: () => unknown) => safe("diagnostics", [], CancellationToken.None, run) };
}

describe("a feature that fails", () => {
  it("is logged once, whoever called it", async () => {
    const { lines, ask } = logging();
    const deeper = () => [0].map(() => explode());
    expect(await ask(() => explode())).toEqual([]);
    expect(await ask(async () => explode())).toEqual([]);
    expect(await ask(() => deeper())).toEqual([]);
    expect(lines).toHaveLength(1);
    expect(lines[0]).toMatch(/^diagnostics failed: Error: the study exploded\n\s+at /);
  });

  it("is logged again when another place fails, or fails otherwise", async () => {
    const { lines, ask } = logging();
    await ask(() => explode());
    await ask(() => {
      throw new Error("the study exploded");
    });
    await ask(() => {
      throw "a word";
    });
    expect(lines).toHaveLength(3);
  });
});
