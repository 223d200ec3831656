import { existsSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import * as protocol from "vscode-languageserver";
import { leftOut } from "../../../server/editor/left-out.ts";
import { features } from "../../../server/main/features.ts";
import { connect } from "./connected.ts";
import { standIn } from "./stand-in.ts";

const uri = "file:///mess/chair.chair";

/** A client that can do everything the server looks for. */
const everything: protocol.ClientCapabilities = {
  workspace: { diagnostics: { refreshSupport: true } },
  textDocument: {
    diagnostic: {},
    rename: { prepareSupport: true },
    definition: { linkSupport: true },
    completion: { completionItem: { snippetSupport: true } },
  },
};

/** What each advertised capability lets a client ask. */
const asks: Record<string, string[]> = {
  diagnosticProvider: ["textDocument/diagnostic"],
  hoverProvider: ["textDocument/hover"],
  documentSymbolProvider: ["textDocument/documentSymbol"],
  semanticTokensProvider: ["textDocument/semanticTokens/full", "textDocument/semanticTokens/range"],
  inlayHintProvider: ["textDocument/inlayHint"],
  codeLensProvider: ["textDocument/codeLens"],
  documentLinkProvider: ["textDocument/documentLink"],
  completionProvider: ["textDocument/completion"],
  definitionProvider: ["textDocument/definition"],
  referencesProvider: ["textDocument/references"],
  documentHighlightProvider: ["textDocument/documentHighlight"],
  renameProvider: ["textDocument/rename", "textDocument/prepareRename"],
  workspaceSymbolProvider: ["workspace/symbol"],
  codeActionProvider: ["textDocument/codeAction"],
  documentFormattingProvider: ["textDocument/formatting"],
  documentRangeFormattingProvider: ["textDocument/rangeFormatting", "textDocument/rangesFormatting"],
  documentOnTypeFormattingProvider: ["textDocument/onTypeFormatting"],
  foldingRangeProvider: ["textDocument/foldingRange"],
  selectionRangeProvider: ["textDocument/selectionRange"],
};

/** All that any of the requests needs, of one file. */
function wholeRequest(uri: string) {
  const start = { line: 0, character: 0 };
  const range = { start, end: { line: 0, character: 5 } };
  return {
    textDocument: { uri },
    position: { line: 0, character: 1 },
    positions: [start],
    range,
    ranges: [range, range],
    context: { diagnostics: [], includeDeclaration: true },
    options: { tabSize: 2, insertSpaces: true },
    query: "",
    ch: "}",
    newName: "other",
  };
}

const handled = new Set(features.map(({ method }) => method));

describe("every advertised capability", () => {
  it("is one whose methods are handled, and every handled method is advertised", async () => {
    const { result } = await connect(standIn(), { capabilities: everything });
    const { textDocumentSync, workspace, ...advertised } = result.capabilities;
    expect(textDocumentSync).toMatchObject({ openClose: true, change: 2 });
    expect(workspace?.workspaceFolders?.supported).toBe(true);
    expect(Object.keys(advertised).sort()).toEqual(Object.keys(asks).sort());
    expect([...handled].sort()).toEqual(Object.values(asks).flat().sort());
  });

  it.each([...new Set(features.map(({ name }) => name))])("has a file and a test of its own: %s", (name) => {
    const test = new URL(`../editor/${name}.test.ts`, import.meta.url);
    expect(existsSync(new URL(`../../../server/editor/${name}.ts`, import.meta.url))).toBe(true);
    expect(readFileSync(test, "utf8")).toContain(`server/editor/${name}.ts`);
  });

  it.each(features.map(({ method }) => method))("answers over the connection: %s", async (method) => {
    const c = await connect(standIn(), { capabilities: everything });
    c.open(uri, "wrong\n");
    const asked = c.client.sendRequest(method, wholeRequest(uri));
    if (/[rR]ename/.test(method))
      await expect(asked).rejects.toMatchObject({ code: protocol.LSPErrorCodes.RequestFailed });
    else expect(await asked).toBeDefined();
    expect(c.logged).toEqual([]);
  });

  it.each(features.map(({ method }) => method))(
    "gives the empty answer for a file that is not there: %s",
    async (method) => {
      const c = await connect(standIn(), { capabilities: everything });
      const feature = features.find((each) => each.method === method);
      const answer = await c.client.sendRequest(method, wholeRequest("file:///mess/gone.chair"));
      expect(answer).toEqual(feature?.empty);
    },
  );
});

describe("every method of the protocol", () => {
  const lifecycle = ["initialize", "shutdown"];
  const requests = Object.values(protocol).flatMap((each) => {
    const { method, messageDirection, type } = each as {
      method?: string;
      messageDirection?: string;
      type?: { numberOfParams?: number };
    };
    const isRequest =
      type instanceof protocol.ProtocolRequestType || type instanceof protocol.ProtocolRequestType0;
    return typeof method === "string" && messageDirection !== "serverToClient" && isRequest ? [method] : [];
  });

  it("that a client may ask is answered, or left out with a reason", () => {
    expect(requests.length).toBeGreaterThan(40);
    const known = new Set([...handled, ...lifecycle, ...Object.keys(leftOut)]);
    expect(requests.filter((method) => !known.has(method))).toEqual([]);
  });

  it("is not both answered and left out", () => {
    expect(Object.keys(leftOut).filter((method) => handled.has(method))).toEqual([]);
    expect(Object.values(leftOut).every((reason) => reason.endsWith("."))).toBe(true);
  });
});
