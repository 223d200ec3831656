/**
 * Random edits with random requests, as an editor sends them to the server as a process: each is answered, by a result or by an error that
 * the protocol has for it; findings are never of a version to come; after all edits the server has the text that the editor has; it says
 * nothing on standard error and gives its memory back.
 */
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { CancellationTokenSource, type PublishDiagnosticsParams } from "vscode-languageserver/node";
import { TextDocument } from "vscode-languageserver-textdocument";
import { features } from "../../server/main/features.ts";
import { spliced } from "../grammar/fixtures/random.ts";
import { sampleTexts } from "./samples.ts";
import { buildServer, newFolder, type Server, serving } from "./server-process.ts";
import { below, fuzz, oneOf } from "./tried.ts";

const folder = newFolder();
let server: Server;
let usual = 0;
/** The newest version of each file that the editor has sent. */
const versions = new Map<string, number>();
const early: PublishDiagnosticsParams[] = [];

beforeAll(async () => {
  await buildServer();
  for (const [file, text] of Object.entries(sampleTexts)) writeFileSync(join(folder.path, file), text);
  server = await serving(folder.path);
  server.client.onNotification("textDocument/publishDiagnostics", (found: PublishDiagnosticsParams) => {
    if ((found.version ?? 0) > (versions.get(found.uri) ?? 0)) early.push(found);
  });
}, 120_000);

afterAll(async () => {
  await server.client.sendRequest("shutdown");
  void server.client.sendNotification("exit");
  await server.ended;
  folder.remove();
});

/** Errors that a request may end with: broken off by its sender, overtaken by an edit, refused with a reason, or asked wrongly. */
const allowed = new Set([-32800, -32801, -32803, -32602]);
const methods = features.map(({ method }) => method);

const anywhere = (random: () => number, document: TextDocument) =>
  random() < 0.9
    ? document.positionAt(below(random, document.getText().length + 1))
    : { line: below(random, 1000), character: below(random, 1000) };

/** What a request of any method may need. */
function paramsFor(random: () => number, document: TextDocument): Record<string, unknown> {
  const [one, other] = [anywhere(random, document), anywhere(random, document)];
  const inOrder = one.line < other.line || (one.line === other.line && one.character <= other.character);
  const range = inOrder ? { start: one, end: other } : { start: other, end: one };
  return {
    textDocument: { uri: random() < 0.97 ? document.uri : folder.uri("not-there.chair") },
    position: one,
    positions: [one, other],
    range,
    ranges: [range],
    options: { insertSpaces: true, tabSize: below(random, 9) },
    ch: oneOf(random, ["\n", "}", "x"]),
    newName: oneOf(random, ["fresh", "front", "seat", "2nd", "", "a b", "x".repeat(300)]),
    context: {
      includeDeclaration: true,
      diagnostics: [],
      triggerKind: 1,
      ...(random() < 0.2 && { only: ["source.fixAll"] }),
    },
    query: oneOf(random, ["", "f", "rail", "🪑"]),
  };
}

let asks = 0;
fuzz("random edits and requests are answered", 8, async (random) => {
  const uri = folder.uri(`open-${below(random, 1e9)}.chair`);
  let document = TextDocument.create(uri, "chair", 1, oneOf(random, Object.values(sampleTexts)));
  versions.set(uri, 1);
  server.open(uri, document.getText());
  const answers: Promise<unknown>[] = [];
  const wrong: unknown[] = [];
  for (let step = 0; step < 25; step++) {
    if (random() < 0.3) {
      const from = below(random, document.getText().length + 1);
      const to = Math.min(document.getText().length, from + below(random, 120));
      const text = spliced(document.getText().slice(from, to), random);
      const range = { start: document.positionAt(from), end: document.positionAt(to) };
      const change = random() < 0.8 ? { range, text } : { text: spliced(document.getText(), random) };
      document = TextDocument.update(document, [change], document.version + 1);
      versions.set(uri, document.version);
      void server.client.sendNotification("textDocument/didChange", {
        textDocument: { uri, version: document.version },
        contentChanges: [change],
      });
      continue;
    }
    const method = oneOf(random, methods);
    const params = paramsFor(random, document);
    const source = new CancellationTokenSource();
    asks++;
    answers.push(
      server.client
        .sendRequest(method, params, source.token)
        .catch((error: { code?: number; message?: string }) => {
          if (!allowed.has(error.code ?? 0))
            wrong.push({ method, params, code: error.code, message: error.message });
        }),
    );
    if (random() < 0.15) source.cancel();
    if (random() < 0.3) await answers.at(-1);
  }
  await Promise.all(answers);
  const twin = folder.uri("twin.chair");
  const symbols = (of: string) =>
    server.client.sendRequest("textDocument/documentSymbol", { textDocument: { uri: of } });
  versions.set(twin, 1);
  server.open(twin, document.getText());
  const [has, shouldHave] = [await symbols(uri), await symbols(twin)];
  for (const closed of [uri, twin])
    void server.client.sendNotification("textDocument/didClose", { textDocument: { uri: closed } });
  if (JSON.stringify(has) !== JSON.stringify(shouldHave)) wrong.push({ has, shouldHave });
  if (early.length > 0) wrong.push({ early });
  if (server.said() !== "") wrong.push({ said: server.said() });
  usual ||= server.memory() ?? 0;
  return wrong.length === 0 ? undefined : wrong;
});

test("after them the server has given back what it held", () => {
  const now = server.memory() ?? 0;
  if (process.env.SEATWRIGHT_TIME !== undefined)
    console.info(`${asks} requests; ${Math.round(now)} MB, ${Math.round(usual)} after the first file`);
  expect(asks).toBeGreaterThan(50);
  expect(now - usual, "memory beside that after the first file, MB").toBeLessThan(150);
});
