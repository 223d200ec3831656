/**
 * How a session begins and ends: what client and server tell each other of themselves.
 */
import {
  type ClientCapabilities,
  DidChangeConfigurationNotification,
  DidChangeWatchedFilesNotification,
  ErrorCodes,
  type InitializeError,
  type InitializeParams,
  type InitializeResult,
  ResponseError,
  TextDocumentSyncKind,
} from "vscode-languageserver";
import { speak } from "../../../grammar/sentences/speech.ts";
import { features } from "../features.ts";
import { createSettings } from "../settings-store.ts";
import { translationOf } from "../translation.ts";
import type { Session } from "./session.ts";

/** Answers initialize, initialized and shutdown. */
export function shakeHands(session: Session): void {
  const { connection } = session;
  connection.onInitialize((params) => initialize(session, params));
  connection.onInitialized(() => register(session));
  connection.onShutdown(() => {
    session.state = "shut";
    session.schedule.dispose();
  });
}

function initialize(
  session: Session,
  params: InitializeParams,
): InitializeResult | ResponseError<InitializeError> {
  if (session.state !== "new")
    return new ResponseError(ErrorCodes.InvalidRequest, "Initialize has been said; it is said once.");
  const client = (params as Partial<InitializeParams> | null)?.capabilities;
  if (!client) return new ResponseError(ErrorCodes.InvalidParams, "initialize lacks capabilities.");
  const { connection, world, host } = session;
  const options: unknown = params.initializationOptions;
  world.client = client;
  world.folders = foldersOf(params);
  session.pulls = client.textDocument?.diagnostic !== undefined;
  session.settings = createSettings(connection, client.workspace?.configuration === true, options);
  speak(translationOf(options));
  host.told?.(options);
  session.state = "ready";
  return {
    serverInfo: { name: "seatwright", version: host.version },
    capabilities: {
      textDocumentSync: { openClose: true, change: TextDocumentSyncKind.Incremental },
      workspace: { workspaceFolders: { supported: true, changeNotifications: true } },
      ...Object.assign({}, ...advertised(client).map((feature) => feature.capability ?? {})),
    },
  };
}

/** Asks the client, where it can, for word of settings, of files and of folders. */
function register({ connection, world }: Session): void {
  const { workspace } = world.client;
  if (workspace?.didChangeConfiguration?.dynamicRegistration) {
    void connection.client.register(DidChangeConfigurationNotification.type, { section: "seatwright" });
  }
  if (workspace?.didChangeWatchedFiles?.dynamicRegistration) {
    void connection.client.register(DidChangeWatchedFilesNotification.type, {
      watchers: [{ globPattern: "**/*.chair" }],
    });
  }
  if (workspace?.workspaceFolders) {
    connection.workspace.onDidChangeWorkspaceFolders(({ added, removed }) => {
      const gone = new Set(removed.map((folder) => folder.uri));
      const kept = world.folders.filter((uri) => !gone.has(uri));
      world.folders = [...kept, ...added.map((folder) => folder.uri)];
    });
  }
}

/** The features offered to this client. */
function advertised(client: ClientCapabilities) {
  return features.filter((feature) => feature.when?.(client) ?? true);
}

function foldersOf({ workspaceFolders, rootUri }: InitializeParams): string[] {
  if (workspaceFolders) return workspaceFolders.map((folder) => folder.uri);
  return rootUri ? [rootUri] : [];
}
