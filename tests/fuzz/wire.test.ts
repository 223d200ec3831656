/**
 * What goes wrong between an editor and the server, and between the command line and whoever reads it: each gets the protocol's error, or
 * one line and an exit code.
 */
import { spawn } from "node:child_process";
import { once } from "node:events";
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { wholeChairs } from "../grammar/fixtures/texts.ts";
import { buildServer, bundle, newFolder, serving, started } from "./server-process.ts";
import { below, fuzz, oneOf } from "./tried.ts";

const folder = newFolder();
const chair = join(folder.path, "chair.chair");
beforeAll(async () => {
  await buildServer();
  writeFileSync(chair, wholeChairs().find(([name]) => name === "boathouse-mess-chair.chair")![1]);
}, 120_000);
afterAll(() => folder.remove());

describe("the protocol", () => {
  test("initialize is said once, a request has all it needs, and none comes after shutdown", async () => {
    const { client, child, ended } = await serving(folder.path);
    const code = (method: string, params: unknown) =>
      client.sendRequest(method, params).then(
        () => undefined,
        (error: { code: number }) => error.code,
      );
    expect(await code("initialize", { processId: null, rootUri: null, capabilities: {} })).toBe(-32600);
    const textDocument = { uri: folder.uri("chair.chair") };
    for (const [method, params] of [
      ["textDocument/hover", undefined],
      ["textDocument/hover", {}],
      ["textDocument/hover", { textDocument }],
      ["textDocument/hover", { textDocument, position: { line: "1" } }],
      ["textDocument/codeAction", { textDocument, range: {} }],
      ["textDocument/rename", { textDocument, position: { line: 0, character: 0 } }],
      ["workspace/symbol", {}],
    ] as const)
      expect(await code(method, params), method).toBe(-32602);
    expect(
      await code("textDocument/hover", { textDocument, position: { line: 0, character: 0 } }),
    ).toBeUndefined();
    await client.sendRequest("shutdown");
    expect(await code("textDocument/hover", { textDocument, position: { line: 0, character: 0 } })).toBe(
      -32600,
    );
    void client.sendNotification("exit");
    expect(await ended).toBe(0);
    child.kill();
  });

  test.each([
    "Content-Length: abc\r\n\r\n{}",
    "Content-Length: -5\r\n\r\n",
    "Length: 2\r\n\r\n{}",
    "x".repeat(5000),
  ])("a header that cannot be understood ends the server with a word: %j", async (sent) => {
    const child = started("--stdio");
    let said = "";
    child.stderr!.on("data", (chunk: Buffer) => {
      said += String(chunk);
    });
    child.stdin!.write(sent);
    const [code] = await once(child, "exit");
    expect(code).toBe(1);
    expect(said).toMatch(/^seatwright: a message .*, so the server ends\.\n$/);
  });

  fuzz("bytes of any kind", 4, async (random) => {
    const child = started("--stdio");
    let said = "";
    child.stderr!.on("data", (chunk: Buffer) => {
      said += String(chunk);
    });
    const pieces = [
      "Content-Length: ",
      "\r\n\r\n",
      "12",
      "{",
      '{"jsonrpc":"2.0","id":1,"method":"shutdown"}',
      "\0",
      "ÿ",
      "\r\n",
    ];
    child.stdin!.on("error", () => {});
    for (let piece = 0; piece < 1 + below(random, 30); piece++) child.stdin!.write(oneOf(random, pieces));
    child.stdin!.end();
    const [code] = await once(child, "exit");
    return code === 1 && said.split("\n").length <= 2 ? undefined : { code, said };
  });
});

describe("the command line", () => {
  const ending = async (command: string) => {
    const child = spawn("bash", ["-c", command], { stdio: ["ignore", "pipe", "pipe"] });
    let said = "";
    child.stderr!.on("data", (chunk: Buffer) => {
      said += String(chunk);
    });
    child.stdout!.resume();
    const [code] = await once(child, "close");
    return { code, said };
  };
  const seatwright = () => `${process.execPath} ${bundle}`;

  test("a full disk ends with 2 and one line", async () => {
    expect(await ending(`${seatwright()} reckon ${chair} > /dev/full`)).toEqual({
      code: 2,
      said: "seatwright: standard output is full, so not all was written.\n",
    });
  });

  test("a pipe that is closed ends with 2 and one line", async () => {
    const { code, said } = await ending(`${seatwright()} draw ${chair} | true; exit \${PIPESTATUS[0]}`);
    expect([code, said]).toEqual([2, "seatwright: standard output was closed before all was written.\n"]);
  });

  test("a chair on standard input is read, with the files beside it", async () => {
    expect(
      await ending(
        `cd ${folder.path} && echo 'like "chair.chair"' | ${seatwright()} check - && ${seatwright()} format - < ${chair}`,
      ),
    ).toEqual({
      code: 0,
      said: "",
    });
  });

  test.each(["/proc/self/pagemap", "/dev/zero", "/proc/kmsg", "/dev/null"])(
    "%s ends with 2 and one line",
    async (file) => {
      const { code, said } = await ending(`${seatwright()} check ${file}`);
      expect(code).toBe(2);
      expect(said.split("\n")).toHaveLength(2);
    },
  );
});
