import type { Span } from "../../grammar/problem.ts";

/** A fact and the text it came from. */
export interface Given<T> {
  value: T;
  /** The narrowest text that gives it; for an assumed fact the part's name. */
  at: Span;
  /** Address of the file it stands in, when not the file at hand (`use`, `like`). */
  file?: string;
  /** Nobody wrote it: the vocabulary table's default. */
  assumed?: true;
}
