/**
 * The server as a process of its own, as an editor starts it, on files in a folder of its own.
 */
import { type ChildProcess, spawn } from "node:child_process";
import { mkdirSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { build } from "esbuild";
import {
  createMessageConnection,
  type MessageConnection,
  StreamMessageReader,
  StreamMessageWriter,
} from "vscode-languageserver/node";

const root = fileURLToPath(new URL("../../", import.meta.url));
export const bundle = `${root}.cache/fuzz/cli.cjs`;

/** Makes the command line that the fuzzers run. */
export async function buildServer(): Promise<void> {
  mkdirSync(`${root}.cache/fuzz`, { recursive: true });
  await build({
    entryPoints: [`${root}server/main/cli.ts`],
    bundle: true,
    platform: "node",
    target: "node20",
    format: "cjs",
    mainFields: ["module", "main"],
    outfile: bundle,
  });
}

export interface Server {
  child: ChildProcess;
  client: MessageConnection;
  /** What it wrote on standard error. */
  said(): string;
  ended: Promise<number | null>;
  open(uri: string, text: string): void;
  /** Memory now, MB; nothing where the system does not tell. */
  memory(): number | undefined;
  /** Processor time so far, ms, in steps of 10; nothing where the system does not tell. */
  processor(): number | undefined;
}

/** A process of the command line with these arguments. */
export const started = (...args: string[]): ChildProcess =>
  spawn(process.execPath, [bundle, ...args], { stdio: ["pipe", "pipe", "pipe"] });

/** A server that has been initialized for a folder. */
export async function serving(folder: string, capabilities: object = {}): Promise<Server> {
  const child = started("--stdio");
  let said = "";
  child.stderr!.on("data", (chunk: Buffer) => {
    said += String(chunk);
  });
  const client = createMessageConnection(
    new StreamMessageReader(child.stdout!),
    new StreamMessageWriter(child.stdin!),
  );
  client.listen();
  await client.sendRequest("initialize", {
    processId: process.pid,
    rootUri: null,
    workspaceFolders: [{ uri: pathToFileURL(folder).href, name: "folder" }],
    capabilities,
  });
  void client.sendNotification("initialized", {});
  return {
    child,
    client,
    said: () => said,
    ended: new Promise((resolve) => child.on("exit", resolve)),
    open: (uri, text) =>
      void client.sendNotification("textDocument/didOpen", {
        textDocument: { uri, languageId: "chair", version: 1, text },
      }),
    memory() {
      try {
        const status = readFileSync(`/proc/${child.pid}/status`, "utf8");
        return Number(/VmRSS:\s+(\d+)/.exec(status)?.[1]) / 1024;
      } catch {
        return undefined;
      }
    },
    processor() {
      try {
        // Behind the name in brackets: user and system time are the 12th and 13th, in hundredths of a second.
        const fields = readFileSync(`/proc/${child.pid}/stat`, "utf8").split(") ")[1]!.split(" ");
        return (Number(fields[11]) + Number(fields[12])) * 10;
      } catch {
        return undefined;
      }
    },
  };
}

/** A new folder, and how to take it away. */
export function newFolder(): { path: string; uri(name: string): string; remove(): void } {
  const path = mkdtempSync(join(tmpdir(), "seatwright-fuzz-"));
  return {
    path,
    uri: (name) => pathToFileURL(join(path, name)).href,
    remove: () => rmSync(path, { recursive: true, force: true }),
  };
}
