/**
 * What is felt: a real server process, edits at a typist's pace, the time from the last keystroke to what answers it.
 */
import { spawn } from "node:child_process";
import { readFileSync } from "node:fs";
import { execPath, pid } from "node:process";
import {
  createMessageConnection,
  type MessageConnection,
  StreamMessageReader,
  StreamMessageWriter,
} from "vscode-languageserver-protocol/node";
import { DRAWING, WATCH_DRAWING } from "../../server/main/protocol.ts";
import type { TypedServer } from "./typed-servers.ts";

export interface KeysResult {
  /** ms from the last keystroke of each burst. */
  diagnostics: number[];
  /** None from a server that draws nothing. */
  drawing: number[];
  /** Seconds of processor for a hundred edits. */
  cpu: number;
  /** MB at the end. */
  rss: number;
}

export interface AskedResult {
  /** ms from the request to its answer, each sent with a keystroke just before it. */
  completion: number[];
  hover: number[];
}

/** Keystrokes of a burst: digits of a number in the middle of the text, so that every one changes something. */
const BURST = 8;

interface Typist {
  child: ReturnType<typeof spawn>;
  client: MessageConnection;
  uri: string;
  /** From the start of the process to the first diagnostics, ms. */
  cold: number;
  /** Retypes the number; each turn another. */
  type(turn: number): void;
  /** Where it stands. */
  place: { line: number; character: number };
  /** The next diagnostics or drawing: of the newest version, or, from a server that tells no version, whichever comes. */
  next(kind: "diagnostics" | "drawing"): Promise<number>;
  end(): Promise<void>;
}

/** Types bursts into the text and notes when the last keystroke's diagnostics and drawing come. */
export async function typeBursts(server: TypedServer, interval: number, bursts: number): Promise<KeysResult> {
  const typist = await sitDown(server);
  const result: KeysResult = { diagnostics: [], drawing: [], cpu: 0, rss: 0 };
  const cpuBefore = processorSeconds(typist.child.pid!);
  for (let burst = 0; burst < bursts; burst++) {
    for (let stroke = 0; stroke < BURST - 1; stroke++) {
      typist.type(burst * BURST + stroke);
      await pause(interval);
    }
    const last = performance.now();
    typist.type(burst * BURST + BURST - 1);
    const drawn = server.draws && typist.next("drawing");
    result.diagnostics.push((await typist.next("diagnostics")) - last);
    if (drawn) result.drawing.push((await drawn) - last);
  }
  result.cpu = ((processorSeconds(typist.child.pid!) - cpuBefore) * 100) / (bursts * BURST);
  result.rss = residentMegabytes(typist.child.pid!);
  await typist.end();
  return result;
}

/** From the start of the process to the first diagnostics, ms. */
export async function coldStart(server: TypedServer): Promise<number> {
  const typist = await sitDown(server);
  await typist.end();
  return typist.cold;
}

/** Asks for completion and hover, each right behind a keystroke that changed the text. */
export async function askBehindKeys(server: TypedServer, count: number): Promise<AskedResult> {
  const typist = await sitDown(server);
  const { client, uri, place } = typist;
  const result: AskedResult = { completion: [], hover: [] };
  for (const kind of ["completion", "hover"] as const) {
    for (let turn = 0; turn < count; turn++) {
      typist.type(turn);
      const asked = performance.now();
      await client.sendRequest(`textDocument/${kind}`, { textDocument: { uri }, position: place });
      result[kind].push(performance.now() - asked);
      await pause(60);
    }
  }
  await typist.end();
  return result;
}

/** MB of a server that a text was edited in so many times: with the last edit's findings, and once it rests. */
export async function memoryAfter(
  server: TypedServer,
  edits: number,
): Promise<{ first: number; last: number; rested: number }> {
  const typist = await sitDown(server);
  const process = typist.child.pid!;
  const first = residentMegabytes(process);
  for (let turn = 0; turn < edits; turn++) {
    typist.type(turn);
    await typist.next("diagnostics");
  }
  const last = residentMegabytes(process);
  await pause(RESTS);
  const rested = residentMegabytes(process);
  await typist.end();
  return { first, last, rested };
}

