/**
 * Settings by folder: asked of the client for each file when it can say, else what it sent once for all.
 */
import type { Connection } from "vscode-languageserver";
import { readSettings, type Settings } from "../editor/settings.ts";

const SECTION = "seatwright";

export interface SettingsStore {
  of(uri: string): Promise<Settings>;
  /** Settings have changed; `given` is what the client sent along, if it pushes them. */
  changed(given: unknown): void;
}

/** Settings over a connection; `perFolder` when the client answers `workspace/configuration`. */
export function createSettings(connection: Connection, perFolder: boolean, initial: unknown): SettingsStore {
  let common = readSettings(initial);
  let known = new Map<string, Promise<Settings>>();

  function ask(uri: string): Promise<Settings> {
    const asked = connection.workspace
      .getConfiguration({ scopeUri: uri, section: SECTION })
      .then(readSettings)
      .catch(() => common);
    known.set(uri, asked);
    return asked;
  }

  return {
    of: async (uri) => (perFolder ? (known.get(uri) ?? ask(uri)) : common),
    changed(given) {
      known = new Map();
      const section = (given as Record<string, unknown> | null | undefined)?.[SECTION];
      if (section !== undefined) common = readSettings(section);
    },
  };
}
