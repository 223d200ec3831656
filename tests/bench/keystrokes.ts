/**
 * What is felt: a real server process, edits at a typist's pace, the time from the last keystroke to what answers it.
 */
import { spawn } from "node:child_process";
import { readFileSync } from "node:fs";
import { execPath, pid } from "node:process";
import {
  createMessageConnection,
  StreamMessageReader,
  StreamMessageWriter,
} from "vscode-languageserver-protocol/node";
import { DRAWING, WATCH_DRAWING } from "../../server/main/protocol.ts";

export interface KeysResult {
  interval: number;
  /** ms from the last keystroke of each burst. */
  diagnostics: number[];
  drawing: number[];
  /** Seconds of processor for a hundred edits. */
  cpu: number;
  /** MB at the end. */
  rss: number;
}

interface Typing {
  /** The command line's bundle. */
  server: string;
  sample: string;
  /** ms between keystrokes. */
  interval: number;
  bursts: number;
}

/** Keystrokes of a burst: digits of a number in the middle of the text, so that every one changes the chair. */
const BURST = 8;
const uri = "file:///bench/sample.chair";

/** Types bursts into the sample and notes when the last keystroke's diagnostics and drawing come. */
export async function typeOverStreams({ server, sample, interval, bursts }: Typing): Promise<KeysResult> {
  const text = readFileSync(sample, "utf8");
  const child = spawn(execPath, [server, "--stdio"], { stdio: ["pipe", "pipe", "inherit"] });
  const client = createMessageConnection(
    new StreamMessageReader(child.stdout),
    new StreamMessageWriter(child.stdin),
  );
  const heard: Record<string, (version: number) => void> = {};
  client.onNotification("textDocument/publishDiagnostics", ({ version }) => heard.diagnostics?.(version));
  client.onNotification(DRAWING, ({ version }) => heard.drawing?.(version));
  client.listen();
  const answer = (kind: "diagnostics" | "drawing", version: number) =>
    new Promise<number>((resolve) => {
      heard[kind] = (got) => {
        if (got === version) resolve(performance.now());
      };
    });
  await client.sendRequest("initialize", { processId: pid, rootUri: null, capabilities: {} });
  void client.sendNotification("initialized", {});
  const opened = Promise.all([answer("diagnostics", 1), answer("drawing", 1)]);
  void client.sendNotification("textDocument/didOpen", {
    textDocument: { uri, languageId: "chair", version: 1, text },
  });
  void client.sendNotification(WATCH_DRAWING, { uri, watch: true });
  await opened;

  const result: KeysResult = { interval, diagnostics: [], drawing: [], cpu: 0, rss: 0 };
  const place = placeOf(text, "height 930");
  const cpuBefore = processorSeconds(child.pid!);
  let version = 1;
  for (let burst = 0; burst < bursts; burst++) {
    let answers: Promise<[number, number]> | undefined;
    let last = 0;
    for (let stroke = 0; stroke < BURST; stroke++) {
      version++;
      if (stroke === BURST - 1)
        answers = Promise.all([answer("diagnostics", version), answer("drawing", version)]);
      last = performance.now();
      void client.sendNotification("textDocument/didChange", {
        textDocument: { uri, version },
        contentChanges: [{ range: place, text: `height ${920 + (version % 20)}`.padEnd(10) }],
      });
      if (stroke < BURST - 1) await pause(interval);
    }
    const [diagnosed, drawn] = await answers!;
    result.diagnostics.push(diagnosed - last);
    result.drawing.push(drawn - last);
  }
  result.cpu = ((processorSeconds(child.pid!) - cpuBefore) * 100) / (bursts * BURST);
  result.rss = residentMegabytes(child.pid!);
  await client.sendRequest("shutdown");
  await client.sendNotification("exit");
  client.dispose();
  return result;
}

const pause = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));

function placeOf(text: string, words: string) {
  const before = text.slice(0, text.indexOf(words)).split("\n");
  const line = before.length - 1;
  const character = before[line]!.length;
  return { start: { line, character }, end: { line, character: character + words.length } };
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
