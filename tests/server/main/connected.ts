import { PassThrough } from "node:stream";
import type { InitializeParams, InitializeResult, PublishDiagnosticsParams } from "vscode-languageserver";
import {
  type Connection,
  createConnection,
  createMessageConnection,
  type MessageConnection,
  StreamMessageReader,
  StreamMessageWriter,
} from "vscode-languageserver/node";
import { cancelling } from "../../../server/main/cancelling.ts";
import type { Files } from "../../../server/main/files.ts";
import { DRAWING, type DrawingParams } from "../../../server/main/protocol.ts";
import type { Services } from "../../../server/main/put-to-work.ts";
import type { Timing } from "../../../server/main/schedule.ts";
import { serve } from "../../../server/main/serve.ts";

export interface Connected {
  client: MessageConnection;
  result: InitializeResult;
  /** Diagnostics as they came. */
  published: PublishDiagnosticsParams[];
  drawings: DrawingParams[];
  logged: string[];
  open(uri: string, text: string, version?: number): void;
  change(uri: string, version: number, text: string): void;
  close(uri: string): void;
  /** The first published set for which this holds, past or to come. */
  diagnosticsWhen(holds: (published: PublishDiagnosticsParams) => boolean): Promise<PublishDiagnosticsParams>;
  drawingWhen(holds: (drawing: DrawingParams) => boolean): Promise<DrawingParams>;
}

export const noFiles: Files = { read: () => undefined, forget: () => {}, list: async () => [] };

/** A client and a server in one process, joined by streams, past `initialized`. */
export async function connect(
  services: Services,
  {
    files = noFiles,
    capabilities = {},
    timing = { wait: 1, longest: 5 },
    patience,
    ...params
  }: Partial<InitializeParams> & {
    files?: Files | ((connection: Connection) => Files);
    timing?: Timing;
    patience?: number;
  } = {},
  prepare: (client: MessageConnection) => void = () => {},
): Promise<Connected> {
  const up = new PassThrough();
  const down = new PassThrough();
  const server = createConnection(new StreamMessageReader(up), new StreamMessageWriter(down), {
    connectionStrategy: cancelling,
  });
  const readFiles = typeof files === "function" ? files(server) : files;
  serve(server, {
    services,
    files: readFiles,
    version: "0",
    timing,
    ...(patience !== undefined && { patience }),
  });

  const client = createMessageConnection(new StreamMessageReader(down), new StreamMessageWriter(up));
  const published = record<PublishDiagnosticsParams>(client, "textDocument/publishDiagnostics");
  const drawings = record<DrawingParams>(client, DRAWING);
  const logs = record<{ message: string }>(client, "window/logMessage");
  prepare(client);
  client.listen();

  const result = await client.sendRequest<InitializeResult>("initialize", {
    processId: null,
    rootUri: null,
    capabilities,
    ...params,
  });
  void client.sendNotification("initialized", {});
  return {
    client,
    result,
    published: published.all,
    drawings: drawings.all,
    get logged() {
      return logs.all.map((log) => log.message);
    },
    open: (uri, text, version = 1) =>
      void client.sendNotification("textDocument/didOpen", {
        textDocument: { uri, languageId: "chair", version, text },
      }),
    change: (uri, version, text) =>
      void client.sendNotification("textDocument/didChange", {
        textDocument: { uri, version },
        contentChanges: [{ text }],
      }),
    close: (uri) => void client.sendNotification("textDocument/didClose", { textDocument: { uri } }),
    diagnosticsWhen: published.when,
    drawingWhen: drawings.when,
  };
}

function record<T>(client: MessageConnection, method: string) {
  const all: T[] = [];
  const waiting: { holds: (item: T) => boolean; resolve: (item: T) => void }[] = [];
  client.onNotification(method, (item: T) => {
    all.push(item);
    for (const wait of waiting) if (wait.holds(item)) wait.resolve(item);
  });
  return {
    all,
    when: (holds: (item: T) => boolean) =>
      new Promise<T>((resolve) => {
        const found = all.find(holds);
        if (found) resolve(found);
        else waiting.push({ holds, resolve });
      }),
  };
}
