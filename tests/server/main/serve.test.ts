import { describe, expect, it } from "vitest";
import type { PublishDiagnosticsParams } from "vscode-languageserver";
import type { MessageConnection } from "vscode-languageserver/node";
import { english } from "../../../grammar/sentences/sentence.ts";
import { speak } from "../../../grammar/sentences/speech.ts";
import { filesOfClient } from "../../../server/main/files-client.ts";
import { READ_FILE } from "../../../server/main/protocol.ts";
import { services } from "../../../server/main/services.ts";
import { frame } from "../../plain-frame.ts";
import { connect } from "./connected.ts";
import { standIn } from "./stand-in.ts";

const uri = "file:///mess/chair.chair";

describe("diagnostics by push", () => {
  it("carries the version it was worked out for", async () => {
    const c = await connect(standIn());
    c.open(uri, "all is wrong here", 7);
    const found = await c.diagnosticsWhen((p) => p.version === 7);
    expect(found.diagnostics.map((d) => [d.code, d.range.start.character, d.source])).toEqual([
      ["wrong-word", 7, "seatwright"],
    ]);
    c.change(uri, 8, "all is well");
    expect((await c.diagnosticsWhen((p) => p.version === 8)).diagnostics).toEqual([]);
  });

  it("comes at once, and again with the mends when they have been tried", async () => {
    const c = await connect(services);
    c.open(uri, frame({ joint: "tenon thick 6, long 26" }));
    const told = (works: boolean) => (p: PublishDiagnosticsParams) =>
      p.diagnostics.some(
        (d) => d.code === "tenon-too-thin" && String(d.message).includes("What works") === works,
      );
    await c.diagnosticsWhen(told(false));
    await c.diagnosticsWhen(told(true));
    expect(c.published.map(told(true))).toEqual([false, true]);
  });

  it("speaks the translation that the editor has", async () => {
    const translation = { [english["unknown-word.line"]]: "{word}: ukjent ord." };
    const c = await connect(services, { initializationOptions: { translation } });
    c.open(uri, frame({ more: "xyzzyqq 3\n" }));
    const found = await c.diagnosticsWhen((p) => p.diagnostics.length > 0);
    expect(found.diagnostics.map(({ message }) => message)).toContain("xyzzyqq: ukjent ord.");
    speak({});
  });

  it("follows incremental edits, counted in UTF-16", async () => {
    const c = await connect(standIn());
    c.open(uri, "🪑 one\r\ntwo\r\n");
    const at = (line: number, character: number) => ({ line, character });
    void c.client.sendNotification("textDocument/didChange", {
      textDocument: { uri, version: 2 },
      contentChanges: [
        { range: { start: at(0, 3), end: at(0, 6) }, text: "wrong" },
        { range: { start: at(1, 0), end: at(1, 3) }, text: "wrong" },
      ],
    });
    const found = await c.diagnosticsWhen((p) => p.version === 2);
    expect(found.diagnostics.map((d) => d.range.start)).toEqual([at(0, 3), at(1, 0)]);
  });

  it("logs each rule that failed once, by its code", async () => {
    const c = await connect(standIn());
    c.open(uri, "failing-rule failing-value");
    await c.diagnosticsWhen((p) => p.version === 1);
    c.change(uri, 2, "failing-rule failing-value again");
    await c.diagnosticsWhen((p) => p.version === 2);
    const firstLines = c.logged.map((message) => message.split("\n")[0]);
    expect(firstLines).toEqual([
      "failing-rule failed: Error: it failed",
      "failing-value failed: Error: it failed",
    ]);
  });

  it("says nothing more of a closed file", async () => {
    // Long enough that the change is still waiting when the file is closed, on any machine.
    const c = await connect(standIn(), { timing: { wait: 1000, longest: 1000 } });
    c.open(uri, "wrong");
    await c.diagnosticsWhen((p) => p.version === 1);
    c.change(uri, 2, "wrong wrong");
    c.close(uri);
    await c.diagnosticsWhen((p) => p.version === undefined && p.diagnostics.length === 0);
    c.open("file:///mess/other.chair", "wrong");
    await c.diagnosticsWhen((p) => p.uri.endsWith("other.chair"));
    expect(c.published.at(-2)?.diagnostics).toEqual([]);
    expect(c.published.filter((p) => p.uri === uri && p.version === 2)).toEqual([]);
  });

  it("studies a burst of keystrokes once", async () => {
    const services = standIn();
    const c = await connect(services, { timing: { wait: 250, longest: 250 } });
    c.open(uri, "a");
    for (let version = 2; version <= 20; version++) c.change(uri, version, "a".repeat(version));
    await c.diagnosticsWhen((p) => p.version === 20);
    expect(services.studied.length).toBeLessThan(4);
  });

  it("follows the file it uses, the open text before the disk's", async () => {
    const disk = new Map([["file:///mess/joints.chair", "fine"]]);
    const files = { read: (address: string) => disk.get(address), forget: () => {}, list: async () => [] };
    const c = await connect(standIn(), { files });
    c.open(uri, 'use "joints.chair"');
    expect((await c.diagnosticsWhen((p) => p.uri === uri)).diagnostics).toEqual([]);
    disk.set("file:///mess/joints.chair", "wrong");
    void c.client.sendNotification("workspace/didChangeWatchedFiles", {
      changes: [{ uri: "file:///mess/joints.chair", type: 2 }],
    });
    await c.diagnosticsWhen((p) => p.uri === uri && p.diagnostics.length === 1);
    c.open("file:///mess/joints.chair", "wrong wrong");
    await c.diagnosticsWhen((p) => p.uri === uri && p.diagnostics.length === 2);
    c.close("file:///mess/joints.chair");
    await c.diagnosticsWhen((p) => p === c.published.at(-1) && p.uri === uri && p.diagnostics.length === 1);
  });
});

