/**
 * How fast, and at what cost: `npm run bench [-- --quick] [-- --only sample|seats|sheets|boards|exports|turned|ranges|text|keys|memory|size]`, and
 * `npm run bench -- --against DIR [--quick]` for this checkout against another, in turns.
 *
 * The other language services are a ruler, not a ranking: other languages ask for other work.
 */
import { spawnSync } from "node:child_process";
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { availableParallelism, loadavg } from "node:os";
import { join } from "node:path";
import { argv, execArgv, execPath, stdout, version } from "node:process";
import { gzipSync } from "node:zlib";
import { against } from "./against.ts";
import {
  type Case,
  type MemoryResult,
  runCase,
  type SampleResult,
  type SheetsResult,
  type TextResult,
} from "./cases.ts";
import { type Kind, kinds } from "./damage.ts";
import { askBehindKeys, coldStart, longestBlock, memoryAfter, typeBursts } from "./keystrokes.ts";
import type { BoardsResult, ExportsResult } from "./making.ts";
import { figure, quantile, table } from "./measure.ts";
import type { SubjectName } from "./subjects.ts";
import type { RangesResult, TurnedResult } from "./trying.ts";
import { typedServers } from "./typed-servers.ts";

const SAMPLE = join("samples", "boathouse-mess-chair.chair");
const sizes = [1000, 10_000, 100_000];
const names: SubjectName[] = ["chair", "css", "json"];
const parts = [
  "sample",
  "seats",
  "sheets",
  "boards",
  "exports",
  "turned",
  "ranges",
  "text",
  "keys",
  "memory",
  "size",
];

const [, , first, second, third] = argv;
if (first === "--against") {
  const [before, now] = [JSON.parse(second!), JSON.parse(third!)];
  say(`Node ${version}, ${availableParallelism()} cores, load ${load()} at the start.\n`);
  say(await against(before, now, argv.includes("--quick")));
  say(`\nLoad ${load()} at the end.`);
} else if (first === "--case") {
  stdout.write(JSON.stringify(await runCase(JSON.parse(second!))));
} else {
  await bench(argv.slice(2));
}

async function bench(options: string[]): Promise<void> {
  const quick = options.includes("--quick");
  const only = options.includes("--only") ? (options[options.indexOf("--only") + 1] ?? "") : undefined;
  if (only !== undefined && !parts.includes(only)) {
    console.error(`--only takes one of ${parts.join(", ")}.`);
    process.exitCode = 2;
    return;
  }
  const wanted = (part: string) => only === undefined || only === part;
  say(`Node ${version}, ${availableParallelism()} cores, load ${load()} at the start.`);
  if (loadavg()[0]! > availableParallelism()) {
    say("The machine is busy: trust the least figures for what the work costs, none for what is felt.");
  }
  if (wanted("sample")) sample(quick ? 60 : 300);
  if (wanted("seats")) seats(quick ? 30 : 150);
  if (wanted("sheets")) sheets(quick ? 4 : 12);
  if (wanted("boards")) boards(quick ? 20 : 100);
  if (wanted("exports")) exports(quick ? 3 : 12);
  if (wanted("turned")) turned(quick ? 72 : 720);
  if (wanted("ranges")) ranges(quick ? 4 : 12);
  if (wanted("text")) texts(quick);
  if (wanted("keys")) await keys(quick);
  if (wanted("memory")) await memory(quick ? 200 : 1000);
  if (wanted("size")) bundles();
  say(`\nLoad ${load()} at the end.`);
}

function inOwnProcess<Result>(given: Case): Result {
  const child = spawnSync(execPath, [...execArgv, argv[1]!, "--case", JSON.stringify(given)], {
    encoding: "utf8",
    maxBuffer: 1e8,
  });
  if (child.status !== 0) throw new Error(child.stderr.trim().split("\n").slice(0, 8).join("\n"));
  return JSON.parse(child.stdout) as Result;
}

