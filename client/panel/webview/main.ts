/**
 * The panel's own script: shows each drawing that comes, says when it is out of date, and tells which part was clicked.
 */
import type { DrawingParams } from "../../../server/main/protocol.ts";
import type { FromPanel, ToPanel } from "../messages.ts";
import { createLooking, type Look } from "./looking.ts";
import { createMakersRules } from "./makers-rules.ts";
import { fillPartsList, partNames } from "./parts-list.ts";
import { type PartElements, sheetElements } from "./sheet-view.ts";

interface State {
  uri?: string;
  look?: Look;
}

declare function acquireVsCodeApi(): {
  postMessage(message: FromPanel): void;
  getState(): State | undefined;
  setState(state: State): void;
};

const vscode = acquireVsCodeApi();
const words = document.getElementById("state") as HTMLElement;
const place = document.getElementById("sheet") as HTMLElement;
const named = document.getElementById("named") as HTMLElement;
const list = document.querySelector("#parts ul") as HTMLElement;
let parts: PartElements = new Map();
let highlighted: string[] = [];
let pointedAt: string | undefined;

const makersRules = createMakersRules({
  place: document.getElementById("rules") as HTMLElement,
  moved: (name, value, done) => vscode.postMessage({ type: "adjust", name, value, done }),
});
const looking = createLooking({
  place,
  look: vscode.getState()?.look ?? "all",
  changed: (look) => keep({ look }),
});
addEventListener("message", ({ data }: MessageEvent<ToPanel>) => {
  if (data.type === "subject") keep({ uri: data.uri });
  if (data.type === "drawing") show(data.drawing);
  if (data.type === "highlight") {
    highlighted = data.parts;
    mark("caret", highlighted);
  }
});
document.getElementById("looks")?.addEventListener("click", ({ target }) => {
  const look = target instanceof HTMLElement && target.dataset.look;
  if (look) looking.at(look);
});
for (const holder of [place, list]) {
  holder.addEventListener("click", ({ target }) => {
    const part = partOf(target);
    if (part) vscode.postMessage({ type: "reveal", part });
  });
  holder.addEventListener("pointerover", ({ target }) => point(partOf(target)));
  holder.addEventListener("pointerleave", () => point(undefined));
}
list.addEventListener("focusin", ({ target }) => point(partOf(target)));
list.addEventListener("focusout", () => point(undefined));
vscode.postMessage({ type: "ready" });

function show(drawing: DrawingParams) {
  if (drawing.sheet) {
    const made = sheetElements(drawing.sheet);
    parts = made.parts;
    looking.show(drawing.sheet, made.svg);
    fillPartsList(list, partNames(drawing.sheet));
    mark("caret", highlighted);
    mark("pointed-at", pointedAt ? [pointedAt] : []);
  }
  if (drawing.adjustables) makersRules.show(drawing.adjustables);
  document.body.classList.toggle("stale", drawing.stale);
  say(drawing);
}

/** Words under the drawing; a screen reader hears it when it changes. */
function say({ sheet, stale, reason = "" }: DrawingParams) {
  const next = stale ? `Out of date. ${reason}` : sheet ? "" : reason;
  if (words.textContent === next) return;
  words.textContent = next;
  words.title = next;
}

function point(part: string | undefined) {
  if (part === pointedAt) return;
  pointedAt = part;
  named.textContent = part ?? "";
  mark("pointed-at", part ? [part] : []);
}

/** Puts a class on all that is drawn of these parts, and takes it from the others. */
function mark(className: string, names: readonly string[]) {
  for (const [part, elements] of parts) {
    for (const drawn of elements) drawn.classList.toggle(className, names.includes(part));
  }
}

function partOf(target: EventTarget | null): string | undefined {
  return target instanceof SVGElement || target instanceof HTMLElement ? target.dataset.part : undefined;
}

/** What comes back after the window is loaded anew. */
function keep(more: State) {
  vscode.setState({ ...vscode.getState(), ...more });
}
