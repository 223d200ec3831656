/**
 * The messages of our own that pass between server and client, beside those of the Language Server Protocol.
 */

import type { ReportSection } from "../compare/report.ts";
import type { PackedTurnable } from "../drawing/pictorial/packed.ts";
import type { PostFaces } from "../drawing/post-faces.ts";
import type { OverlayName, Sheet } from "../drawing/sheet.ts";
import type { StrengthShown } from "../drawing/strength-view.ts";
import type { PartTold } from "../editor/about/parts-told.ts";
import type { Adjustable } from "../editor/adjustable.ts";
import type { Fault } from "../editor/faults.ts";
import type { PageKind } from "../editor/pages/kinds.ts";

/** Client → server notification: start or stop sending this file's drawing. */
export const WATCH_DRAWING = "seatwright/watchDrawing";
export interface WatchDrawingParams {
  uri: string;
  watch: boolean;
  /** What to lay over it. */
  overlays?: OverlayName[];
  /** Full name of a post to be shown from each of its faces. */
  post?: string;
  /** The chair to lay behind it and to tell the difference from. */
  compareWith?: OldChair;
  /** The frame at work, case by case. */
  strength?: true;
  /** What is needed to turn it: the chair whole, or its parts as they leave the bench, to be taken apart. */
  pictorial?: PictorialWanted;
}

export type PictorialWanted = "whole" | "parts";

/** A chair to compare an open file with. */
export interface OldChair {
  /** What it is called: `saved version`, a commit, a file's name. */
  label: string;
  text: string;
  /** Where it stands, for the files that it names. */
  address: string;
}

/** How an open file differs from another chair, in words. */
export interface ComparisonTold {
  label: string;
  /** What is said first: that nothing differs, or that a side is not whole. */
  says?: string;
  sections: ReportSection[];
}

/** Server → client notification: the drawing of one version of a watched file. */
export const DRAWING = "seatwright/drawing";
export interface DrawingParams {
  uri: string;
  version: number;
  /** Null only when no chair could ever be drawn from this file. */
  sheet: Sheet | null;
  /** True when the sheet is the last good one and the text has moved on. */
  stale: boolean;
  /** Why it is stale or missing, one plain sentence. */
  reason?: string;
  /** The values of this version that can be moved, whether or not it could be drawn. */
  adjustables?: Adjustable[];
  /** What is found wrong in this version, and with which of the parts drawn. */
  faults?: Fault[];
  /** Each part drawn, in plain words. */
  told?: PartTold[];
  /** The faces of the post that was asked for, with its mortises. */
  faces?: PostFaces;
  /** How it differs from the chair it is compared with. */
  comparison?: ComparisonTold;
  /** How hard each part and joint works, when that was asked for and is worked out. */
  strength?: StrengthShown;
  /** The chair of the sheet, to be looked at from anywhere, when that was asked for. */
  pictorial?: PackedTurnable;
}

/** Client → server request: the drawing of an open file as it is now; null when it is not open. */
export const DRAW = "seatwright/draw";
export interface DrawParams {
  uri: string;
}

/** Client → server request: an open chair in a few words; null when it is not open. */
export const SUMMARY = "seatwright/summary";
export interface SummaryParams {
  uri: string;
}

/** Client → server request: how far a choice of an open file may go; null when it has none of that name, or the text has moved on. */
export const RANGE = "seatwright/range";
export interface RangeParams {
  uri: string;
  /** The name of a `let` with `within`. */
  name: string;
}
export interface RangeResult {
  name: string;
  /** The version of the text it holds for. */
  version: number;
  /** In the value's own unit, as the rule it is moved along. */
  low: number;
  high: number;
  free: [number, number][];
  bands: { from: number; to: number; severity: "error" | "warning"; label: string; message: string }[];
  /** All of it in a sentence. */
  words: string;
}

/** Client → server request: the worked-out values of an open file that a figure may be asked of. */
export const VALUES = "seatwright/values";
export interface ValuesParams {
  uri: string;
}
export type ValuesResult = { name: string; printed: string; meaning: string }[];

/** Client → server request: which single choice gives a worked-out value another figure. */
export const REACH = "seatwright/reach";
export interface ReachParams {
  uri: string;
  /** A comparison such as `seat.slope = 2deg`. */
  asked: string;
}
export interface ReachResult {
  /** Why nothing was sought, one plain sentence. */
  refused?: string;
  /** The version of the text that the edits are for. */
  version: number;
  ways: {
    title: string;
    detail: string;
    met: boolean;
    edits: { start: number; end: number; text: string }[];
  }[];
}

/** Client → server request: a page that tells of an open chair, as Markdown; null when it is not open. */
export const PAGE = "seatwright/page";
export interface PageParams {
  uri: string;
  kind: PageKind;
}

/** Client → server request: an open chair's notes in order, with what changed between them, as Markdown. */
export const NOTEBOOK = "seatwright/notebook";
export interface NotebookParams {
  uri: string;
  /** Earlier versions from the oldest, as far as they are kept anywhere. */
  versions: OldChair[];
}

/** Client → server request: what an open chair says otherwise than an earlier version, a phrase a fact. */
export const CHOSEN_SINCE = "seatwright/chosenSince";
export interface ChosenSinceParams {
  uri: string;
  old: OldChair;
}

/** Server → client request: the text of a file named by `use` or `like`; sent only by the server in a web worker. */
export const READ_FILE = "seatwright/readFile";
export interface ReadFileParams {
  uri: string;
}
export interface ReadFileResult {
  text: string | null;
}

/** Server → client request: the addresses of the workspace's chair files; sent only by the server in a web worker. */
export const FIND_FILES = "seatwright/findFiles";
export interface FindFilesResult {
  uris: string[];
}
