/**
 * Ceilings that hold on a busy machine: far above what `npm run bench` prints on a quiet one, and in processor time.
 */
import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import { beforeAll, expect, test } from "vitest";
import { bundleTypescript } from "../../.build/run-typescript.mjs";
import type { Case, SampleResult, SheetsResult, TextResult } from "./cases.ts";

const SAMPLE = fileURLToPath(new URL("../../samples/boathouse-mess-chair.chair", import.meta.url));

let bench: string;

beforeAll(async () => {
  bench = await bundleTypescript("tests/bench/main.ts");
}, 60_000);

/** A case in a process of its own: the tests' own process holds a gigabyte of others, which collecting garbage has to go through. */
async function runCase(given: Case): Promise<unknown> {
  const child = spawnSync(process.execPath, [bench, "--case", JSON.stringify(given)], { encoding: "utf8" });
  if (child.status !== 0) throw new Error(child.stderr);
  return JSON.parse(child.stdout);
}

test("the sample chair goes from text to diagnostics and drawing in less than five times what VS Code's css service takes to check 20 kB", {
  // Many rounds, until both are warm: some seconds on a quiet machine, a minute on a busy one.
  timeout: 180_000,
}, async () => {
  // A ratio, since a machine may be several times slower from one hour to the next: 2.6 to 3.4 when this was written. The least of several
  // rounds in turns: other work on the machine only adds to a time.
  let [ours, css] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  for (let round = 0; round < 5; round++) {
    const sample = await runCase({ is: "sample", path: SAMPLE, count: 6 });
    ours = Math.min(ours, (sample as SampleResult).all.cpu);
    const text = await runCase({ is: "text", subject: "css", bytes: 20_000, kind: "clean", count: 6 });
    css = Math.min(css, (text as TextResult).cpu);
  }
  expect(ours / css).toBeLessThan(5);
});

test("ten times the text takes nowhere near a hundred times the processor", async () => {
  const time = async (bytes: number, count: number) =>
    ((await runCase({ is: "text", subject: "chair", bytes, kind: "clean", count })) as TextResult).cpu;
  expect((await time(20_000, 4)) / (await time(2000, 12))).toBeLessThan(40);
});

test.each(["one error", "badly broken"] as const)("a text with %s is reported", async (kind) => {
  const { found } = (await runCase({
    is: "text",
    subject: "chair",
    bytes: 3000,
    kind,
    count: 2,
  })) as TextResult;
  expect(found).toBeGreaterThan(0);
});

test("all marking-out sheets of the sample chair take less than 2 s of the processor, cold", async () => {
  const { cpu, pages } = (await runCase({ is: "sheets", path: SAMPLE, count: 1 })) as SheetsResult;
  expect(pages).toBeGreaterThan(20);
  expect(cpu).toBeLessThan(2000);
});