function sample(count: number): void {
  const result = inOwnProcess<SampleResult>({ is: "sample", path: SAMPLE, count });
  const row = (name: string, { first, samples, cpu }: SampleResult["all"]) => [
    name,
    ...[0, 0.5, 0.95].map((share) => figure(quantile(samples, share))),
    figure(cpu),
    figure(first),
  ];
  say(`\n${SAMPLE}, from text to diagnostics and drawing (ms; aim: under 8 warm)`);
  say(
    table(
      ["", "min", "median", "p95", "processor", "first"],
      [
        row("text to tree", result.parse),
        row("tree to chair", result.settle),
        row("chair to findings", result.judge),
        row("floor and sitter alone", result.floor),
        row("strength alone", result.strength),
        row("a frame of 2000 unknowns alone", result.solver),
        row("chair to drawing", result.draw),
        row("all together", result.all),
      ],
    ),
  );
}

/** Chairs on a solid seat beside one of rails, by processor time: the slip chair as the mess chair, a hoop of twelve sticks under twice that. */
function seats(count: number): void {
  const paths = [
    SAMPLE,
    join("samples", "slip-chair.chair"),
    join("tests", "bench", "hoop-of-twelve.chair"),
    join("samples", "bow-armchair.chair"),
  ];
  const results = paths.map((path) => inOwnProcess<SampleResult>({ is: "sample", path, count }));
  const whole = results[0]!.all.cpu;
  say(
    "\nChairs on a solid seat, from text to diagnostics and drawing (ms of processor; aim: 1×, the hoop under 2×)",
  );
  say(
    table(
      ["", "tree to chair", "to findings", "to drawing", "all together", "of the first", "first call"],
      results.map(({ settle, judge, draw, all }, k) => [
        paths[k]!,
        ...[settle, judge, draw, all].map(({ cpu }) => figure(cpu)),
        `${figure(all.cpu / whole)}×`,
        figure(all.first),
      ]),
    ),
  );
}

function sheets(count: number): void {
  const { first, samples, cpu, pages } = inOwnProcess<SheetsResult>({ is: "sheets", path: SAMPLE, count });
  say(
    `\n${SAMPLE}, from text to all ${pages} marking-out pages as PDF (ms; aim: under 2000, first and cold)`,
  );
  const figures = [0, 0.5, 0.95].map((share) => figure(quantile(samples, share)));
  say(
    table(
      ["", "min", "median", "p95", "processor", "first"],
      [["all sheets", ...figures, figure(cpu), figure(first)]],
    ),
  );
}

function boards(count: number): void {
  const path = join("samples", "mess-chairs-from-boards.chair");
  const { stock, pieces, plans } = inOwnProcess<BoardsResult>({ is: "boards", path, count });
  say(`\n${path}, ${pieces} pieces: stock list (ms), and each better plan`);
  const figures = [0, 0.5, 0.95].map((share) => figure(quantile(stock.samples, share)));
  say(
    table(
      ["", "min", "median", "p95", "processor", "first"],
      [["stock list", ...figures, figure(stock.cpu), figure(stock.first)]],
    ),
  );
  say("Aims for the plan: the first under 300 ms, and within 3 % of the bound in 3 s.");
  say(
    table(
      ["after (ms)", "over the bound"],
      plans.map(({ after, over }) => [figure(after), `${(over * 100).toFixed(2)} %`]),
    ),
  );
}

function exports(count: number): void {
  for (const [name, aim] of [
    ["boathouse-mess-chair", 300],
    ["ladder-back", 1000],
  ] as const) {
    const path = join("samples", `${name}.chair`);
    const { kinds: made } = inOwnProcess<ExportsResult>({ is: "exports", path, count });
    say(`\n${path} as files (ms, solids made anew each time; aim: under ${aim} each)`);
    const rows = made.map(({ kind, bytes, samples, cpu, first }) => [
      kind,
      ...[0, 0.5, 0.95].map((share) => figure(quantile(samples, share))),
      figure(cpu),
      figure(first),
      figure(bytes / 1000),
    ]);
    say(table(["", "min", "median", "p95", "processor", "first", "kB"], rows));
  }
}

