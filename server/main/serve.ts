/**
 * The language server over any connection: a process's standard streams, its parent's channel or a web worker's messages.
 */

import {
  type ClientCapabilities,
  type Connection,
  DidChangeConfigurationNotification,
  DidChangeWatchedFilesNotification,
  ErrorCodes,
  type InitializeError,
  type InitializeParams,
  type InitializeResult,
  ResponseError,
  TextDocumentSyncKind,
} from "vscode-languageserver";
import { speak } from "../../grammar/sentences/speech.ts";
import { finish } from "../../grammar/steps.ts";
import { type OverlayName, overlayNames } from "../drawing/sheet.ts";
import { summary } from "../editor/summary.ts";
import { createComparing, isOldChair } from "./comparing.ts";
import { createDrawings } from "./drawings.ts";
import { comparingRequests } from "./features/comparing.ts";
import { pagingRequests } from "./features/paging.ts";
import { rangingRequests } from "./features/ranging.ts";
import { features } from "./features.ts";
import type { Files } from "./files.ts";
import { createLooks } from "./looks.ts";
import { missingIn } from "./missing-params.ts";
import {
  DRAW,
  type DrawParams,
  SUMMARY,
  type SummaryParams,
  WATCH_DRAWING,
  type WatchDrawingParams,
} from "./protocol.ts";
import { guard } from "./run-safe.ts";
import { createSchedule, type Timing } from "./schedule.ts";
import type { Services } from "./services.ts";
import { createSettings, type SettingsStore } from "./settings-store.ts";
import { translationOf } from "./translation.ts";
import { createViews } from "./views.ts";
import { filesCome, type World } from "./world.ts";

interface Host {
  services: Services;
  files: Files;
  version: string;
  timing?: Timing;
  /** Hears what the client sends at first. */
  told?(options: unknown): void;
  /** How long a hover may be worked at, ms. */
  patience?: number;
}

/** A hover comes up after about a third of a second anyway. */
const PATIENCE = 500;

/** No files, but the turns at which the client is asked to ask again: for everything, or for hints and lenses alone. */
const REFRESH = "refresh";
const REFRESH_HINTS = "refresh hints";

