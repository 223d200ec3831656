/**
 * One drawing panel beside one chair's text.
 */
import {
  Disposable,
  Range,
  Selection,
  type TextDocument,
  TextEditorRevealType,
  Uri,
  ViewColumn,
  type WebviewPanel,
  window,
  workspace,
} from "vscode";
import type { OverlayName } from "../../server/drawing/sheet.ts";
import type { DrawingParams, OldChair, PictorialWanted, RangeResult } from "../../server/main/protocol.ts";
import type { StartWorker } from "../in-worker.ts";
import { createAdjusting } from "./adjusting.ts";
import { createBoardsWork } from "./boards-work.ts";
import { type FromPanel, type PictureShown, readFromPanel, type ToPanel } from "./messages.ts";
import { openText } from "./open-text.ts";
import { createPartPlaces, type PartPlace } from "./part-places.ts";
import { showText } from "./show-text.ts";
import type { ShowName } from "./webview/showable.ts";

/** Saves or prints a drawing, with the pictorial view as it is shown beside it. */
export type Keep = (what: "save" | "print", drawing: DrawingParams, picture?: PictureShown) => void;

export interface DrawingPanel {
  readonly uri: Uri;
  /** The newest drawing it was given. */
  readonly latest: DrawingParams | undefined;
  /** What is shown beside the drawing's own lines, and whether all of it is open in words. */
  readonly shown: { names: readonly ShowName[]; words: boolean };
  /** Has the page do something. */
  send(message: ToPanel): void;
  /** Brings it to the front without taking the caret from the text. */
  show(): void;
  /** A drawing from the server; one older than what is shown is passed over. */
  draw(drawing: DrawingParams): void;
  /** What is laid over the drawing. */
  readonly overlays: readonly OverlayName[];
  /** The post that is shown from each of its faces. */
  readonly post: string | undefined;
  /** The frame at work is shown. */
  readonly strength: boolean;
  /** What is needed for the pictorial view; nothing while that is not shown. */
  readonly pictorial: PictorialWanted | undefined;
  /** Saves or prints what is shown. */
  keep(what: "save" | "print"): void;
  /** The chair laid behind, to compare with. */
  readonly compareWith: OldChair | undefined;
  /** Lays a chair behind, or takes it away. */
  compare(old: OldChair | undefined): void;
  /** The server starts anew and counts from the beginning. */
  reset(): void;
  /** Tells the page whose drawing it shows, and gives it what there is. */
  introduce(): void;
  /** The webview panel shows something else from now on. */
  release(): void;
}

/** What is done about each kind of message from the page. */
type Answers = { [T in FromPanel["type"]]: (message: Extract<FromPanel, { type: T }>) => void };

const answer = <T extends FromPanel["type"]>(
  answers: { [Each in T]: (message: Extract<FromPanel, { type: Each }>) => void },
  message: Extract<FromPanel, { type: T }>,
): void => answers[message.type as T](message);