function turned(count: number): void {
  say("\nA frame of the pictorial view, its page apart (ms; aim: 8, ladder-back 15)");
  const rows = ["boathouse-mess-chair", "ladder-back"].map((name) => {
    const path = join("samples", `${name}.chair`);
    const { samples, cpu, first, lines } = inOwnProcess<TurnedResult>({ is: "turned", path, count });
    return [
      name,
      ...[0, 0.5, 0.95].map((share) => figure(quantile(samples, share))),
      figure(cpu),
      figure(first),
      String(lines),
    ];
  });
  say(table(["", "min", "median", "p95", "processor", "first", "lines"], rows));
}

function ranges(count: number): void {
  const given = { is: "ranges", path: SAMPLE, across: "seat-height", up: "back.foot.back", count } as const;
  const { range, map } = inOwnProcess<RangesResult>(given);
  say(
    `\n${SAMPLE}, how far ${given.across} may go, and a map of it with ${given.up} (ms; aim: 400 and 4000)`,
  );
  const row = (name: string, { samples, cpu, first }: RangesResult["map"]) => [
    name,
    ...[0, 0.5, 0.95].map((share) => figure(quantile(samples, share))),
    figure(cpu),
    figure(first),
  ];
  say(
    table(
      ["", "min", "median", "p95", "processor", "first"],
      [row("25 places and edges", range), row("15 by 15", map)],
    ),
  );
}

function texts(quick: boolean): void {
  const results = new Map<string, TextResult>();
  const key = (subject: SubjectName, bytes: number, kind: Kind) => `${subject} ${bytes} ${kind}`;
  // Round by round, each subject in turn, so that a busy minute falls on all alike.
  for (let round = 0; round < (quick ? 1 : 2); round++) {
    for (const bytes of sizes) {
      for (const kind of kinds) {
        for (const subject of names) {
          const count = Math.max(6, Math.round((quick ? 60_000 : 400_000) / bytes));
          const result = inOwnProcess<TextResult>({
            is: "text",
            subject,
            bytes,
            kind,
            count: Math.min(count, 200),
          });
          const before = results.get(key(subject, bytes, kind));
          if (before) {
            before.samples.push(...result.samples);
            before.cpu = (before.cpu + result.cpu) / 2;
          } else results.set(key(subject, bytes, kind), result);
        }
      }
    }
  }
  say("\nText to final diagnostics (ms), one process a case");
  for (const subject of names) say(`  ${subject}: ${results.get(key(subject, 1000, "clean"))!.checks}`);
  const rows = sizes.flatMap((bytes) =>
    kinds.map((kind) => {
      const cells = names.map((subject) => results.get(key(subject, bytes, kind))!);
      const [ours, ...others] = cells.map(({ samples }) => quantile(samples, 0));
      return [
        `${bytes / 1000} KB ${kind}`,
        ...cells.map(({ samples }) =>
          [0, 0.5, 0.95].map((share) => figure(quantile(samples, share))).join(" / "),
        ),
        ...others.map((other) => `${figure(ours! / other)}×`),
        cells.map(({ cpu }) => figure(cpu)).join(" / "),
        cells.map(({ first }) => figure(first)).join(" / "),
      ];
    }),
  );
  const headings = [
    "",
    ...names.map((name) => `${name} min / median / p95`),
    "chair : css",
    "chair : json",
    "processor",
    "first calls",
  ];
  say(table(headings, rows));
  const least = (bytes: number) => quantile(results.get(key("chair", bytes, "clean"))!.samples, 0);
  say(
    `Ten times the text takes ${figure(least(10_000) / least(1000))} and ${figure(least(100_000) / least(10_000))} times as long (chair, clean, least).`,
  );
}

