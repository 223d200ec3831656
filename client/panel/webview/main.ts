/**
 * The panel's own script: shows each drawing that comes, says when it is out of date, and tells which part was clicked.
 */
import type { DrawingParams } from "../../../server/main/protocol.ts";
import type { FromPanel, PanelState, ToPanel } from "../messages.ts";
import { fitWords } from "./fit-words.ts";
import { type PartElements, sheetElements } from "./sheet-view.ts";

declare function acquireVsCodeApi(): {
  postMessage(message: FromPanel): void;
  getState(): PanelState | undefined;
  setState(state: PanelState): void;
};

const vscode = acquireVsCodeApi();
const state = document.getElementById("state") as HTMLElement;
const sheet = document.getElementById("sheet") as HTMLElement;
let parts: PartElements = new Map();
let highlighted: string[] = [];
let pointedAt: string | undefined;

addEventListener("message", ({ data }: MessageEvent<ToPanel>) => {
  if (data.type === "subject") vscode.setState({ uri: data.uri });
  if (data.type === "drawing") show(data.drawing);
  if (data.type === "highlight") {
    highlighted = data.parts;
    mark("caret", highlighted);
  }
});
addEventListener("resize", () => fitWords(sheet));
sheet.addEventListener("click", ({ target }) => {
  const part = partOf(target);
  if (part) vscode.postMessage({ type: "reveal", part });
});
sheet.addEventListener("pointerover", ({ target }) => point(partOf(target)));
sheet.addEventListener("pointerleave", () => point(undefined));
vscode.postMessage({ type: "ready" });

function show(drawing: DrawingParams) {
  if (drawing.sheet) {
    const made = sheetElements(drawing.sheet);
    parts = made.parts;
    sheet.replaceChildren(made.svg);
    fitWords(sheet);
    mark("caret", highlighted);
    mark("pointed-at", pointedAt ? [pointedAt] : []);
  }
  document.body.classList.toggle("stale", drawing.stale);
  say(drawing);
}

/** One line of words above the drawing; a screen reader hears it when it changes. */
function say({ sheet, stale, reason = "" }: DrawingParams) {
  const words = stale ? `Out of date. ${reason}` : sheet ? "" : reason;
  if (state.textContent !== words) state.textContent = words;
}

function point(part: string | undefined) {
  if (part === pointedAt) return;
  pointedAt = part;
  mark("pointed-at", part ? [part] : []);
}

/** Puts a class on all that is drawn of these parts, and takes it from the others. */
function mark(className: string, names: readonly string[]) {
  for (const [part, elements] of parts) {
    for (const drawn of elements) drawn.classList.toggle(className, names.includes(part));
  }
}

function partOf(target: EventTarget | null): string | undefined {
  return target instanceof SVGElement ? target.dataset.part : undefined;
}
