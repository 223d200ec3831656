import type { Kind } from "./kind.ts";
import type { Problem, Span } from "./problem.ts";
import type { Row, Shape, Slot } from "./row.ts";

/** A file as read: always whole, whatever the text. */
export interface Tree {
  text: string;
  statements: Statement[];
  comments: Comment[];
  /** The problems of reading: lexing, shapes, unknown words, repairs. */
  problems: Problem[];
}

export interface Comment extends Span {
  /** Without the `#` and one following space. */
  text: string;
}

/** A word or name as it stands in the text. */
export interface Word extends Span {
  text: string;
}

/** One statement: from its first word to the end of its line, or of its block. */
export interface Statement extends Span {
  owner?: Statement;
  /** The kind of block it stands in (after repair). */
  within: Kind;
  word?: Word;
  row?: Row;
  parts: Part[];
  match?: Match;
  block?: Block;
  /** The comment lines directly above, joined by newlines. */
  description?: string;
}

interface Block extends Span {
  kind: Kind;
  statements: Statement[];
  /** False when the closing brace was missing and supplied by repair. */
  closed: boolean;
}

/** What a line is made of after its first word, before its meaning is matched. */
export type Part =
  | ({ is: "word" } & Word)
  | ({ is: "value"; value: Value } & Span)
  | ({ is: "text"; text: string } & Span)
  | ({ is: "date"; text: string } & Span)
  | ({ is: "times" } & Span)
  | ({ is: "comma" } & Span)
  | ({ is: "compare"; op: Compare } & Span)
  | ({ is: "equals" } & Span)
  | ({ is: "error"; text: string } & Span);

export type Compare = "<" | "<=" | ">" | ">=" | "=";

/** An expression with its places. Numbers keep the text they were written as, so that a printer loses nothing. */
export type Value =
  | ({ is: "number"; number: number } & Span)
  /** `12mm`, `6.5deg`, `1 1/4in`, `9%`. */
  | ({ is: "quantity"; number: number; unit: string; unitSpan: Span } & Span)
  /** `1:8`, an angle: rise in run. */
  | ({ is: "slope"; rise: number; run: number } & Span)
  /** A `let`, or a worked-out value: `seat-front.length` is one name of two segments. */
  | ({ is: "name"; name: string; segments: Word[] } & Span)
  /** `1/3 of rail`. */
  | ({ is: "share"; share: Value; of: Word } & Span)
  | ({ is: "negate"; of: Value } & Span)
  | ({ is: "binary"; op: "+" | "-" | "*" | "/"; left: Value; right: Value } & Span)
  | ({ is: "call"; fn: Word; args: Value[] } & Span)
  | ({ is: "group"; of: Value } & Span)
  /** What could not be read; whatever meets it downstream passes over it. */
  | ({ is: "unreadable" } & Span);

/**
 * One filled slot, or one marker word, of a statement's shape.
 *
 * Facts of one statement stand in the order written. Words that introduce a slot (`out`, `from`) are facts of slot `marker`
 * when the shape gave them a label; otherwise only the slot's own label remains.
 */
export interface Fact extends Span {
  label: string;
  slot: Slot | "marker";
  /** For length, angle, count and value slots. */
  value?: Value;
  /** For name, ref and word slots and markers: the word as written; dotted names joined (`front.left`). */
  name?: string;
  /** For text and date slots, unescaped. */
  text?: string;
}

/** How a statement's parts fit its row's shape. */
export interface Match {
  facts: Fact[];
  complete: boolean;
  /** Index into `parts` where matching stopped; `parts.length` when all was used. */
  stopped: number;
  /** What could have stood where matching stopped: what completion offers. */
  expected: Shape[];
}
