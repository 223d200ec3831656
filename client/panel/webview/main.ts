/**
 * The panel's own script: shows each drawing that comes, says when it is out of date, and tells which part was clicked.
 */
import type { Point } from "../../../server/drawing/sheet.ts";
import type { DrawingParams } from "../../../server/main/protocol.ts";
import type { FromPanel, ToPanel } from "../messages.ts";
import { createAnnouncer } from "./announcer.ts";
import { arranged, type Laid, sameWay } from "./arrange.ts";
import { createBoardsView } from "./boards-view.ts";
import { createCompareView } from "./compare-view.ts";
import { fillInWords, partNames } from "./in-words.ts";
import { createLooking, KEY_ZOOM, type Look } from "./looking.ts";
import { createMakersRules } from "./makers-rules.ts";
import { loadPictorial, type Pictorial, type PictorialWords } from "./pictorial-view.ts";
import { createPointing } from "./pointing.ts";
import { createPostView } from "./post-view.ts";
import { sheetElements } from "./sheet-view.ts";
import { createShows, isShown, overlaysOn } from "./shows.ts";

interface State {
  uri?: string;
  look?: Look;
  turned?: string[];
  /** How the pictorial view is looked at. */
  pictorial?: object;
}

declare function acquireVsCodeApi(): {
  postMessage(message: FromPanel): void;
  getState(): State | undefined;
  setState(state: State): void;
};

const vscode = acquireVsCodeApi();
const ownScript = document.currentScript as HTMLScriptElement;
const found = (id: string) => document.getElementById(id) as HTMLElement;
const place = found("sheet");
const state = found("state");
const inWords = document.querySelector("#words div") as HTMLElement;
let latest: DrawingParams | undefined;
let laid: Laid | undefined;
let pictorial: Pictorial | undefined;
let pictorialWords: PictorialWords | undefined;

const announcer = createAnnouncer((words) => {
  found("said").textContent = words;
});
const makersRules = createMakersRules({
  place: found("rules"),
  moved: (name, value, done) => vscode.postMessage({ type: "adjust", name, value, done }),
  ranged: (name) => vscode.postMessage({ type: "range", name }),
});
const looking = createLooking({
  place,
  look: vscode.getState()?.look ?? "all",
  changed(look) {
    keep({ look });
    pressLook(look);
    if (look === "pictorial") shows.turnOn("pictorial");
  },
  resized() {
    if (latest?.sheet && laid && !sameWay(arranged(latest.sheet, looking.aspect, pictorial?.room), laid))
      show(latest);
  },
  framed: placeFocus,
  holds([x, y]) {
    const room = laid?.pictorial;
    if (!room || x < room.x || y < room.y || x > room.x + room.width || y > room.y + room.height)
      return false;
    found("pictorial").focus({ preventScroll: true });
    return true;
  },
  pulled: (by) => pictorial?.pulled(by),
});
const pointing = createPointing({
  place,
  list: inWords,
  card: found("told"),
  chosen(part) {
    vscode.postMessage({ type: "reveal", part });
    postView.caret([part]);
  },
  told: (words) => announcer.say(words),
});
const postView = createPostView({
  place: found("post"),
  asks: (name) => vscode.postMessage({ type: "post", ...(name !== undefined && { name }) }),
});
const boardsView = createBoardsView({
  place: found("boards"),
  chosen: (part) => vscode.postMessage({ type: "reveal", part }),
  stopped: () => vscode.postMessage({ type: "stopBoards" }),
});
const compareView = createCompareView({
  place: found("compare"),
  revealed: ({ start, end }) => vscode.postMessage({ type: "revealPlace", start, end }),
  chosen: (part) => vscode.postMessage({ type: "reveal", part }),
  ended: () => vscode.postMessage({ type: "endComparison" }),
});
const shows = createShows({
  place: found("shows"),
  turned: vscode.getState()?.turned ?? [],
  changed(turned) {
    keep({ turned });
    postView.turn(turned.includes("post"));
    void turnPictorial(isShown("pictorial", turned));
    turnBoards(isShown("boards", turned));
    vscode.postMessage({ type: "overlays", names: overlaysOn(turned) });
  },
});

addEventListener("message", ({ data }: MessageEvent<ToPanel>) => {
  if (data.type === "subject") keep({ uri: data.uri });
  if (data.type === "drawing") showSoon(data.drawing);
  if (data.type === "range") makersRules.range(data.range);
  if (data.type === "highlight") {
    pointing.highlight(data.parts);
    postView.caret(data.parts);
    boardsView.caret(data.parts);
  }
  if (data.type === "boards") boardsView.show(data.boards);
  if (data.type === "keep") keepDrawing(data.what);
  if (data.type === "say") announcer.say(data.words);
});
document.querySelector("footer")?.addEventListener("click", ({ target }) => {
  if (!(target instanceof HTMLElement)) return;
  const { look, zoom, ask, fault } = target.dataset;
  if (look) looking.at(look);
  if (zoom) looking.zoom(zoom === "in" ? KEY_ZOOM : 1 / KEY_ZOOM);
  if (ask === "save" || ask === "print") keepDrawing(ask);
  if (fault) vscode.postMessage({ type: "revealFault", letter: fault });
});
found("words").addEventListener("toggle", fillWords);
found("words").addEventListener("keydown", ({ key, currentTarget }) => {
  if (key !== "Escape") return;
  const details = currentTarget as HTMLDetailsElement;
  details.open = false;
  details.querySelector("summary")?.focus();
});
pressLook(vscode.getState()?.look ?? "all");
postView.turn(vscode.getState()?.turned?.includes("post") ?? false);
vscode.postMessage({ type: "ready", overlays: overlaysOn(vscode.getState()?.turned ?? []) });
void turnPictorial(isShown("pictorial", vscode.getState()?.turned ?? []));
turnBoards(isShown("boards", vscode.getState()?.turned ?? []));

