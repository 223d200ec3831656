/**
 * A Design is what the text says, part by part, every fact with its place. Lengths are millimetres, angles radians, as drawn.
 * Facts that could not be read or worked out are simply absent: whatever follows copes.
 */
import type { Problem, Span } from "../../grammar/problem.ts";
import type { Statement } from "../../grammar/tree.ts";
import type { BoardDesign, MatchDesign, SawnDesign, WasteDesign, YardDesign } from "./board-design.ts";

import type { BowDesign } from "./bow-design.ts";
import type { Given } from "./given.ts";
import type { JointFacts } from "./joint-facts.ts";
import type { LegPlace, LegWay } from "./leg-design.ts";
import type { ClimateDesign, LoadDesign, StrengthLevel } from "./load-design.ts";
import type {
  EndDesign,
  LengthUnit,
  Named,
  PartRef,
  PostStation,
  RailStation,
  Section,
  TimberDesign,
} from "./shared-facts.ts";
import type { SolidSeatDesign } from "./solid-seat-design.ts";
import type { RoundStation, StickDesign } from "./stick-design.ts";

export type * from "./board-design.ts";
export type * from "./bow-design.ts";
export type { Given } from "./given.ts";
export type { CutKind, EndKind, JointFacts, KindName, Size } from "./joint-facts.ts";
export type * from "./leg-design.ts";
export type * from "./load-design.ts";
export type * from "./shared-facts.ts";
export type * from "./stick-design.ts";

export type PostFace = "front" | "back" | "inside" | "outside";

export interface PostDesign extends Named, SawnDesign {
  is: "post";
  pair: boolean;
  section?: Given<Section>;
  /** Diameter of a turned post. */
  round?: Given<number>;
  /** Where the centre line is placed, once. */
  place?: Given<{ station: PostStation; out: number; back: number }>;
  /** Plumb height of the top of the centre line. Absent when a rail over it decides. */
  height?: Given<number>;
  /** Lean seen from the front; positive when the foot is further out than the top. */
  splay?: Given<number>;
  /** Lean seen from the side for the whole post, positive leaning back going up. */
  rake?: Given<number>;
  /**
   * Changes of lean at heights: `rake A above H`, `kick A below H`, `bend …`. `slope` is the lean from plumb of the stretch
   * named, positive leaning back (or, seen from the front, leaning towards the middle) going up: a kick of 4° is −4° here.
   */
  knees: Given<Knee>[];
  tapers: Given<Taper>[];
  /** About its own length, positive turning the front face outward. */
  turn?: Given<number>;
  /** A turned outline by stations: height along the post and diameter (round) or width and depth there. */
  shape?: Given<{ station: PostStation; first: number; second: number }[]>;
  /** Stands on a rail instead of the floor. */
  standsOn?: Given<{ rail: PartRef; station: RailStation }>;
  /** Stands on a solid seat, level places on its top. */
  onSeat?: Given<{ out: number; back: number }>;
  /** A leg: where it is let into a solid seat, and the way it goes when splay and rake do not say. */
  intoSeat?: Given<LegPlace>;
  way?: Given<LegWay>;
  /** The joint's name at the seat. */
  joined?: Given<string>;
  /** Its top goes up into a rail that runs over it. */
  topInto?: Given<{ rail: PartRef; joint?: string }>;
  /** Or into a bow, so far along its centre line from the end on its own side; it goes straight there. */
  topBow?: Given<{ bow: PartRef; at: number; joint?: string }>;
  /** Top cut square to the centre line instead of level. */
  topSquare?: Given<boolean>;
  timber?: Given<TimberDesign>;
}

export interface Knee {
  word: "rake" | "kick" | "bend";
  seen: "side" | "front";
  height: number;
  stretch: "above" | "below";
  slope: number;
  /** Length of the fair curve, half to each side of the knee; 0 is a sharp knee. */
  over: number;
}

export interface Taper {
  /** Section at the far end of the taper. For a round post both are the diameter. */
  section: Section;
  from: PostStation;
  to: PostStation;
  /** Faces that stay straight. */
  keeping: PostFace[];
}

export type RailCourse =
  /** Left to right of one pair of posts, or of a pair of rails at a station along them. */
  | { is: "across"; of: PartRef; station?: RailStation }
  | { is: "from-to"; from: PartRef; to: PartRef; stationFrom?: RailStation; stationTo?: RailStation }
  /** Lies centred on the tops of a pair. */
  | { is: "over"; of: PartRef; overhang: number };

