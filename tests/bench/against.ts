/**
 * Two builds of the program, timed in turns, so that a busy minute falls on both alike: `npm run bench -- --against DIR`, where DIR is
 * another checkout with its modules installed.
 */
import { spawnSync } from "node:child_process";
import { join } from "node:path";
import { execArgv, execPath } from "node:process";
import type { Case, SampleResult, SheetsResult, TextResult } from "./cases.ts";
import { askBehindKeys, typeBursts } from "./keystrokes.ts";
import { figure, quantile, table } from "./measure.ts";
import { typedServers } from "./typed-servers.ts";

/** A checkout that has been built: its folder, and its bench as one module. */
export interface Build {
  folder: string;
  bench: string;
}

const SAMPLE = join("samples", "boathouse-mess-chair.chair");
/** A median that is worse by more than this share is pointed at. */
const WORSE = 0.1;

/** What is timed, by its name in the table; each gives samples in ms. */
type Samples = Map<string, number[]>;

/** Times both builds and gives a table: medians before and now, and how the second stands to the first. */
export async function against(before: Build, now: Build, quick: boolean): Promise<string> {
  const [old, fresh]: [Samples, Samples] = [new Map(), new Map()];
  const rounds = quick ? 2 : 5;
  for (let round = 0; round < rounds; round++) {
    const order = [
      [before, old],
      [now, fresh],
    ] as const;
    // Who goes first changes, so that a machine that warms up favours neither.
    for (const [build, samples] of round % 2 === 0 ? order : [...order].reverse()) {
      inProcesses(build, samples, quick);
      await behindKeys(build, samples, quick);
    }
  }
  const rows = [...fresh].flatMap(([name, samples]) => {
    const [was, is] = [quantile(old.get(name) ?? [], 0.5), quantile(samples, 0.5)];
    if (!Number.isFinite(was)) return [];
    return [[name, figure(was), figure(is), `${figure(is / was)}×`, is > was * (1 + WORSE) ? "worse" : ""]];
  });
  return table(["median, ms", "before", "now", "now : before", ""], rows);
}

/** From text to findings, drawing and sheets, each case in a process of its own. */
function inProcesses(build: Build, samples: Samples, quick: boolean): void {
  const sample = ran<SampleResult>(build, { is: "sample", path: SAMPLE, count: quick ? 40 : 100 });
  for (const [name, timing] of Object.entries(sample))
    if (typeof timing === "object") keep(samples, `sample: ${name}`, timing.samples);
  const sheets = ran<SheetsResult>(build, { is: "sheets", path: SAMPLE, count: 3 });
  keep(samples, "sample: all sheets", sheets.samples);
  for (const bytes of [1000, 10_000, 100_000]) {
    const count = Math.max(5, Math.min(100, Math.round((quick ? 100_000 : 400_000) / bytes)));
    const text = ran<TextResult>(build, { is: "text", subject: "chair", bytes, kind: "clean", count });
    keep(samples, `${bytes / 1000} KB: text to findings`, text.samples);
  }
}

/** The server as a process, typed into. */
async function behindKeys({ folder }: Build, samples: Samples, quick: boolean): Promise<void> {
  const server = typedServers(SAMPLE).find(({ name }) => name === "chair");
  if (!server) return;
  const [program = "", ...rest] = server.program;
  const here = { ...server, program: [join(folder, program), ...rest] };
  const { diagnostics, drawing } = await typeBursts(here, 50, quick ? 4 : 10);
  keep(samples, "keystroke to findings", diagnostics);
  keep(samples, "keystroke to drawing", drawing);
  const { completion, hover } = await askBehindKeys(here, quick ? 10 : 30);
  keep(samples, "keystroke to completion", completion);
  keep(samples, "keystroke to hover", hover);
}

function ran<Result>({ folder, bench }: Build, given: Case): Result {
  const child = spawnSync(execPath, [...execArgv, bench, "--case", JSON.stringify(given)], {
    cwd: folder,
    encoding: "utf8",
    maxBuffer: 1e8,
  });
  if (child.status !== 0)
    throw new Error(`${folder}: ${child.stderr.trim().split("\n").slice(0, 8).join("\n")}`);
  return JSON.parse(child.stdout) as Result;
}

function keep(samples: Samples, name: string, some: readonly number[]): void {
  samples.set(name, [...(samples.get(name) ?? []), ...some]);
}