let waiting: DrawingParams | undefined;

/** At most one drawing a frame, the newest. */
function showSoon(drawing: DrawingParams) {
  if (!waiting) requestAnimationFrame(() => waiting && show(waiting));
  waiting = drawing;
}

function show(drawing: DrawingParams) {
  waiting = undefined;
  latest = drawing;
  const { sheet, faults = [], told = [], stale } = drawing;
  if (drawing.adjustables) makersRules.show(drawing.adjustables, drawing.version);
  if (sheet) {
    const before = laid;
    // The rules have just taken their share of the room.
    if (!before) looking.measure();
    pictorial?.show(drawing);
    laid = arranged(sheet, looking.aspect, pictorial?.room);
    // A frame of the maker's own means little once the views lie elsewhere.
    if (before && !sameWay(before, laid) && typeof vscode.getState()?.look === "object") looking.at("all");
    const made = sheetElements(laid, faults);
    if (pictorial && laid.pictorial) {
      pictorial.element.setAttribute("transform", `translate(${laid.pictorial.x} ${laid.pictorial.y})`);
      made.svg.append(pictorial.element);
    }
    looking.show(laid, made.svg);
    pointing.show({ names: partNames(sheet), parts: made.parts, told, faults });
    fillWords();
  }
  postView.show(drawing);
  compareView.show(drawing);
  document.body.classList.toggle("stale", stale);
  const words = stale ? `Out of date. ${drawing.reason ?? ""}` : sheet ? "" : (drawing.reason ?? "");
  if (state.textContent !== words) state.textContent = words;
  announcer.drawn(drawing);
}

/** Only while they are open to be read: typing and moving values are to cost no more than they must. */
function fillWords() {
  if (!latest?.sheet || !(found("words") as HTMLDetailsElement).open) return;
  const { sheet, faults = [], told = [] } = latest;
  fillInWords(inWords, { sheet, faults, told, pictorial: pictorialWords });
}

/** Shows the pictorial view, or takes it away; its script comes when it is first asked for. */
async function turnPictorial(on: boolean) {
  found("turning").hidden = !on;
  if (on === (pictorial !== undefined)) return;
  if (!on) {
    pictorial?.stop();
    pictorial = undefined;
    pictorialWords = undefined;
    pointing.also(new Map());
    vscode.postMessage({ type: "pictorial" });
    if (looking.look === "pictorial") looking.at("all");
    if (latest) show(latest);
    return;
  }
  const create = await loadPictorial(ownScript);
  if (pictorial || found("turning").hidden) return;
  pictorial = create({
    controls: found("turning"),
    focus: found("pictorial"),
    turned: vscode.getState()?.pictorial,
    changed: (turned) => keep({ pictorial: turned }),
    asks: (wanted) => vscode.postMessage({ type: "pictorial", wanted }),
    resized: () => latest && show(latest),
    drawn(parts, words) {
      pictorialWords = words;
      pointing.also(parts);
      fillWords();
    },
    told: (words) => announcer.say(words),
  });
  vscode.postMessage({ type: "pictorial", wanted: pictorial.wants });
}

/** Shows the boards, or takes them away; they are planned only while they are shown. */
function turnBoards(on: boolean) {
  if (on === !found("boards").hidden) return;
  boardsView.turn(on);
  vscode.postMessage({ type: "boards", on });
}

/** Puts the element that has the keyboard while the chair is turned over the view. */
function placeFocus(scale: number, [left, top]: Point) {
  const room = laid?.pictorial;
  const focus = found("pictorial");
  focus.hidden = !room;
  if (!room) return;
  focus.style.left = `${left + room.x * scale}px`;
  focus.style.top = `${top + room.y * scale}px`;
  focus.style.width = `${room.width * scale}px`;
  focus.style.height = `${room.height * scale}px`;
}

function keepDrawing(what: "save" | "print") {
  const picture = pictorial?.picture();
  vscode.postMessage({ type: "keep", what, ...(picture && { picture }) });
}

/** Which of the buttons for views is the look now. */
function pressLook(look: Look) {
  for (const button of document.querySelectorAll<HTMLElement>("[data-look]"))
    button.setAttribute("aria-pressed", String(button.dataset.look === look));
}

/** What comes back after the window is loaded anew. */
function keep(more: State) {
  vscode.setState({ ...vscode.getState(), ...more });
}
