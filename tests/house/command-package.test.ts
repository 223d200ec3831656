/**
 * The command line's tarball, installed into an empty folder with no registry to ask: it needs Node alone.
 */
import { execFileSync, spawn, spawnSync } from "node:child_process";
import {
  copyFileSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  rmSync,
  statSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { makeCommandPackage } from "../../.build/command-package.mjs";
import { ruleOf } from "../../server/rules/index.ts";
import { read, root } from "./project-files.ts";

const empty = mkdtempSync(join(tmpdir(), "seatwright-installed-"));
const bench = join(empty, "bench");

beforeAll(async () => {
  mkdirSync(bench);
  const tarball = await makeCommandPackage(join(empty, "seatwright.tgz"));
  const options = ["--global", "--prefix", empty, "--offline", "--no-audit", "--no-fund", "--ignore-scripts"];
  execFileSync("npm", ["install", ...options, tarball], { cwd: bench });
  copyFileSync(join(root, "samples", "boathouse-mess-chair.chair"), join(bench, "mess.chair"));
});

afterAll(() => rmSync(empty, { recursive: true, force: true }));

function seatwright(...args: string[]) {
  const done = spawnSync(join(empty, "bin", "seatwright"), args, { cwd: bench, encoding: "utf8" });
  return { code: done.status, out: done.stdout, error: done.stderr };
}

describe("the command line's tarball", () => {
  it("installs as `seatwright` and brings no other package", () => {
    expect(seatwright("--version").out.trim()).toBe(JSON.parse(read("package.json")).version);
    expect(readdirSync(join(empty, "lib", "node_modules"))).toEqual(["seatwright"]);
    expect(existsSync(join(empty, "lib", "node_modules", "seatwright", "node_modules"))).toBe(false);
  });

  it("holds every file and picture that its page shows or leads to", () => {
    const installed = join(empty, "lib", "node_modules", "seatwright");
    const named = [...read("README.md").matchAll(/\]\(([^):#]+)\)/g)].map(([, path]) => path!);
    expect(named.length).toBeGreaterThan(5);
    expect(named.filter((path) => !existsSync(join(installed, path)))).toEqual([]);
  });

  it("checks, explains with an example, draws, marks out and exports", () => {
    expect(seatwright("check", "mess.chair")).toMatchObject({ code: 0, error: "" });
    const explained = seatwright("explain", "tenon-too-thin").out;
    expect(explained).toContain("joint plain {");
    expect(explained.replace(/\s+/g, " ")).toContain(ruleOf("tenon-too-thin")!.explanation);
    for (const [args, file] of [
      [["draw", "mess.chair", "-o", "mess.svg"], "mess.svg"],
      [["markout", "mess.chair", "-o", "mess.pdf"], "mess.pdf"],
      [["export", "mess.chair", "--as", "3mf", "-o", "mess.3mf"], "mess.3mf"],
      [["boards", "mess.chair", "--format", "pdf", "-o", "boards.pdf"], "boards.pdf"],
    ] as const) {
      expect(seatwright(...args)).toMatchObject({ code: 0 });
      expect(statSync(join(bench, file)).size).toBeGreaterThan(1000);
    }
  });

  it("serves an editor over streams", async () => {
    const server = spawn(join(empty, "bin", "seatwright"), ["--stdio"], { cwd: bench });
    const send = (content: object) => {
      const body = JSON.stringify({ jsonrpc: "2.0", ...content });
      server.stdin.write(`Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`);
    };
    let said = "";
    server.stdout.on("data", (piece) => (said += piece));
    const ended = new Promise((resolve) => server.on("close", resolve));
    send({ id: 1, method: "initialize", params: { processId: null, rootUri: null, capabilities: {} } });
    await expect.poll(() => said).toContain("hoverProvider");
    send({ id: 2, method: "shutdown" });
    await expect.poll(() => said).toContain('"id":2');
    send({ method: "exit" });
    expect(await ended).toBe(0);
  });

  it("prints findings that the problem matcher for tasks reads", () => {
    const { pattern } = JSON.parse(read("package.json")).contributes.problemMatchers[0];
    const form = new RegExp(pattern.regexp);
    const text = read("samples/boathouse-mess-chair.chair").replace("kick 4deg", "kik 4deg");
    writeFileSync(join(bench, "wrong.chair"), text);
    const lines = seatwright("check", "wrong.chair").out.split("\n");
    const found = lines.flatMap((line) => form.exec(line)?.slice(1) ?? []);
    const at = text.split("\n").findIndex((line) => line.includes("kik"));
    expect(found.slice(0, 4)).toEqual(["wrong.chair", String(at + 1), "3", "error"]);
    expect(found[4]).toContain("kik");
    expect(found[5]).toMatch(/^[a-z-]+$/);
    // The lines that show the text are not findings.
    expect(lines.filter((line) => form.test(line)).length).toBeLessThan(lines.length / 2);
  });
});
