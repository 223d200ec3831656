/**
 * What the text says of use: how hard it is, loads of its own, and the air that the chair lives in.
 */
import type { Given } from "./given.ts";
import type { Named, PartRef, RailStation } from "./shared-facts.ts";

export type StrengthLevel = "domestic" | "public" | "severe";

export type PushWay = "down" | "up" | "forward" | "back" | "out" | "in" | "left" | "right";

export type StopSide = "front" | "back" | "left" | "right";

/** What a push acts on, and where: mm as drawn; without a place in the middle, of a post at its top. */
export type PushTarget =
  | { is: "seat"; out?: number; back?: number }
  | { is: "member"; part: PartRef; kind: "rail" | "slat"; station?: RailStation }
  | { is: "member"; part: PartRef; kind: "post"; height?: number };

export interface PushDesign {
  /** N, more than 0. */
  force: Given<number>;
  way: Given<PushWay>;
  target: Given<PushTarget>;
}

/** A load case of the maker's own. */
export interface LoadDesign extends Named {
  is: "load";
  pushes: PushDesign[];
  stops?: Given<StopSide[]>;
  /** How often; 1 when absent. */
  times?: Given<number>;
}

/** Between what the chair lives: relative humidity of the air, or moisture of the wood, both as shares of one. */
export interface ClimateDesign {
  of: "humidity" | "moisture";
  low: number;
  high: number;
}