export interface RailDesign extends Named, SawnDesign {
  is: "rail";
  /** Rails that it crosses, both cut half through; it keeps its top. */
  halved: Given<{ over: PartRef; joint?: string }>[];
  pair: boolean;
  course?: Given<RailCourse>;
  /** A crest that lies over one post alone, across the chair. */
  onOne?: Given<PartRef>;
  /** A crest that stands on sticks: where the middle of its lower edge is (with `ups`), how its face leans, its straight length. */
  carried?: Given<PartRef[]>;
  back?: Given<number>;
  rake?: Given<number>;
  long?: Given<number>;
  /** first: thickness, second: width. */
  section?: Given<Section>;
  round?: Given<number>;
  /** Heights of the top edge at the first end, one per member; more than one when the rail repeats (`NAME.1` upward). */
  ups: Given<number>[];
  /** Drop to the second end. */
  fall?: Given<number>;
  /** Or the same as an angle below level towards the second end. */
  slope?: Given<number>;
  /** A member whose face lies level (an arm). */
  flat?: Given<boolean>;
  face: Given<{ is: "flush" | "inset" | "centred"; inset: number }>;
  stand: Given<"plumb" | "with posts">;
  arches: Given<{ rise: number; edge: "below" | "above" }>[];
  bow?: Given<{ rise: number; towards: "back" | "front" | "out" | "in" }>;
  tapers: Given<RailTaper>[];
  /** Diameters of a turned one along its length. */
  shape: Given<RoundStation>[];
  /** What a loose seat rests in or on. */
  rests: Given<RestDesign>[];
  /** The joint's name at both ends. */
  joined?: Given<string>;
  ends: EndDesign[];
  timber?: Given<TimberDesign>;
}

/** A rebate or groove cut along a rail, or a strip fixed to it, mm. */
export type RestDesign =
  /** `wide` off the face, `deep` off the edge; `from` and `to` from the first shoulder. */
  | {
      is: "rebate";
      wide: number;
      deep: number;
      face: "inside" | "outside";
      edge: "top" | "bottom";
      from?: number;
      to?: number;
    }
  /** `at` from the top edge to its nearer side, in an edge from the outside face. */
  | { is: "groove"; wide: number; deep: number; face: "inside" | "outside" | "top" | "bottom"; at: number }
  /** `wide` up and down; its top is `at` below the rail's top edge. */
  | { is: "strip"; wide: number; thick: number; face: "inside" | "outside"; at: number };

export interface RailTaper {
  section: Section;
  /** Towards the second end, or from the middle to both. */
  towards: "end" | "ends";
}

export interface SlatDesign extends Named, SawnDesign {
  is: "slat";
  from?: Given<PartRef>;
  to?: Given<PartRef>;
  /** Even: the gaps are equal on each rail by itself. */
  count?: Given<number>;
  /** Or stations along the `from` rail. */
  stations?: Given<RailStation[]>;
  section?: Given<Section>;
  round?: Given<number>;
  bow?: Given<{ rise: number; towards: "back" | "front" | "out" | "in" }>;
  joined?: Given<string>;
  ends: EndDesign[];
  timber?: Given<TimberDesign>;
}

/** A corner block. */
export interface BlockDesign extends Named, SawnDesign {
  is: "block";
  in?: Given<PartRef>;
  along?: Given<number>;
  thick?: Given<number>;
  fixing?: Given<"screwed" | "glued">;
  /** Height of its top; when absent, level with the lower of the two rails' tops. */
  up?: Given<number>;
  timber?: Given<TimberDesign>;
}

export interface JointDesign extends Named, JointFacts {
  is: "joint";
}

/** What a loose seat rests on or in. */
export type SeatRest = "rails" | "strips" | "rebates" | "grooves";

export type SeatKind = "drop-in" | "board" | "woven" | "upholstered" | "solid";

export interface SeatDesign extends SawnDesign {
  is: "seat";
  kind: SeatKind;
  at: Span;
  file?: string;
  statement: Statement;
  description?: string;
  on: Given<PartRef>[];
  thick?: Given<number>;
  proud?: Given<number>;
  sag?: Given<number>;
  overhang?: Given<{ out: number; front: number; back: number }>;
  rests?: Given<SeatRest>;
  /** Clearance at each rail and round each post, and the covering on top of that; mm. */
  gap?: Given<number>;
  cover?: Given<number>;
  /** Of a solid seat, which lies on no rails. */
  solid?: SolidSeatDesign;
  timber?: Given<TimberDesign>;
}

/** One side of a declared angle. */
export type AngleTerm =
  | { is: "seat" }
  | { is: "floor" }
  | { is: "part"; part: PartRef; above?: number; below?: number };

export interface AngleDesign extends Named {
  is: "angle";
  between?: Given<[AngleTerm, AngleTerm]>;
  seenFrom?: Given<"side" | "front" | "above">;
  /** Radians. */
  limit?: Given<{ low?: number; high?: number }>;
}

export interface TrimDesign {
  posts: Given<PartRef>[];
  /** Cut off along the post's centre line. */
  length: Given<number>;
  statement: Statement;
  file?: string;
}