/** Serves one client until it says exit. */
export function serve(
  connection: Connection,
  { services, files, version, timing, told, patience = PATIENCE }: Host,
): void {
  const views = createViews(services, files);
  const runSafe = guard(connection.console);
  const drawings = createDrawings(
    services.draw,
    (error) => report("drawing", error),
    createComparing((asked) => finish(services.study(asked))),
  );
  const schedule = createSchedule(look, timing);
  let state: "new" | "ready" | "shut" = "new";
  let settings: SettingsStore = createSettings(connection, false, undefined);
  let pulls = false;
  const looks = createLooks({
    connection,
    views,
    files,
    drawings,
    settings: (uri) => settings.of(uri),
    late: services.late,
    pulls: () => pulls,
    refresh: (findings) => schedule.touch(findings ? REFRESH : REFRESH_HINTS),
    report,
  });
  const world: World = {
    services,
    views,
    files,
    client: {},
    folders: [],
    settings: (uri) => settings.of(uri),
    patience,
  };

  function report(name: string, error: unknown) {
    void runSafe(name, undefined, { isCancellationRequested: false } as never, () => {
      throw error;
    });
  }

  /** Findings and drawing of one file as it is now. */
  function look(uri: string) {
    if (uri === REFRESH || uri === REFRESH_HINTS) return refresh(uri === REFRESH);
    const view = views.opened(uri);
    if (!view || state === "shut") return;
    return looks.look(view).catch((error) => report("looking at a file", error));
  }

  /** Files that read this one are looked at again. */
  function touchDependents(uri: string) {
    const others = views.dependents(uri).filter((view) => view.uri !== uri);
    for (const view of others) schedule.touch(view.uri);
    if (others.length) schedule.touch(REFRESH);
  }

  /** Asks the client to ask again for what it pulls: more has changed than the file being typed in. */
  function refresh(all: boolean) {
    const { workspace } = world.client;
    const wanted = [
      all && pulls && workspace?.diagnostics?.refreshSupport && "workspace/diagnostic/refresh",
      workspace?.inlayHint?.refreshSupport && "workspace/inlayHint/refresh",
      workspace?.codeLens?.refreshSupport && "workspace/codeLens/refresh",
      all && workspace?.semanticTokens?.refreshSupport && "workspace/semanticTokens/refresh",
    ];
    for (const method of wanted) if (method) connection.sendRequest(method).catch(() => undefined);
  }

  function lookAtAll() {
    for (const view of views.all()) schedule.touch(view.uri);
    schedule.touch(REFRESH);
  }

  connection.onInitialize((params): InitializeResult | ResponseError<InitializeError> => {
    if (state !== "new")
      return new ResponseError(ErrorCodes.InvalidRequest, "Initialize has been said; it is said once.");
    const client = (params as Partial<InitializeParams> | null)?.capabilities;
    if (!client) return new ResponseError(ErrorCodes.InvalidParams, "initialize lacks capabilities.");
    world.client = client;
    world.folders = foldersOf(params);
    pulls = client.textDocument?.diagnostic !== undefined;
    settings = createSettings(
      connection,
      client.workspace?.configuration === true,
      params.initializationOptions,
    );
    speak(translationOf(params.initializationOptions));
    told?.(params.initializationOptions);
    state = "ready";
    return {
      serverInfo: { name: "seatwright", version },
      capabilities: {
        textDocumentSync: { openClose: true, change: TextDocumentSyncKind.Incremental },
        workspace: { workspaceFolders: { supported: true, changeNotifications: true } },
        ...Object.assign({}, ...advertised(client).map((feature) => feature.capability ?? {})),
      },
    };
  });

  connection.onInitialized(() => {
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
        world.folders = [
          ...world.folders.filter((uri) => !gone.has(uri)),
          ...added.map((folder) => folder.uri),
        ];
      });
    }
  });

  connection.onShutdown(() => {
    state = "shut";
    schedule.dispose();
  });

  connection.onDidOpenTextDocument(({ textDocument: { uri, languageId, version: number, text } }) => {
    views.open(uri, languageId, number, text);
    schedule.touch(uri);
    touchDependents(uri);
  });

  connection.onDidChangeTextDocument(({ textDocument: { uri, version: number }, contentChanges }) => {
    views.change(uri, number, contentChanges);
    schedule.touch(uri);
    touchDependents(uri);
  });

  connection.onDidCloseTextDocument(({ textDocument: { uri } }) => {
    schedule.drop(uri);
    drawings.forget(uri);
    looks.forget(uri);
    const dependents = views.dependents(uri);
    views.close(uri);
    if (!pulls) void connection.sendDiagnostics({ uri, diagnostics: [] });
    for (const view of dependents) schedule.touch(view.uri);
    if (dependents.length) schedule.touch(REFRESH);
  });

  connection.onDidChangeWatchedFiles(({ changes }) => {
    for (const { uri } of changes) {
      if (views.opened(uri)) continue;
      views.forget(uri);
      touchDependents(uri);
    }
  });

  connection.onDidChangeConfiguration(({ settings: given }) => {
    settings.changed(given);
    lookAtAll();
  });

  files.onArrival?.((uri) => {
    views.arrived(uri);
    touchDependents(uri);
  });

  connection.onNotification(
    WATCH_DRAWING,
    ({ uri, watch, overlays, post, compareWith, pictorial, strength }: WatchDrawingParams) => {
      if (typeof uri !== "string") return;
      drawings.watch(views.opened(uri)?.uri ?? uri, watch === true, {
        overlays: known(overlays),
        ...(typeof post === "string" && { post }),
        ...(isOldChair(compareWith) && { compareWith }),
        ...(strength === true && { strength: true as const }),
        ...((pictorial === "whole" || pictorial === "parts") && { pictorial }),
      });
      const view = views.opened(uri);
      if (view && watch) schedule.touch(view.uri);
    },
  );

  connection.onRequest(SUMMARY, ({ uri }: SummaryParams, token): unknown => {
    const view = typeof uri === "string" ? views.opened(uri) : undefined;
    return (
      refusal(state) ??
      runSafe("summary", null, token, async () => {
        if (view) await filesCome(view, files);
        return view ? summary(view) : null;
      })
    );
  });

  connection.onRequest(DRAW, ({ uri }: DrawParams, token): unknown => {
    const view = typeof uri === "string" ? views.opened(uri) : undefined;
    const stop = () => token.isCancellationRequested;
    const drawn = async () =>
      (view && (await drawings.draw(view, await settings.of(view.uri), stop))) ?? null;
    return refusal(state) ?? runSafe("draw", null, token, drawn);
  });

  for (const { name, method, empty, answer } of [
    ...features,
    ...rangingRequests,
    ...comparingRequests,
    ...pagingRequests,
  ]) {
    connection.onRequest(method, (params, token) => {
      const refused = refusal(state) ?? lacking(method, params);
      return refused ?? runSafe(name, empty, token, () => answer(world, params as never, token));
    });
  }

  connection.listen();
}

/** The features offered to this client. */
function advertised(client: ClientCapabilities) {
  return features.filter((feature) => feature.when?.(client) ?? true);
}

/** Those overlays that there are, of whatever was sent. */
function known(sent: unknown): OverlayName[] {
  return Array.isArray(sent) ? overlayNames.filter((name) => sent.includes(name)) : [];
}

/** The error of a request that lacks what it cannot be answered without. */
function lacking(method: string, params: unknown): ResponseError | undefined {
  const missing = missingIn(method, params);
  return missing === undefined
    ? undefined
    : new ResponseError(ErrorCodes.InvalidParams, `${method} lacks ${missing}.`);
}

function refusal(state: "new" | "ready" | "shut"): ResponseError | undefined {
  if (state === "new") return new ResponseError(ErrorCodes.ServerNotInitialized, "Say initialize first.");
  if (state === "shut") return new ResponseError(ErrorCodes.InvalidRequest, "The server has been shut down.");
  return undefined;
}

function foldersOf({ workspaceFolders, rootUri }: InitializeParams): string[] {
  if (workspaceFolders) return workspaceFolders.map((folder) => folder.uri);
  return rootUri ? [rootUri] : [];
}
