/**
 * Facts that several kinds of part have alike.
 */
import type { Span } from "../../grammar/problem.ts";
import type { Statement } from "../../grammar/tree.ts";
import type { Given } from "./given.ts";
import type { JointFacts } from "./joint-facts.ts";

/** How lengths are written and printed in this file. */
export type LengthUnit = "mm" | "cm" | "in";

/** A part of the chair as named in the text. */
export interface Named {
  name: string;
  /** Where the name stands in its header. */
  at: Span;
  file?: string;
  statement: Statement;
  /** The comment above it. */
  description?: string;
}

/** A reference to another part, as written; `side` when written `front.left`. */
export interface PartRef {
  name: string;
  side?: "left" | "right";
}

/** A height along a post: a plumb height in mm as drawn, or an end. */
export type PostStation = number | "foot" | "top";

/** A distance along a rail from its first shoulder in mm, or a share of its length (`at 1/2`). */
export type RailStation = { mm: number } | { share: number };

export interface Section {
  /** Post: width across the chair. Rail: thickness. */
  first: number;
  /** Post: depth fore-and-aft. Rail: width. */
  second: number;
}

export interface TimberDesign {
  species: string;
  /** Percent. */
  moisture?: number;
  /** kg/m³, the maker's own. */
  density?: number;
}

/** What differs at one end of a rail. */
export interface EndDesign {
  /** The post or rail it enters, or `left`/`right`. */
  which: Given<string>;
  joined?: Given<string>;
  /** Facts of a joint given right here; they win over the named joint's. */
  joint: JointFacts;
  /** This end lies over its post's top and runs past it. */
  over?: Given<{ overhang: number }>;
  statement: Statement;
}
