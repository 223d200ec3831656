import type { SawnDesign } from "./board-design.ts";
import type { Given } from "./given.ts";
import type { EndDesign, Named, PartRef, TimberDesign } from "./shared-facts.ts";

/** Where a row lies along a curve: from its ends, or so far straight across from the first to the last. mm */
export type RowPlace = { is: "margin"; first: number; last: number } | { is: "spread"; wide: number };

/** A diameter at a distance along turned stuff from its first shoulder, mm. */
export interface RoundStation {
  at: number;
  diameter: number;
}

export interface StickDesign extends Named, SawnDesign {
  is: "stick";
  pair: boolean;
  /** The crest or the bow that holds the heads. */
  to?: Given<PartRef>;
  /** In the row, or in each row of a pair. */
  count: Given<number>;
  /** The row's line lies `in` inside the outline, from `behind` behind the front edge round to the other side, or to `to` on its own. */
  feet?: Given<{ in: number; behind: number; to?: number }>;
  /** Or one stick's own place on the seat's top, level. */
  place?: Given<{ out: number; back: number }>;
  heads?: Given<RowPlace>;
  through?: Given<{ bow: PartRef; row?: RowPlace }>;
  round?: Given<number>;
  tapers: Given<{ diameter: number; towards: "end" | "ends" }>[];
  shape: Given<RoundStation>[];
  joined?: Given<string>;
  ends: EndDesign[];
  timber?: Given<TimberDesign>;
}
