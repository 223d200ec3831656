/**
 * The server on the web refuses the same as the one of the desktop: each is run as it is shipped, on the same files, and finds the same.
 */
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, expect, it } from "vitest";
import type { Diagnostic, DocumentDiagnosticReport } from "vscode-languageserver";
import { FIND_FILES, READ_FILE } from "../../../server/main/protocol.ts";
import { buildServer, newFolder, type Server, serving } from "../../fuzz/server-process.ts";
import { STRENGTH, type WebServer, webServer } from "./web-worker.ts";

const folder = newFolder();
const row = (count: number, one: (at: number) => string) =>
  Array.from({ length: count }, (_, at) => one(at)).join("");
const uses = (count: number, name: (at: number) => string) => row(count, (at) => `use "${name(at)}.chair"\n`);
const write = (name: string, text: string) => writeFileSync(join(folder.path, name), text);

const cases: Record<string, string> = {
  "another machine": 'use "file://host/a.chair"\n',
  "a share": 'use "//host/share/a.chair"\n',
  "a share, in the other slashes": 'like "\\\\\\\\host\\\\share\\\\a.chair"\n',
  "an address of the web": 'use "https://host/a.chair"\n',
  "an address of another kind": 'use "vscode-vfs://github/a.chair"\n',
  "data in the address": 'use "data:text/plain,let a = 1"\n',
  "a file of another ending": 'use "notes.txt"\n',
  "a file that is not there": 'use "nowhere.chair"\n',
  "a folder": 'use "folder.chair"\n',
  "an empty file": 'use "empty.chair"\n',
  "a file with errors": 'use "errors.chair"\n',
  itself: 'like "open.chair"\n',
  "six hundred files": uses(600, (at) => `wide${at}`),
  "a row of a hundred files": 'like "row0.chair"\n',
  "files that each name the next four times": uses(4, () => "level0"),
  "nine megabytes": 'use "long.chair"\n',
  "more parts than there may be": row(
    500,
    (at) => `post p${at} {\n  section 30 x 30\n  foot out ${at * 40}, back 0\n  height 400\n}\n`,
  ),
};

let desktop: Server;
let web: WebServer;
/** What the server on the web asked its client to read. */
const read: string[] = [];
const capabilities = { textDocument: { diagnostic: {} } };

beforeAll(async () => {
  for (let at = 0; at < 600; at++) write(`wide${at}.chair`, "let a = 1\n");
  for (let at = 0; at < 100; at++) write(`row${at}.chair`, `like "row${at + 1}.chair"\n`);
  for (let at = 0; at < 15; at++)
    write(`level${at}.chair`, at === 14 ? "let a = 1\n" : uses(4, () => `level${at + 1}`));
  write("notes.txt", "let a = 1\n");
  write("empty.chair", "");
  write("errors.chair", "wrong\npost {\n");
  write("long.chair", `# ${"x".repeat(9_000_000)}\n`);
  mkdirSync(join(folder.path, "folder.chair"));
  await buildServer();
  desktop = await serving(folder.path, capabilities);
  // As the client of an editor on the web does: it reads what lies in the workspace.
  web = await webServer((method, params) => {
    if (method === FIND_FILES) return { uris: [] };
    if (method !== READ_FILE) return null;
    const { uri } = params as { uri: string };
    read.push(uri);
    try {
      return { text: readFileSync(fileURLToPath(uri), "utf8") };
    } catch {
      return {};
    }
  });
  const initializationOptions = { bundles: { strength: STRENGTH } };
  await web.request("initialize", { processId: null, rootUri: null, capabilities, initializationOptions });
  web.notify("initialized", {});
}, 120_000);

afterAll(async () => {
  await web?.end();
  await desktop?.client.sendRequest("shutdown");
  void desktop?.client.sendNotification("exit");
  folder.remove();
});

const told = (report: DocumentDiagnosticReport): string[] =>
  (report.kind === "full" ? report.items : []).map(
    ({ code, message, range }: Diagnostic) =>
      `${range.start.line}:${range.start.character} ${code} ${message}`,
  );

it.each(Object.entries(cases))("the same is found in %s", { timeout: 120_000 }, async (_, text) => {
  const uri = folder.uri("open.chair");
  const textDocument = { uri, languageId: "chair", version: 1, text };
  void desktop.client.sendNotification("textDocument/didOpen", { textDocument });
  web.notify("textDocument/didOpen", { textDocument });
  const ask = { textDocument: { uri } };
  // Both are asked until they say the same: what mends a finding comes a little later, and not at the same time.
  const both = () =>
    Promise.all([
      desktop.client.sendRequest<DocumentDiagnosticReport>("textDocument/diagnostic", ask).then(told),
      web.request("textDocument/diagnostic", ask).then((report) => told(report as DocumentDiagnosticReport)),
    ]);
  const difference = async () => {
    const [there, here] = (await both()).map((lines) => lines.join("\n"));
    return there === here ? "none" : `on the desktop:\n${there}\non the web:\n${here}`;
  };
  await expect.poll(difference, { timeout: 60_000 }).toBe("none");
  void desktop.client.sendNotification("textDocument/didClose", ask);
  web.notify("textDocument/didClose", ask);
});

it("what is worked out late is found on both", { timeout: 120_000 }, async () => {
  const uri = folder.uri("overworked.chair");
  const text = readFileSync(
    new URL("../../../server/rules/strength/joint-overworked.chair", import.meta.url),
    "utf8",
  );
  const textDocument = { uri, languageId: "chair", version: 1, text };
  void desktop.client.sendNotification("textDocument/didOpen", { textDocument });
  web.notify("textDocument/didOpen", { textDocument });
  const ask = { textDocument: { uri } };
  for (const report of [
    () => desktop.client.sendRequest<DocumentDiagnosticReport>("textDocument/diagnostic", ask),
    () => web.request<DocumentDiagnosticReport>("textDocument/diagnostic", ask),
  ])
    await expect
      .poll(async () => told(await report()).join("\n"), { timeout: 60_000 })
      .toContain("joint-overworked");
  void desktop.client.sendNotification("textDocument/didClose", ask);
  web.notify("textDocument/didClose", ask);
});

it("nothing was asked for but chairs of this workspace", () => {
  expect(read.length).toBeGreaterThan(100);
  expect(read.filter((uri) => !uri.startsWith(folder.uri("")) || !uri.endsWith(".chair"))).toEqual([]);
});
