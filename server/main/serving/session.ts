/**
 * One client's session: its views, what is looked at again and when, and how far the two have come in their exchange.
 */
import { type Connection, ErrorCodes, ResponseError } from "vscode-languageserver";
import { finish } from "../../../grammar/steps.ts";
import type { View } from "../../editor/view.ts";
import { createComparing } from "../comparing.ts";
import { createDrawings, type Drawings } from "../drawings.ts";
import type { Files } from "../files.ts";
import { createLooks, type Looks } from "../looks.ts";
import type { Services } from "../put-to-work.ts";
import { guard, type RunSafe } from "../run-safe.ts";
import { createSchedule, type Schedule, type Timing } from "../schedule.ts";
import { createSettings, type SettingsStore } from "../settings-store.ts";
import { createViews, type Views } from "../views.ts";
import type { World } from "../world.ts";

export interface Host {
  services: Services;
  files: Files;
  version: string;
  timing?: Timing;
  /** Hears that a file is looked at. */
  looks?(): void;
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

export class Session {
  state: "new" | "ready" | "shut" = "new";
  settings: SettingsStore;
  /** The client asks for findings, and is not sent them. */
  pulls = false;
  readonly connection: Connection;
  readonly host: Host;
  readonly views: Views;
  readonly drawings: Drawings;
  readonly schedule: Schedule;
  readonly looks: Looks;
  readonly world: World;
  readonly runSafe: RunSafe;

  constructor(connection: Connection, host: Host) {
    const { services, files, timing, patience = PATIENCE } = host;
    this.connection = connection;
    this.host = host;
    this.settings = createSettings(connection, false, undefined);
    this.views = createViews(services, files);
    this.runSafe = guard(connection.console);
    this.drawings = createDrawings(
      services.draw,
      (error) => this.report("drawing", error),
      createComparing((asked) => finish(services.study(asked))),
    );
    this.schedule = createSchedule((uri) => this.#look(uri), timing);
    this.looks = createLooks({
      connection,
      views: this.views,
      files,
      drawings: this.drawings,
      settings: (uri) => this.settings.of(uri),
      late: services.late,
      pulls: () => this.pulls,
      refresh: (findings) => this.schedule.touch(findings ? REFRESH : REFRESH_HINTS),
      report: (name, error) => this.report(name, error),
    });
    this.world = {
      services,
      views: this.views,
      files,
      client: {},
      folders: [],
      settings: (uri) => this.settings.of(uri),
      patience,
    };
  }

  report(name: string, error: unknown): void {
    void this.runSafe(name, undefined, { isCancellationRequested: false } as never, () => {
      throw error;
    });
  }

  /** Why no request can be answered now, if none can. */
  refusal(): ResponseError | undefined {
    if (this.state === "new")
      return new ResponseError(ErrorCodes.ServerNotInitialized, "Say initialize first.");
    if (this.state === "shut")
      return new ResponseError(ErrorCodes.InvalidRequest, "The server has been shut down.");
    return undefined;
  }

  /** Files that read this one are looked at again. */
  touchDependents(uri: string): void {
    this.touchAll(this.views.dependents(uri).filter((view) => view.uri !== uri));
  }

  touchAll(views: readonly View[]): void {
    for (const view of views) this.schedule.touch(view.uri);
    if (views.length > 0) this.schedule.touch(REFRESH);
  }

  lookAtAll(): void {
    for (const view of this.views.all()) this.schedule.touch(view.uri);
    this.schedule.touch(REFRESH);
  }

  /** Findings and drawing of one file as it is now. */
  #look(uri: string): Promise<void> | void {
    if (uri === REFRESH || uri === REFRESH_HINTS) return this.#refresh(uri === REFRESH);
    const view = this.views.opened(uri);
    if (!view || this.state === "shut") return;
    this.host.looks?.();
    return this.looks.look(view).catch((error) => this.report("looking at a file", error));
  }

  /** Asks the client to ask again for what it pulls: more has changed than the file being typed in. */
  #refresh(all: boolean): void {
    const { workspace } = this.world.client;
    const wanted = [
      all && this.pulls && workspace?.diagnostics?.refreshSupport && "workspace/diagnostic/refresh",
      workspace?.inlayHint?.refreshSupport && "workspace/inlayHint/refresh",
      workspace?.codeLens?.refreshSupport && "workspace/codeLens/refresh",
      all && workspace?.semanticTokens?.refreshSupport && "workspace/semanticTokens/refresh",
    ];
    for (const method of wanted) if (method) this.connection.sendRequest(method).catch(() => undefined);
  }
}