export type SitterDesign =
  | { is: "adult"; group?: "women" | "men" }
  | { is: "child"; from: number; to: number }
  | { is: "school-mark"; mark: number }
  /** Own measures, mm and kg, by the names of the body-size data. */
  | { is: "named"; measures: Map<string, Given<number>> };

/** `stability en-1022-2018, child 8`: by which edition's loads it is judged, and the age of the child that kneels on it. */
export interface StabilityDesign {
  edition?: string;
  /** Whole years. */
  childAge?: number;
}

export interface LetDesign extends Named {
  is: "let";
  value?: Given<Quantity>;
  /** An adjustable value and its range, in the value's own dimension. */
  within?: Given<{ low: number; high: number }>;
  /** The expression as written, so that an adjustable value can be rewritten in place. */
  expression: Span;
}

/** A number with its dimension: length mm, angle rad, mass kg, force N, share 1 = 100 %, area mm², volume mm³, number plain. */
export interface Quantity {
  number: number;
  dimension: Dimension;
}

export type Dimension = "number" | "length" | "area" | "volume" | "angle" | "mass" | "force" | "share";

export type Bound = { low?: number; high?: number };

/** `require weight at most 5.5kg`, `require seat.slope from 1deg to 4deg`. */
export interface RequireDesign {
  /** Dotted name of the worked-out value, or an expression's own text. */
  subject: string;
  subjectAt: Span;
  /** The left side when it is more than one name: already worked out. */
  computed?: Quantity;
  bound?: Given<Bound & { dimension: Dimension; strict?: boolean; within?: number }>;
  statement: Statement;
  file?: string;
}

/**
 * `limit rake-over-limit to 8deg`: a changed figure of a rule. `to` gives both ends the same figure: the rule takes the one it has.
 * A figure written without a unit has dimension `number`; for a rule that measures lengths it is that many times `bare` mm.
 */
export interface LimitDesign {
  rule: string;
  ruleAt: Span;
  bound?: Given<Bound & { dimension: Dimension; bare?: number }>;
  statement: Statement;
  file?: string;
}

export interface AcceptDesign {
  rule: string;
  ruleAt: Span;
  /** Full or short name of the part or joint; absent: every subject. */
  on?: Given<string>;
  because?: Given<string>;
  statement: Statement;
}

export interface NoteDesign {
  date?: Given<string>;
  text?: Given<string>;
  statement: Statement;
}

export type PartDesign = PostDesign | RailDesign | SlatDesign | StickDesign | BowDesign | BlockDesign;
export type Declared =
  | PartDesign
  | JointDesign
  | AngleDesign
  | LetDesign
  | BoardDesign
  | YardDesign
  | LoadDesign;

/** Who wants a worked-out value, and who uses a let: names of parts and lets, for the telling of circles. */
export interface Readers {
  wantedBy: ReadonlyMap<string, ReadonlySet<string>>;
  lets: ReadonlyMap<string, ReadonlySet<string>>;
}

export interface Design {
  title?: Given<string>;
  /** Where the chair statement's word stands: problems of the whole chair land here; the file's first line if there is none. */
  titleAt: Span;
  units: LengthUnit;
  sitter: Given<SitterDesign>;
  stability?: Given<StabilityDesign>;
  timber?: Given<TimberDesign>;
  lets: Map<string, LetDesign>;
  posts: Map<string, PostDesign>;
  rails: Map<string, RailDesign>;
  slats: Map<string, SlatDesign>;
  sticks: Map<string, StickDesign>;
  bows: Map<string, BowDesign>;
  blocks: Map<string, BlockDesign>;
  joints: Map<string, JointDesign>;
  seat?: SeatDesign;
  angles: Map<string, AngleDesign>;
  trims: TrimDesign[];
  limits: LimitDesign[];
  requires: RequireDesign[];
  accepts: AcceptDesign[];
  notes: NoteDesign[];
  /** How many chairs; 1 when absent. */
  make?: Given<number>;
  boards: Map<string, BoardDesign>;
  yards: Map<string, YardDesign>;
  waste?: WasteDesign;
  matches: MatchDesign[];
  /** For how hard a use; domestic when absent. */
  strength?: Given<StrengthLevel>;
  loads: Map<string, LoadDesign>;
  climate?: Given<ClimateDesign>;
  /** Every name declared in this file or brought in, in order. */
  names: Map<string, Declared>;
  /** Files named by `use` and `like`, with where. */
  links: { kind: "use" | "like"; path: string; at: Span; found: boolean }[];
  problems: Problem[];
  /**
   * Worked-out values that the text asks for and that were not known yet. Not empty: reckon the chair, then evaluate again
   * with what is known by then.
   */
  wanted: Map<string, Span>;
  readers?: Readers;
}
