/**
 * The panel's own script: shows each drawing that comes, says when it is out of date, and tells which part was clicked.
 */
import type { Point } from "../../../server/drawing/sheet.ts";
import type { DrawingParams } from "../../../server/main/protocol.ts";
import type { FromPanel, ToPanel } from "../messages.ts";
import { createAnnouncer } from "./announcer.ts";
import { arranged, type Laid, sameWay } from "./arrange.ts";
import type { BoardsView } from "./boards/main.ts";
import { createCompareView } from "./compare-view.ts";
import { fillInWords, partNames } from "./in-words.ts";
import { createLetterer, pictureFlags } from "./lettering/letterer.ts";
import { createLooking, KEY_ZOOM, type Look, readLook } from "./looking.ts";
import { loaded } from "./on-demand.ts";
import type { Pictorial } from "./pictorial-view.ts";
import type { PictorialWords } from "./pictorial-words.ts";
import { createPointing } from "./pointing.ts";
import { createPostView } from "./post-view.ts";
import { sheetElements } from "./sheet-view.ts";
import type { ShowName } from "./showable.ts";
import { createShows, isShown, overlaysOn, shownOf } from "./shows.ts";
import { createSliders } from "./sliders.ts";
import type { StrengthView } from "./strength/main.ts";

interface State {
  uri?: string;
  locked?: boolean;
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
const found = (id: string) => document.getElementById(id) as HTMLElement;
const place = found("sheet");
const state = found("state");
const inWords = found("words");
let latest: DrawingParams | undefined;
let laid: Laid | undefined;
let pictorial: Pictorial | undefined;
let strengthView: StrengthView | undefined;
let boardsView: BoardsView | undefined;
let caretIn: readonly string[] = [];
let pictorialWords: PictorialWords | undefined;
let waiting: DrawingParams | undefined;
/** Pixels to the millimetre. */
let seenAt = 1;
/** What is shown is still of the chair before. */
let isOfAnother = false;

const announcer = createAnnouncer((words) => {
  found("said").textContent = words;
});
const sliders = createSliders({
  place: found("rules"),
  moved: (name, value, done) => vscode.postMessage({ type: "adjust", name, value, done }),
  ranged: (name) => vscode.postMessage({ type: "range", name }),
});
const letterer = createLetterer();
const looking = createLooking({
  place,
  look: readLook(vscode.getState()?.look),
  changed(look, before) {
    keep({ look });
    if (look.at === "pictorial") shows.turn("pictorial", true);
    if (look.at !== before.at && latest) show(latest);
  },
  resized: () => latest && showSoon(latest),
  framed(scale, corner) {
    seenAt = scale;
    letterer.letter(scale);
    pictorial?.rescaled();
    placeFocus(scale, corner);
  },
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
  measure: letterer.measure,
});
const compareView = createCompareView({
  place: found("compare"),
  revealed: ({ start, end }) => vscode.postMessage({ type: "revealPlace", start, end }),
  chosen: (part) => vscode.postMessage({ type: "reveal", part }),
  ended: () => vscode.postMessage({ type: "endComparison" }),
});
const shows = createShows({
  turned: turned(),
  changed(now) {
    keep({ turned: now });
    applyShows();
    vscode.postMessage({ type: "overlays", names: overlaysOn(now) });
  },
});

addEventListener("message", ({ data }: MessageEvent<ToPanel>) => {
  if (data.type === "subject") turnTo(data);
  if (data.type === "drawing") showSoon(data.drawing);
  if (data.type === "range") sliders.range(data.range);
  if (data.type === "highlight") {
    pointing.highlight(data.parts);
    postView.caret(data.parts);
    caretIn = data.parts;
    boardsView?.caret(caretIn);
  }
  if (data.type === "boards") boardsView?.show(data.boards);
  if (data.type === "keep") keepDrawing(data.what);
  if (data.type === "say") announcer.say(data.words);
  if (data.type === "look") looking.at(data.look);
  if (data.type === "zoom") looking.zoom(data.nearer ? KEY_ZOOM : 1 / KEY_ZOOM);
  if (data.type === "show") shows.turn(data.name, data.on);
  if (data.type === "words") turnWords(data.on);
});
inWords.addEventListener("click", ({ target }) => {
  const fault = target instanceof HTMLElement ? target.dataset.fault : undefined;
  if (fault) vscode.postMessage({ type: "revealFault", letter: fault });
});
inWords.addEventListener("keydown", ({ key }) => {
  if (key !== "Escape") return;
  turnWords(false);
  place.focus({ preventScroll: true });
});
place.addEventListener("keydown", ({ key, ctrlKey, metaKey, altKey }) => {
  if (key === "w" && !ctrlKey && !metaKey && !altKey) turnWords(Boolean(inWords.hidden));
});
introduce();

/** What was turned from how it was at first. */
function turned(): string[] {
  return vscode.getState()?.turned ?? [];
}

/** Says that the page is ready, and what it shows and needs. */
function introduce() {
  vscode.postMessage({ type: "ready", overlays: overlaysOn(turned()) });
  applyShows();
  if (pictorial) vscode.postMessage({ type: "pictorial", wanted: pictorial.wants });
  if (boardsView && isOn("boards")) vscode.postMessage({ type: "boards", on: true });
}

function applyShows() {
  postView.turn(isOn("post"));
  void turnPictorial(isOn("pictorial"));
  void turnBoards(isOn("boards"));
  void turnStrength(isOn("strength"));
  tellShown();
}

function isOn(name: ShowName): boolean {
  return isShown(name, turned());
}

function tellShown() {
  vscode.postMessage({ type: "shown", names: shownOf(turned()), words: !inWords.hidden });
}

/** The drawing of another chair is to be shown from now on: what belonged to the one before goes. */
function turnTo({ uri, locked }: { uri: string; locked: boolean }) {
  const before = vscode.getState()?.uri;
  keep({ uri, locked });
  if (before === undefined || before === uri) return;
  waiting = undefined;
  isOfAnother = true;
  sliders.forget();
  postView.forget();
  looking.whole();
  introduce();
}

/** At most one drawing a frame, the newest. */
function showSoon(drawing: DrawingParams) {
  if (!waiting) requestAnimationFrame(() => waiting && show(waiting));
  waiting = drawing;
}

function show(drawing: DrawingParams) {
  waiting = undefined;
  latest = drawing;
  const { sheet, faults = [], told = [], stale } = drawing;
  if (drawing.adjustables) sliders.show(drawing.adjustables, drawing.version);
  if (sheet) {
    const before = laid;
    // The rules have just taken their share of the room.
    if (!before) looking.measure();
    pictorial?.show(drawing);
    const { room, look } = looking;
    laid = arranged(sheet, { room, look: look.at, pictorial: pictorial?.room, measure: letterer.measure });
    const made = sheetElements(laid, faults);
    if (pictorial && laid.pictorial) {
      pictorial.element.setAttribute("transform", `translate(${laid.pictorial.x} ${laid.pictorial.y})`);
      made.svg.append(pictorial.element);
    }
    letterer.show(laid, made.svg, { faults, named: isOn("arrangement") ? told : [] });
    looking.show(laid, made.svg);
    // A frame of the maker's own means little once the views lie elsewhere.
    if (before && !sameWay(before, laid)) looking.whole();
    pointing.show({ names: partNames(sheet), parts: made.parts, told, faults });
    fillWords();
  }
  if (!sheet && isOfAnother) {
    laid = undefined;
    looking.clear();
  }
  isOfAnother = false;
  postView.show(drawing);
  compareView.show(drawing);
  strengthView?.show(drawing);
  document.body.classList.toggle("stale", stale);
  const words = stale ? `Out of date. ${drawing.reason ?? ""}` : sheet ? "" : (drawing.reason ?? "");
  if (state.textContent !== words) state.textContent = words;
  announcer.drawn(drawing);
}

/** Only while they are open to be read: typing and moving values are to cost no more than they must. */
function fillWords() {
  if (!latest?.sheet || inWords.hidden) return;
  const { sheet, faults = [], told = [] } = latest;
  fillInWords(inWords, { sheet, faults, told, pictorial: pictorialWords });
}

/** Opens all of it in words, or closes them. */
function turnWords(on: boolean) {
  if (inWords.hidden === !on) return;
  inWords.hidden = !on;
  fillWords();
  if (on) inWords.focus({ preventScroll: true });
  tellShown();
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
    if (looking.look.at === "pictorial") looking.at("all");
    if (latest) show(latest);
    return;
  }
  const create = await loaded("pictorial");
  if (pictorial || found("turning").hidden) return;
  pictorial = create({
    controls: found("turning"),
    focus: found("pictorial"),
    turned: vscode.getState()?.pictorial,
    changed: (turned) => keep({ pictorial: turned }),
    asks: (wanted) => vscode.postMessage({ type: "pictorial", wanted }),
    resized: () => latest && show(latest),
    flagged: pictureFlags,
    seenAt: () => ({ scale: seenAt, figures: laid?.figures ?? 13 }),
    drawn(parts, words) {
      pictorialWords = words;
      pointing.also(parts);
      fillWords();
    },
    told: (words) => announcer.say(words),
  });
  vscode.postMessage({ type: "pictorial", wanted: pictorial.wants });
}

/** Shows the boards, or takes them away; they are planned only while they are shown, and their script comes when they first are. */
async function turnBoards(on: boolean) {
  const place = found("boards");
  if (on === !place.hidden) return;
  place.hidden = !on;
  if (on)
    boardsView ??= (await loaded("boards"))({
      place,
      chosen: (part) => vscode.postMessage({ type: "reveal", part }),
      stopped: () => vscode.postMessage({ type: "stopBoards" }),
    });
  boardsView?.turn(!place.hidden);
  boardsView?.caret(caretIn);
  vscode.postMessage({ type: "boards", on: !place.hidden });
}

/** Shows the frame at work, or takes it away; its script comes when it is first asked for. */
async function turnStrength(on: boolean) {
  const place = found("strength");
  place.hidden = !on;
  vscode.postMessage({ type: "strength", on });
  if (on) strengthView ??= (await loaded("strength"))(place);
  strengthView?.turn(latest);
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

/** What comes back after the window is loaded anew. */
function keep(more: State) {
  vscode.setState({ ...vscode.getState(), ...more });
}