describe("a server without a disk", () => {
  const answering = (texts: Map<string, string>) => ({
    files: filesOfClient,
    prepare: (client: MessageConnection) =>
      client.onRequest(READ_FILE, ({ uri: asked }: { uri: string }) => ({ text: texts.get(asked) ?? null })),
  });

  it("asks the client for the files named, and says nothing before they have come", async () => {
    const { files, prepare } = answering(new Map([["memfs:/ws/joints.chair", "wrong"]]));
    const c = await connect(standIn(), { files }, prepare);
    c.open("memfs:/ws/a.chair", 'use "joints.chair"');
    const first = await c.diagnosticsWhen(() => true);
    expect(first.diagnostics.map(({ code }) => code)).toEqual(["used-wrong"]);
  });

  it("tells of a file that the client does not have, and takes it up when it comes", async () => {
    const texts = new Map<string, string>();
    const { files, prepare } = answering(texts);
    const c = await connect(standIn(), { files }, prepare);
    c.open("memfs:/ws/a.chair", 'use "joints.chair"');
    expect((await c.diagnosticsWhen(() => true)).diagnostics.map(({ code }) => code)).toEqual([
      "file-not-found",
    ]);
    texts.set("memfs:/ws/joints.chair", "fine");
    void c.client.sendNotification("workspace/didChangeWatchedFiles", {
      changes: [{ uri: "memfs:/ws/joints.chair", type: 1 }],
    });
    await c.diagnosticsWhen(({ diagnostics }) => diagnostics.length === 0);
  });
});

