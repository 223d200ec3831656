/**
 * What the manifest knows of the panel in use: which of each pair of commands can be run.
 */
import { commands } from "vscode";
import type { DrawingPanel } from "./panel.ts";
import { showKey, showNames } from "./webview/showable.ts";

const last = new Map<string, boolean>();

function set(key: string, value: boolean): void {
  if (last.get(key) === value) return;
  last.set(key, value);
  void commands.executeCommand("setContext", key, value);
}

/** Tells of the panel in use; nothing when no panel is in sight. */
export function tellContext(held: { drawing: DrawingPanel; locked: boolean } | undefined): void {
  set("seatwright.drawing.inSight", held !== undefined);
  set("seatwright.drawing.locked", held?.locked ?? false);
  set("seatwright.drawing.words", held?.drawing.shown.words ?? false);
  for (const name of showNames) set(showKey(name), held?.drawing.shown.names.includes(name) ?? false);
}
