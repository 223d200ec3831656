import type { Kind } from "./kind.ts";

/** What a slot of a shape takes. */
export type Slot = "length" | "angle" | "count" | "value" | "name" | "ref" | "word" | "text" | "date";

/** What a `ref` slot may point at; completion and rename use it. */
export type RefKind =
  | "post"
  | "rail"
  | "slat"
  | "member"
  | "stick"
  | "bow"
  | "head"
  | "joint"
  | "part"
  | "let"
  | "angle"
  | "board"
  | "rule"
  | "species"
  | "target"
  | "any";

/**
 * The shape of the words after a statement's first word.
 *
 * - `word`: a marker word that must stand there; also the signs `x`, `=`, `<`, `<=`, `>`, `>=` and a lone `,` between terms.
 * - `slot`: something the maker writes; `label` names the fact it becomes. `words` may stand there instead of a name, and `names` are
 *   words of the row that may be names there.
 * - `seq`, `either`: one after another; one of them.
 * - `clauses`: comma-separated phrases in any order, each once at most, at least one.
 * - `maybe`: may be left out. `list`: one or more, separated by commas.
 */
export type Shape =
  | { is: "word"; word: string; label?: string }
  | {
      is: "slot";
      slot: Slot;
      label: string;
      ref?: RefKind;
      words?: readonly string[];
      names?: readonly string[];
    }
  | { is: "seq" | "either" | "clauses"; of: readonly Shape[] }
  | { is: "maybe" | "list"; of: Shape };

/**
 * A row of the vocabulary table: one statement or property, where it may stand and all that is known of it.
 *
 * Several rows of one owner may share a word with different facets (`tenon thick 8`, `tenon square`, `tenon with bow`): the
 * row that fits furthest is the statement's. Two headers that open blocks of their own may share a facet: only one of them is given. A word shape with a `label` becomes a marker fact.
 */
export interface Row {
  /** The kind of block this statement stands in; `file` is the outermost. */
  owner: Kind;
  word: string;
  shape: Shape;
  /** The kind of block it opens, if it takes `{ }`; `blockOptional` when it may stand without. */
  opens?: Kind;
  blockOptional?: boolean;
  /** Rows of one owner with the same facet answer the same question: only one may be given. Defaults to the word. */
  facet?: string;
  /** May be given more than once in its owner. */
  many?: boolean;
  /** Must be given (by this row or another of the facet named). */
  required?: boolean;
  /** Facets that are required of its owner as a rule and need not be given beside it. */
  insteadOf?: readonly string[];
  /** One plain sentence for hovers and the language reference. */
  meaning: string;
  /** A whole line as a maker would write it. */
  example: string;
  /** More such lines, for a row with several forms: a message shows the one that begins like the maker's line. */
  examples?: readonly string[];
  /** The line that holds when nothing is given, in words or as a line of the language. */
  default?: string;
  /** A drawing in characters for the reference, where words alone leave a way open. */
  drawing?: string;
  /** Parsed and kept, not yet worked out: an information message says so. */
  later?: boolean;
}

/** A word that does not begin a line but has a meaning to show: marker words, units, functions, kinds of seat, glues. */
export interface WordMeaning {
  word: string;
  sort: "marker" | "unit" | "function" | "choice" | "direction" | "value";
  meaning: string;
}

export interface Vocabulary {
  rows: readonly Row[];
  words: readonly WordMeaning[];
}
