/**
 * Files that somebody sends to do harm: while the server has one open, another file's completion is answered in time, its memory stays
 * near what it takes with the sample, and it answers about the file itself in the end.
 */
import { execFileSync } from "node:child_process";
import { symlinkSync, writeFileSync } from "node:fs";
import { loadavg } from "node:os";
import { join } from "node:path";
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from "vitest";
import { messChair } from "../grammar/fixtures/texts.ts";
import { buildServer, newFolder, type Server, serving } from "./server-process.ts";

/**
 * ms by the clock, and MB beside the usual. Times are held by `npm run fuzz`, which has the machine to itself; beside all other tests only
 * that an answer comes.
 */
const alone = process.env.SEATWRIGHT_TIME !== undefined;
const [LATEST, MORE] = alone ? [200, 150] : [Number.POSITIVE_INFINITY, 300];

const row = (count: number, one: (at: number) => string, between = "") =>
  Array.from({ length: count }, (_, at) => one(at)).join(between);
const uses = (count: number, name: (at: number) => string) => row(count, (at) => `use "${name(at)}.chair"\n`);

interface Hostile {
  text: string;
  files?: Record<string, string>;
  links?: Record<string, string>;
  pipes?: string[];
}

const level = (at: number) => `level${at}`;
const hostile: Record<string, Hostile> = {
  "fifteen files that each name the next four times": {
    text: uses(4, () => "level0"),
    files: Object.fromEntries(
      Array.from({ length: 15 }, (_, at) => [
        level(at),
        at === 14 ? "let a = 1\n" : uses(4, () => level(at + 1)),
      ]),
    ),
  },
  "six hundred files": {
    text: uses(600, (at) => `wide${at}`),
    files: Object.fromEntries(Array.from({ length: 600 }, (_, at) => [`wide${at}`, "let a = 1\n"])),
  },
  "a row of a hundred files": {
    text: 'like "row0.chair"\n',
    files: Object.fromEntries(
      Array.from({ length: 100 }, (_, at) => [`row${at}`, `like "row${at + 1}.chair"\n`]),
    ),
  },
  "files that all name each other": {
    text: uses(40, (at) => `all${at}`),
    files: Object.fromEntries(
      Array.from({ length: 40 }, (_, at) => [
        `all${at}`,
        uses(40, (to) => `all${to}`) + row(500, (let_) => `let a${let_} = 1\n`),
      ]),
    ),
  },
  "a file of nothing but errors": {
    text: uses(1, () => "errors"),
    files: { errors: "wrong\n".repeat(45_000) },
  },
  "nine megabytes of comments": {
    text: uses(1, () => "long"),
    files: { long: `# ${"x".repeat(9_000_000)}\n` },
  },
  "links to what never ends": {
    text: uses(3, (at) => `link${at}`),
    links: { link0: "/proc/self/pagemap", link1: "/proc/kmsg", link2: "/dev/zero" },
  },
  "a link to itself and a pipe": {
    text: uses(2, (at) => ["self", "pipe"][at]!),
    links: { self: "self.chair" },
    pipes: ["pipe"],
  },
  "other machines": {
    text: 'use "file://host/a.chair"\nuse "//host/share/a.chair"\nuse "\\\\\\\\host\\\\share\\\\a.chair"\nlike "https://host/a.chair"\n',
  },
  "a thousand slats": {
    text: messChair.replace("count 4 even", `at ${row(1000, (at) => String(at / 4), ", ")}`),
  },
  "three hundred heights": {
    text: messChair.replace("  up 570\n", `  up ${row(300, (at) => String(500 + at), ", ")}\n`),
  },
  "a hundred and sixty pairs of posts": {
    text:
      messChair +
      row(
        160,
        (at) =>
          `post p${at} pair {\n  section 30 x 30\n  foot out ${200 + at}, back ${100 + at}\n  height 400\n}\n`,
      ),
  },
  "ten thousand values in a row": { text: row(10_000, (at) => `let a${at} = a${at + 1} + 1\n`) },
  "an expression without end": {
    text: `let a = ${"(".repeat(5000)}1${")".repeat(5000)}\nlet b = ${"1 + ".repeat(5000)}1\n`,
  },
  "one word without end": { text: `post ${"a".repeat(500_000)} {\n` },
};

const other = "other.chair";
let server: Server;
let serves = false;
const folder = newFolder();
let usual = 0;

/** How long an answer takes, ms by the clock and of the server's processor time. */
async function asked(): Promise<{ clock: number; processor: number }> {
  const begun = performance.now();
  const before = server.processor() ?? 0;
  const position = { line: 5, character: 0 };
  await server.client.sendRequest("textDocument/completion", {
    textDocument: { uri: folder.uri(other) },
    position,
  });
  return { clock: performance.now() - begun, processor: (server.processor() ?? 0) - before };
}

/** Waits until the server has next to nothing to do for a quarter of a second; five seconds at most. */
async function restsAt({ processor }: Server): Promise<void> {
  for (let time = 0; time < 20; time++) {
    const before = processor() ?? 0;
    await new Promise((next) => setTimeout(next, 250));
    if ((processor() ?? 0) - before <= 20) return;
  }
}

// By `npm run fuzz` each file has a server of its own, so that its memory is that file's; else there is one for all, which is quicker.
beforeEach(async () => {
  if (serves) return;
  serves = true;
  server = await serving(folder.path);
  server.open(folder.uri(other), messChair);
  for (let time = 0; time < 20; time++) await asked();
  // An editor that has been in use: all that is done about the sample by itself, its mends above all, is done.
  if (alone) await restsAt(server);
  usual = server.memory() ?? 0;
}, 120_000);

const end = async () => {
  await server.client.sendRequest("shutdown");
  void server.client.sendNotification("exit");
  await server.ended;
  serves = false;
};
if (alone) afterEach(end);

beforeAll(buildServer, 120_000);
afterAll(async () => {
  if (!alone) await end();
  folder.remove();
});

test.each(Object.entries(hostile))(
  "%s",
  async (name, { text, files = {}, links = {}, pipes = [] }) => {
    for (const [file, inside] of Object.entries(files))
      writeFileSync(join(folder.path, `${file}.chair`), inside);
    for (const [file, target] of Object.entries(links))
      symlinkSync(target, join(folder.path, `${file}.chair`));
    for (const file of pipes) execFileSync("mkfifo", [join(folder.path, `${file}.chair`)]);
    const uri = folder.uri(`${name.replaceAll(" ", "-")}.chair`);
    server.open(uri, text);
    let done = false;
    const symbols = server.client
      .sendRequest("textDocument/documentSymbol", { textDocument: { uri } })
      .then((found) => {
        done = true;
        return found;
      });
    let [slowest, busiest, most] = [0, 0, 0];
    do {
      const { clock, processor } = await asked();
      slowest = Math.max(slowest, clock);
      busiest = Math.max(busiest, processor);
      most = Math.max(most, server.memory() ?? 0);
    } while (!done);
    expect(await symbols).toBeInstanceOf(Array);
    void server.client.sendNotification("textDocument/didClose", { textDocument: { uri } });
    if (alone)
      console.info(
        `${name}: ${Math.round(slowest)} ms, ${busiest} ms of processor time, ${Math.round(most - usual)} MB; load ${loadavg()[0]!.toFixed(1)}`,
      );
    expect(slowest, "answered late, ms").toBeLessThan(LATEST);
    expect(most - usual, "memory beside the usual, MB").toBeLessThan(MORE);
    expect(server.said()).toBe("");
  },
  120_000,
);
