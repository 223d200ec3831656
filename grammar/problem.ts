/**
 * What every stage says when something is wrong: one sentence on the narrowest text at fault.
 */

import type { Steps } from "./steps.ts";

/** A stretch of text in UTF-16 offsets, end not included. */
export interface Span {
  start: number;
  end: number;
}

export type Severity = "error" | "warning" | "information" | "hint";

/** One replacement in the text of the file the problem stands in. */
export interface Edit extends Span {
  text: string;
}

/** A change offered to the maker. `certain` fixes may be applied by "fix all": there is no other sensible mend. */
export interface Fix {
  title: string;
  edits: Edit[];
  certain?: boolean;
}

/** A second place that explains the problem, such as where a name was first given. */
export interface Related extends Span {
  message: string;
  /** Another file's address, when it is not the file at hand. */
  file?: string;
}

/** A line to put in at a place, with degrees between its two halves: `kick `, `deg below 150`. */
export interface Insert {
  at: number;
  before: string;
  after: string;
  /** The part it is given to, and what it is. */
  to: string;
  what: string;
  /** A bare length that goes with it, so that the rest of the part stays: what it grows by for each tangent of the figure. */
  along?: Span & { number: number; perTangent: number };
}

export interface Problem extends Span {
  /** The rule's code, a row of the rule table, such as `tenon-too-thin`. */
  code: string;
  severity: Severity;
  /** One plain sentence: what is wrong, the figure found, the figure allowed, what would mend it. */
  message: string;
  /** Figures for machines and tables, already in the file's units, such as found "4.8 mm", allowed "5.8 mm or more". */
  found?: string;
  allowed?: string;
  /** The full name of the part or joint at fault (`seat-side.left`, `seat-side.left to front.left`); `accept` speaks of it. */
  subject?: string;
  /** Other parts or joints of which the same is true, told by the same finding. */
  alsoOf?: string[];
  /** Changes that may put it right; what is shown to anybody are the `mends`. */
  fixes?: Fix[];
  /** Where the facts stand that decide it, the nearest first. */
  deciders?: Span[];
  /** How far past its limit it is, in the rule's own measure: 0 where the rule measures nothing. */
  badness?: number;
  /** Lines that the text lacks, to try all together with one figure that has to be found. */
  inserts?: Insert[];
  /** One sentence for when no mend works: what would have to change. */
  otherwise?: string;
  /** Changes that were tried on this very text; absent until they have been. */
  mends?: Mend[];
  /** The trying of them, begun and not done: whoever asks for them goes on with it. */
  mending?: Steps<Mend[]>;
  related?: Related[];
}

/** A change that was tried: with it the finding is gone and nothing new is found. */
export interface Mend {
  title: string;
  /** In the order of the text, none over another. */
  edits: Edit[];
  certain?: boolean;
}

/** A message with any word that would swamp it cut short: a maker needs only see where such a word begins. */
export function shortWords(message: string): string {
  return message.length < 200 ? message : message.replace(/(\S{40})\S{20,}/g, "$1…");
}
