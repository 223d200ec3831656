/**
 * The worker that marks out: what it asks for, what it says on the way, what it makes or refuses.
 */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { Worker } from "node:worker_threads";
import { describe, expect, it } from "vitest";
import { answer } from "../../../server/main/markout/answer.ts";
import type { MarkoutReply, MarkoutRequest } from "../../../server/main/markout/messages.ts";
import { root } from "../../house/project-files.ts";

const sample = (name: string) => readFileSync(join(root, "samples", name), "utf8");
const request = (text: string, more: Partial<MarkoutRequest> = {}): MarkoutRequest => ({
  text,
  address: "memory:/mess/chair.chair",
  files: {},
  options: { paper: "a4" },
  date: Date.UTC(2026, 4, 17),
  ...more,
});

async function replies(given: MarkoutRequest): Promise<MarkoutReply[]> {
  const said: MarkoutReply[] = [];
  await answer(given, (message) => said.push(message));
  return said;
}

describe("marking out on request", () => {
  it("asks for the files that a chair names, and for nothing twice", async () => {
    const text = sample("mess-armchair.chair");
    const library = "memory:/mess/boathouse-joints.chair";
    expect(await replies(request(text))).toEqual([{ is: "missing", addresses: [library] }]);
    const said = await replies(request(text, { files: { [library]: sample("boathouse-joints.chair") } }));
    const made = said[said.length - 1]!;
    expect(made.is).toBe("made");
    if (made.is !== "made") return;
    expect(Buffer.from(made.bytes.subarray(0, 5)).toString()).toBe("%PDF-");
    const progress = said.slice(0, -1);
    expect(progress).toEqual(
      Array.from({ length: made.pages }, (_, k) => ({ is: "progress", done: k + 1, of: made.pages })),
    );
  });

  it("refuses a chair whose library is not there, as it has errors", async () => {
    const library = "memory:/mess/boathouse-joints.chair";
    const said = await replies(request(sample("mess-armchair.chair"), { files: { [library]: null } }));
    expect(said).toHaveLength(1);
    expect(said[0]).toMatchObject({
      is: "refused",
      because: expect.stringMatching(/timber should not be cut/),
    });
  });
});

describe("the bundle for the desktop", () => {
  it("answers as a worker", { timeout: 60_000 }, async () => {
    const worker = new Worker(join(root, "dist", "markout.js"));
    const last = await new Promise<MarkoutReply>((resolve, reject) => {
      worker.on("error", reject);
      worker.on("message", (message: MarkoutReply) => {
        if (message.is !== "progress") resolve(message);
      });
      worker.postMessage(request(sample("boathouse-mess-chair.chair")));
    });
    await worker.terminate();
    expect(last.is).toBe("made");
    if (last.is === "made") expect(Buffer.from(last.bytes.subarray(0, 5)).toString()).toBe("%PDF-");
  });
});