/** Every server's row for each pace, the servers in turn so that a busy minute falls on all alike. */
async function keys(quick: boolean): Promise<void> {
  if (!existsSync(join("dist", "cli.js"))) return;
  const servers = typedServers(SAMPLE);
  const spread = (samples: number[]) =>
    samples.length === 0 ? "–" : [0.5, 0.95].map((share) => figure(quantile(samples, share))).join(" / ");
  say(
    "\nServers as processes: last of eight keystrokes to what answers it (ms, median / p95), their own waiting included",
  );
  say(
    "Aim for the chair: diagnostics under 50, drawing under 80 at p95. The others wait 200 to 500 ms for the typist to rest.",
  );
  const rows: string[][] = [];
  for (const interval of [10, 50, 150]) {
    for (const server of servers) {
      const { diagnostics, drawing, cpu, rss } = await typeBursts(server, interval, quick ? 8 : 30);
      rows.push([
        `${server.name}, every ${interval} ms`,
        spread(diagnostics),
        spread(drawing),
        figure(cpu),
        figure(rss),
      ]);
    }
  }
  say(table(["", "diagnostics", "drawing", "CPU s per 100 edits", "RSS MB"], rows));

  say(
    "\nAsked right behind a keystroke (ms, median / p95), and from the start of the process to the first diagnostics",
  );
  say("Aim for the chair: completion under 20 at p95.");
  const asked: string[][] = [];
  for (const server of servers) {
    const { completion, hover } = await askBehindKeys(server, quick ? 20 : 100);
    const cold: number[] = [];
    for (let turn = 0; turn < (quick ? 3 : 7); turn++) cold.push(await coldStart(server));
    asked.push([server.name, spread(completion), spread(hover), figure(quantile(cold, 0.5))]);
  }
  say(table(["", "completion", "hover", "cold start"], asked));

  say("\nLongest block of the event loop while a 100 KB text is typed in (ms; aim for the chair: under 50)");
  const blocks: string[][] = [];
  for (const server of typedServers(SAMPLE, 100_000))
    blocks.push([server.name, figure(await longestBlock(server, quick ? 3 : 8))]);
  say(table(["", "longest"], blocks));
}

async function memory(edits: number): Promise<void> {
  const megabytes = (bytes: number) => figure(bytes / 1e6);
  say(`\nMemory of the process after ${edits} edits of a 10 KB text (MB)`);
  say(
    table(
      ["", "after the first", `after ${edits}`],
      names.map((subject) => {
        const { before, after } = inOwnProcess<MemoryResult>({ is: "memory", subject, bytes: 10_000, edits });
        return [subject, megabytes(before), megabytes(after)];
      }),
    ),
  );
  if (!existsSync(join("dist", "cli.js"))) return;
  say(`\nMemory of a server after ${edits} edits of a 10 KB text (MB; aim for the chair: under 150 at rest)`);
  const rows: string[][] = [];
  for (const server of typedServers(SAMPLE, 10_000)) {
    const { first, last, rested } = await memoryAfter(server, edits);
    rows.push([server.name, figure(first), figure(last), figure(rested)]);
  }
  say(table(["", "opened", `after ${edits}`, "ten seconds later"], rows));
}

function bundles(): void {
  if (!existsSync("dist")) return;
  say("\nBundles (kB)");
  const rows = readdirSync("dist")
    .filter((file) => /\.(js|css)$/.test(file))
    .map((file) => {
      const text = readFileSync(join("dist", file));
      return [file, figure(text.length / 1000), figure(gzipSync(text).length / 1000)];
    });
  say(table(["", "plain", "gzipped"], rows));
}

function load(): string {
  return loadavg()[0]!.toFixed(1);
}

function say(text: string): void {
  stdout.write(`${text}\n`);
}