describe("diagnostics by pull", () => {
  const capabilities = {
    textDocument: { diagnostic: {} },
    workspace: { diagnostics: { refreshSupport: true } },
  };

  it("answers when asked and publishes nothing", async () => {
    const c = await connect(standIn(), { capabilities });
    expect(c.result.capabilities.diagnosticProvider).toBeDefined();
    c.open(uri, "wrong");
    const report = await c.client.sendRequest<{ items: unknown[] }>("textDocument/diagnostic", {
      textDocument: { uri },
    });
    expect(report.items).toHaveLength(1);
    expect(c.published).toEqual([]);
  });

  it("says that nothing has changed instead of sending it all again", async () => {
    const c = await connect(standIn(), { capabilities });
    c.open(uri, "wrong");
    const ask = (previousResultId?: string) =>
      c.client.sendRequest<{ kind: string; resultId: string }>("textDocument/diagnostic", {
        textDocument: { uri },
        previousResultId,
      });
    const first = await ask();
    expect(await ask(first.resultId)).toEqual({ kind: "unchanged", resultId: first.resultId });
    c.change(uri, 2, "wrong wrong");
    expect(await ask(first.resultId)).toMatchObject({ kind: "full" });
  });

  it("is not offered to a client without it", async () => {
    const c = await connect(standIn());
    expect(c.result.capabilities.diagnosticProvider).toBeUndefined();
  });

  it("asks for a refresh when a file that others use changes", async () => {
    let refreshed = () => {};
    const refresh = new Promise<void>((resolve) => {
      refreshed = resolve;
    });
    const c = await connect(standIn(), { capabilities }, (client) =>
      client.onRequest("workspace/diagnostic/refresh", () => refreshed()),
    );
    c.open(uri, 'use "joints.chair"');
    c.open("file:///mess/joints.chair", "fine");
    await c.client.sendRequest("textDocument/diagnostic", { textDocument: { uri } });
    c.change("file:///mess/joints.chair", 2, "wrong");
    await refresh;
  });
});

describe("when a feature fails", () => {
  it("gives the empty value, logs once and goes on", async () => {
    const c = await connect(standIn(), { capabilities: { textDocument: { diagnostic: {} } } });
    const ask = () => c.client.sendRequest("textDocument/diagnostic", { textDocument: { uri } });
    c.open(uri, "explode");
    expect(await ask()).toEqual({ kind: "full", items: [] });
    expect(await ask()).toEqual({ kind: "full", items: [] });
    expect(c.logged.filter((line) => line.startsWith("diagnostics failed"))).toHaveLength(1);
    c.change(uri, 2, "wrong");
    expect(await ask()).toMatchObject({ kind: "full", items: [{ code: "wrong-word" }] });
  });
});

describe("settings", () => {
  const capabilities = { workspace: { configuration: true } };

  it("are asked for each file and taken up when they change", async () => {
    let level = "hint";
    const asked: unknown[] = [];
    const c = await connect(standIn(), { capabilities }, (client) =>
      client.onRequest("workspace/configuration", ({ items }: { items: { scopeUri: string }[] }) => {
        asked.push(...items.map((item) => item.scopeUri));
        return items.map(() => ({ rules: { "wrong-word": level } }));
      }),
    );
    c.open(uri, "wrong");
    expect((await c.diagnosticsWhen((p) => p.uri === uri)).diagnostics[0]?.severity).toBe(4);
    level = "off";
    void c.client.sendNotification("workspace/didChangeConfiguration", { settings: null });
    await c.diagnosticsWhen((p) => p.uri === uri && p.diagnostics.length === 0);
    expect(asked[0]).toBe(uri);
  });

  it("from a client that pushes them hold for all files", async () => {
    const c = await connect(standIn());
    c.open(uri, "wrong");
    await c.diagnosticsWhen((p) => p.diagnostics.length === 1);
    void c.client.sendNotification("workspace/didChangeConfiguration", {
      settings: { seatwright: { rules: { "wrong-word": "off" } } },
    });
    await c.diagnosticsWhen((p) => p.diagnostics.length === 0);
  });
});

describe("starting and stopping", () => {
  it("refuses requests after shutdown", async () => {
    const c = await connect(standIn(), { capabilities: { textDocument: { diagnostic: {} } } });
    c.open(uri, "wrong");
    expect(await c.client.sendRequest("shutdown")).toBeNull();
    await expect(
      c.client.sendRequest("textDocument/diagnostic", { textDocument: { uri } }),
    ).rejects.toMatchObject({ code: -32600 });
  });

  it("answers a request called off with the cancellation error", async () => {
    const { CancellationTokenSource } = await import("vscode-languageserver");
    const c = await connect(standIn(), { capabilities: { textDocument: { diagnostic: {} } } });
    c.open(uri, "wrong");
    const source = new CancellationTokenSource();
    const asked = c.client.sendRequest("textDocument/diagnostic", { textDocument: { uri } }, source.token);
    source.cancel();
    await expect(asked).rejects.toMatchObject({ code: -32800 });
  });
});