/** Fills a webview panel, whose page is set, with the drawing of one file. */
export function createPanel(given: {
  uri: Uri;
  panel: WebviewPanel;
  /** Whether it stays with this file. */
  locked(): boolean;
  /** Something else is shown than before. */
  shownChanged(): void;
  /** Something else is to be laid over it. */
  overlaid(): void;
  /** How far an adjustable value may go, if that can be had for the text as it is. */
  range(name: string): Promise<RangeResult | undefined>;
  keep: Keep;
  startWorker: StartWorker;
}): DrawingPanel {
  const { uri, panel } = given;
  const places = createPartPlaces();
  const adjusting = createAdjusting(() => openText(uri));
  let latest: DrawingParams | undefined;
  let overlays: readonly OverlayName[] = [];
  let post: string | undefined;
  let compareWith: OldChair | undefined;
  let pictorial: PictorialWanted | undefined;
  let shown: DrawingPanel["shown"] = { names: [], words: false };
  let strength = false;

  const lay = (names: readonly OverlayName[], name: string | undefined) => {
    if (String(names) === String(overlays) && name === post) return;
    overlays = names;
    post = name;
    given.overlaid();
  };

  const compare = (old: OldChair | undefined) => {
    compareWith = old;
    given.overlaid();
  };

  const send = (message: ToPanel) => void panel.webview.postMessage(message);
  const boards = createBoardsWork(uri, given.startWorker, (told) => send({ type: "boards", boards: told }));
  const sendLatest = () => latest && send({ type: "drawing", drawing: latest });
  const introduce = () => {
    send({ type: "subject", uri: uri.toString(), locked: given.locked() });
    sendLatest();
    tellCaretInSight();
  };
  const tellCaretInSight = () => {
    const editor = window.visibleTextEditors.find(({ document }) => isOurs(document));
    if (latest && editor) tellCaret(editor.document, editor.selection);
  };
  const tellCaret = (document: TextDocument, { active }: Selection) =>
    send({ type: "highlight", parts: places.at(document.offsetAt(active)) });

  const answers: Answers = {
    ready({ overlays: laid }) {
      introduce();
      lay(laid, undefined);
    },
    shown(message) {
      shown = message;
      given.shownChanged();
    },
    boards: ({ on }) => boards.turn(on),
    stopBoards: () => boards.stop(),
    overlays: ({ names }) => lay(names, post),
    post: ({ name }) => lay(overlays, name),
    strength({ on }) {
      if (on === strength) return;
      strength = on;
      given.overlaid();
    },
    reveal: ({ part }) => void reveal(places.of(part)),
    revealPlace: (place) => void reveal(place),
    endComparison: () => compare(undefined),
    pictorial({ wanted }) {
      if (wanted === pictorial) return;
      pictorial = wanted;
      given.overlaid();
    },
    revealFault({ letter }) {
      const fault = latest?.faults?.find((each) => each.letter === letter);
      if (fault) void reveal({ start: fault.at, end: fault.at });
    },
    range: ({ name }) => void tellRange(name),
    keep: ({ what, picture }) => latest && given.keep(what, latest, picture),
    adjust: (message) => adjusting.move(message),
  };

  const listening = Disposable.from(
    panel.webview.onDidReceiveMessage((sent) => {
      const message = readFromPanel(sent);
      if (message) answer(answers, message);
    }),
    workspace.onDidChangeTextDocument(({ document, contentChanges }) => {
      if (!isOurs(document)) return;
      const changes = contentChanges.map(({ rangeOffset, rangeLength, text }) => {
        return { offset: rangeOffset, length: rangeLength, text };
      });
      places.changed(document.version, changes);
    }),
    window.onDidChangeTextEditorSelection(({ textEditor, selections }) => {
      if (!isOurs(textEditor.document) || !selections[0]) return;
      tellCaret(textEditor.document, selections[0]);
    }),
  );
  async function tellRange(name: string) {
    const range = await given.range(name);
    if (range) send({ type: "range", range });
  }

  function isOurs(document: TextDocument) {
    return document.uri.toString() === uri.toString();
  }

  async function reveal(place: PartPlace | undefined) {
    const document = await workspace.openTextDocument(
      place?.file === undefined ? uri : Uri.parse(place.file),
    );
    const open = window.visibleTextEditors.find((editor) => isOurs(editor.document));
    const editor = await showText(document, open?.viewColumn ?? ViewColumn.One, panel);
    if (!place) return;
    const range = new Range(document.positionAt(place.start), document.positionAt(place.end));
    // The caret only: a selected word would be lost to the next key typed.
    editor.selections = [new Selection(range.start, range.start)];
    editor.revealRange(range, TextEditorRevealType.InCenterIfOutsideViewport);
  }

  return {
    uri,
    get latest() {
      return latest;
    },
    get overlays() {
      return overlays;
    },
    get post() {
      return post;
    },
    get compareWith() {
      return compareWith;
    },
    get strength() {
      return strength;
    },
    get pictorial() {
      return pictorial;
    },
    // The page knows how its pictorial view is turned, and answers with that.
    keep: (what) => (pictorial ? send({ type: "keep", what }) : latest && given.keep(what, latest)),
    compare,
    send,
    get shown() {
      return shown;
    },
    show: () => panel.reveal(undefined, true),
    draw(drawing) {
      if (latest && drawing.version < latest.version) return;
      const first = latest === undefined;
      latest = drawing;
      places.drawn(drawing);
      adjusting.drawn(drawing);
      boards.follow();
      sendLatest();
      if (first) tellCaretInSight();
    },
    reset() {
      if (latest) latest = { ...latest, version: 0 };
      adjusting.reset();
    },
    introduce,
    release() {
      listening.dispose();
      boards.turn(false);
    },
  };
}
