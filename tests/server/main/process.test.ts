import { type ChildProcess, spawn } from "node:child_process";
import { readFileSync, rmSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";
import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import type {
  CompletionItem,
  Hover,
  InitializeResult,
  PublishDiagnosticsParams,
} from "vscode-languageserver";
import {
  createMessageConnection,
  type MessageConnection,
  StreamMessageReader,
  StreamMessageWriter,
} from "vscode-languageserver/node";
import { DRAWING, type DrawingParams, WATCH_DRAWING } from "../../../server/main/protocol.ts";

const root = fileURLToPath(new URL("../../../", import.meta.url));
const bundle = `${root}.cache/process-test/cli.cjs`;
const uri = "file:///mess/chair.chair";
const sample = readFileSync(`${root}samples/boathouse-mess-chair.chair`, "utf8");

interface Editor {
  process: ChildProcess;
  client: MessageConnection;
  /** The next notification of this kind for which this holds. */
  next<T>(method: string, holds: (params: T) => boolean): Promise<T>;
  ended: Promise<number | null>;
}

function start(): Editor {
  const child = spawn(process.execPath, [bundle, "--stdio"], { stdio: ["pipe", "pipe", "inherit"] });
  const client = createMessageConnection(
    new StreamMessageReader(child.stdout),
    new StreamMessageWriter(child.stdin),
  );
  const waiting: { method: string; holds: (params: never) => boolean; resolve: (params: never) => void }[] =
    [];
  client.onNotification((method, params) => {
    for (const each of waiting)
      if (each.method === method && each.holds(params as never)) each.resolve(params as never);
  });
  client.listen();
  return {
    process: child,
    client,
    next: (method, holds) =>
      new Promise((resolve) => waiting.push({ method, holds: holds as never, resolve: resolve as never })),
    ended: new Promise((resolve) => child.on("exit", resolve)),
  };
}

describe("the server as a process over standard streams", () => {
  let editor: Editor;
  beforeAll(async () => {
    await build({
      entryPoints: [`${root}server/main/cli.ts`],
      bundle: true,
      platform: "node",
      target: "node20",
      format: "cjs",
      mainFields: ["module", "main"],
      outfile: bundle,
    });
  });
  afterAll(() => rmSync(`${root}.cache/process-test`, { recursive: true, force: true }));
  afterEach(() => void editor?.process.kill());

  it("opens, tells, hovers, completes, follows, draws and shuts down", async () => {
    editor = start();
    const { client } = editor;
    const { capabilities, serverInfo } = await client.sendRequest<InitializeResult>("initialize", {
      processId: process.pid,
      rootUri: null,
      capabilities: {},
    });
    expect(serverInfo?.name).toBe("seatwright");
    expect(capabilities.hoverProvider).toBe(true);
    void client.sendNotification("initialized", {});

    const diagnosed = (version: number) =>
      editor.next<PublishDiagnosticsParams>(
        "textDocument/publishDiagnostics",
        (found) => found.version === version,
      );
    const drawn = (version: number) =>
      editor.next<DrawingParams>(DRAWING, (drawing) => drawing.version === version);
    const first = Promise.all([diagnosed(1), drawn(1)]);
    void client.sendNotification("textDocument/didOpen", {
      textDocument: { uri, languageId: "chair", version: 1, text: sample },
    });
    void client.sendNotification(WATCH_DRAWING, { uri, watch: true });
    const [clean, drawing] = await first;
    expect(clean.diagnostics).toEqual([]);
    expect(drawing).toMatchObject({ stale: false, sheet: { title: "Boathouse mess chair" } });

    const lines = sample.split("\n");
    const line = lines.findIndex((each) => each.startsWith("rail seat-side"));
    const textDocument = { uri };
    const hover = await client.sendRequest<Hover>("textDocument/hover", {
      textDocument,
      position: { line, character: 8 },
    });
    expect(JSON.stringify(hover.contents)).toContain("edge bevel 85.3° (1:12.1)");
    const section = lines.findIndex((each, at) => at > line && each.trim().startsWith("joined"));
    const items = await client.sendRequest<CompletionItem[]>("textDocument/completion", {
      textDocument,
      position: { line: section, character: 9 },
    });
    expect(items.map(({ label }) => label)).toContain("rail-tenon");

    const second = Promise.all([diagnosed(2), drawn(2)]);
    const header = { start: { line, character: 0 }, end: { line, character: 4 } };
    void client.sendNotification("textDocument/didChange", {
      textDocument: { uri, version: 2 },
      contentChanges: [{ range: header, text: "rial" }],
    });
    const [broken, after] = await second;
    expect(broken.diagnostics.map(({ code }) => code)).toContain("unknown-word");
    expect(after.sheet).not.toBeNull();

    expect(await client.sendRequest("shutdown")).toBeNull();
    void client.sendNotification("exit");
    expect(await editor.ended).toBe(0);
  });

  it("refuses requests before it is initialized, and ends with 1 when told to exit without a shutdown", async () => {
    editor = start();
    const asked = editor.client.sendRequest("textDocument/hover", {
      textDocument: { uri },
      position: { line: 0, character: 0 },
    });
    await expect(asked).rejects.toMatchObject({ code: -32002 });
    void editor.client.sendNotification("exit");
    expect(await editor.ended).toBe(1);
  });
});