/** Long enough for a server to have nothing left to do, ms. */
const RESTS = 10_000;

/** The longest that the server left a word unanswered while the text was typed in, ms: how long its event loop was blocked. */
export async function longestBlock(server: TypedServer, edits: number): Promise<number> {
  const typist = await sitDown(server);
  let typing = true;
  let longest = 0;
  const probing = (async () => {
    while (typing) {
      const asked = performance.now();
      // Nobody knows this method: it is refused as soon as it is read.
      await typist.client.sendRequest("bench/probe").catch(() => undefined);
      longest = Math.max(longest, performance.now() - asked);
      await pause(2);
    }
  })();
  for (let turn = 0; turn < edits; turn++) {
    typist.type(turn);
    await typist.next("diagnostics");
  }
  typing = false;
  await probing;
  await typist.end();
  return longest;
}

async function sitDown({
  program,
  languageId,
  extension,
  text,
  before,
  digits,
  draws,
}: TypedServer): Promise<Typist> {
  const begun = performance.now();
  const uri = `file:///bench/sample.${extension}`;
  const child = spawn(execPath, program, { stdio: ["pipe", "pipe", "ignore"] });
  const client = createMessageConnection(
    new StreamMessageReader(child.stdout),
    new StreamMessageWriter(child.stdin),
  );
  client.onError(() => undefined);
  client.onRequest("workspace/configuration", ({ items }: { items: unknown[] }) => items.map(() => null));
  let version = 1;
  const waiting: Partial<Record<string, (at: number) => void>> = {};
  const heard = (kind: string) => (got: { version?: number; uri: string }) => {
    if (got.uri !== uri || (got.version ?? version) !== version) return;
    waiting[kind]?.(performance.now());
    delete waiting[kind];
  };
  client.onNotification("textDocument/publishDiagnostics", heard("diagnostics"));
  client.onNotification(DRAWING, heard("drawing"));
  client.listen();
  const next = (kind: "diagnostics" | "drawing") =>
    new Promise<number>((done) => {
      waiting[kind] = done;
    });
  await client.sendRequest("initialize", {
    processId: pid,
    rootUri: null,
    capabilities: { textDocument: { completion: {}, hover: {} } },
  });
  void client.sendNotification("initialized", {});
  void client.sendNotification("textDocument/didOpen", { textDocument: { uri, languageId, version, text } });
  if (draws) void client.sendNotification(WATCH_DRAWING, { uri, watch: true });
  const cold = (await next("diagnostics")) - begun;
  const place = placeAfter(text, before);
  const range = { start: place, end: { ...place, character: place.character + digits } };
  const least = 10 ** (digits - 1);
  return {
    child,
    client,
    uri,
    cold,
    place,
    next,
    type(turn) {
      version++;
      const typed = String(digits === 1 ? 1 + (turn % 9) : 4 * least + 20 + (turn % 20));
      void client.sendNotification("textDocument/didChange", {
        textDocument: { uri, version },
        contentChanges: [{ range, text: typed }],
      });
    },
    async end() {
      await client.sendRequest("shutdown");
      await client.sendNotification("exit");
      client.dispose();
      child.kill();
    },
  };
}

const pause = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));

function placeAfter(text: string, words: string) {
  const at = text.indexOf(words);
  if (at < 0) throw new Error(`"${words}" is not in the text.`);
  const before = text.slice(0, at + words.length).split("\n");
  return { line: before.length - 1, character: before.at(-1)!.length };
}

/** From Linux's own account of the process; not a number elsewhere. */
function processorSeconds(process: number): number {
  try {
    const [, rest = ""] = readFileSync(`/proc/${process}/stat`, "utf8").split(") ");
    const fields = rest.split(" ");
    return (Number(fields[11]) + Number(fields[12])) / 100;
  } catch {
    return Number.NaN;
  }
}

function residentMegabytes(process: number): number {
  try {
    const kilobytes = /VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${process}/status`, "utf8"))?.[1];
    return Number(kilobytes) / 1000;
  } catch {
    return Number.NaN;
  }
}
