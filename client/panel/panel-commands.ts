/**
 * The commands of the drawing panel, which stand in the title bar above it and in the palette.
 */
import { commands, Disposable } from "vscode";
import type { Panels } from "./panels.ts";
import { lookCommand, lookNames, showCommand, showNames } from "./webview/showable.ts";

/** Registers them until disposed. */
export function panelCommands(panels: Panels): Disposable {
  const does = (command: string, run: () => void) => commands.registerCommand(command, run);
  return Disposable.from(
    ...lookNames.map((look) => does(lookCommand(look), () => panels.send({ type: "look", look }))),
    ...showNames.flatMap((name) =>
      [true, false].map((on) => does(showCommand(name, on), () => panels.send({ type: "show", name, on }))),
    ),
    does("seatwright.drawing.zoomIn", () => panels.send({ type: "zoom", nearer: true })),
    does("seatwright.drawing.zoomOut", () => panels.send({ type: "zoom", nearer: false })),
    does("seatwright.drawing.openWords", () => panels.send({ type: "words", on: true })),
    does("seatwright.drawing.closeWords", () => panels.send({ type: "words", on: false })),
    does("seatwright.drawing.lock", () => panels.lock(true)),
    does("seatwright.drawing.unlock", () => panels.lock(false)),
  );
}
