/**
 * A Chair is the Design in space. All places are as drawn (x to the sitter's left, y back, z up, floor at z = 0, mm) unless
 * a name says "standing"; `stance` carries them to the chair as it stands on its trimmed feet.
 */

import type { Problem, Span } from "../../grammar/problem.ts";
import type {
  BlockDesign,
  BowDesign,
  Design,
  Dimension,
  Given,
  JointFacts,
  KindName,
  PostDesign,
  RailDesign,
  SeatDesign,
  SlatDesign,
  StickDesign,
  TimberDesign,
  TrimDesign,
} from "../design/design.ts";
import type { PartId, Side } from "../design/identity.ts";
import type { Body, Convex, Motion, Plane, Vec3 } from "../geometry/solid.ts";
import type { BowPath } from "./bows/path.ts";
import type { Fault } from "./fault.ts";
import type { Made } from "./made.ts";
import type { RailShape } from "./rails/rail-shape.ts";
import type { RailCut, RailStrip } from "./rails/rest-wood.ts";
import type { SeatLayer } from "./seat/seat-layer.ts";
import type { SeatPlan } from "./seat/solid/plan.ts";

export type * from "./fault.ts";
export type { Side };

/** A flat face of a member, looking out of it; of a curved member as it is halfway along. */
export interface MemberFace {
  name: "front" | "back" | "inside" | "outside" | "top" | "bottom";
  plane: Plane;
}

/** What every part of a chair has, whatever its kind. */
export interface MemberOf<Is extends string, Design> {
  is: Is;
  id: PartId;
  /** How its identity prints: `front.left`, `ladder.2`, `seat`. */
  name: string;
  side: Side;
  design: Design;
  /** Its own, else the file's. */
  timber?: TimberDesign;
  body: Body;
  /** Along the middle of its section, from its first end to its second; of a flat part along its grain, edge to edge. */
  centreLine: readonly Vec3[];
  /** Unit: the way its grain runs, from end to end. */
  grain: Vec3;
  /** Its flat faces that run along the grain; none of turned work. */
  faces: readonly MemberFace[];
}

/** Any part of a chair. */
export type Member = Post | Rail | Bow | Block | SeatSurface;

/** The four faces of a squared post, by where they look when it is not turned. `round` for turned posts. */
export type FaceName = "front" | "back" | "left" | "right";

/** A stretch of a post between two planes, straight, with flat (perhaps tapering) faces. */
export interface PostPiece {
  /** Plumb heights of the centre line's ends as drawn. */
  from: number;
  to: number;
  /** Centre line at both ends. */
  start: Vec3;
  end: Vec3;
  direction: Vec3;
  /** Outward planes of the faces; for a round post, absent. */
  faces?: Record<FaceName, Plane>;
  /** Radii at both ends of a round post. */
  radii?: [number, number];
  /** Part of a fair curve: a shoulder here is not flat. */
  curved: boolean;
  solid: Convex;
}

export interface Post extends MemberOf<"post", PostDesign> {
  /** Bottom to top. */
  pieces: PostPiece[];
  /** Plumb heights of the ends of the centre line as drawn, before `trim`. */
  footHeight: number;
  topHeight: number;
  /** Centre line ends: the foot after trim, the top. */
  foot: Vec3;
  top: Vec3;
  /** Along the centre line, after trim. */
  length: number;
}

/** The member an end enters. */
export interface Entered {
  kind: Member["is"];
  /** Full name. */
  name: string;
}

/** One end of a rail, slat or stick. */
export interface RailEnd {
  /** As in dotted names: `front`, or `left`/`right` for a rail that goes across. */
  name: string;
  entered?: Entered;
  /** The face entered, as a plane looking out of the post towards the rail. For a round post the tangent plane square to the rail. */
  shoulder?: Plane;
  /** The four corners of the shoulder in order: top outside, top inside, bottom inside, bottom outside. */
  corners: Vec3[];
  /** The four shoulder lines' lengths: top edge, inside face, bottom edge, outside face. */
  lines: [number, number, number, number];
  /** Radians, inside the rail, π/2 when square. */
  faceBevel: number;
  edgeBevel: number;
  /** Length mm; for rails lying over a post's top there is no shoulder. */
  over?: { overhang: number };
  joint?: Joint;
}

export interface Rail extends MemberOf<"rail" | "slat" | "stick", RailDesign | SlatDesign | StickDesign> {
  /** From first to second end. */
  ends: [RailEnd, RailEnd];
  /** Outside top arris from shoulder to shoulder (the straight). */
  start: Vec3;
  end: Vec3;
  /** Unit: along, outward normal of the outside face, and up the width (square to both). */
  along: Vec3;
  outward: Vec3;
  upward: Vec3;
  /** Along `outward` and `upward`; both the diameter of a round one, whose start and end are on its axis. */
  thick: number;
  wide: number;
  round?: number;
  /** Lies flat: its section's thickness stands up, so `wide` is the thickness and `thick` the width. */
  flat?: true;
  /** Between shoulders along the outside top arris; the straight of a bowed rail. */
  length: number;
  /** Along the curve, for a bowed rail. */
  roundLength?: number;
  arch?: { below?: number; above?: number };
  /** Positive rises outward along `outward`. */
  bow?: number;
  /** Its outline in its own measure. */
  shape?: RailShape;
  /** What it has cut out of it where it crosses other rails. */
  notches?: Notch[];
  /** The rebates and grooves cut along it for a loose seat, and the strips fixed to it, which its body holds. */
  cuts?: RailCut[];
  strips?: RailStrip[];
  /** Of a stick that goes on through a bow: where along that, the point of its own line nearest to its middle, and how far they are apart. */
  passes?: { bow: string; s: number; at: Vec3; off: number };
  /** Its body before anything was cut out along it or where it crosses, and without its strips. */
  uncut?: Body;
}

/** A notch that lets another rail through: all between two planes, beyond a floor. They look out of the notch into the wood. */
export interface Notch {
  /** Full name of the rail that goes through it. */
  by: string;
  sides: [Plane, Plane];
  floor: Plane;
}

/** A bent member in one plane, the same on both sides. */
export interface Bow extends MemberOf<"bow", BowDesign> {
  path: BowPath;
  /** A point of its centre line so far along from the left, mm, and the unit way it runs there. */
  spot(s: number): Vec3;
  way(s: number): Vec3;
  /** Unit, square to its plane. */
  normal: Vec3;
  /** Its section there, in the plane and square to it. */
  sizeAt(s: number): { thick: number; wide: number };
  /** Diameter of a round one at its crown. */
  round?: number;
}

export type Block = MemberOf<"block", BlockDesign>;

/** A stretch of a tenon's section, mm. */
export interface SectionBox {
  thick: [number, number];
  wide: [number, number];
  /** Of a turned tenon that tapers: its size at its end, against that at the shoulder. */
  tip?: number;
}

/** A tenon and its mortise. Named `RAIL to POST`, such as `seat-side.left to front.left`. */
export interface Joint {
  name: string;
  /** Full name of the rail, slat or post whose end is cut. */
  part: string;
  end: string;
  entered: Entered;
  facts: JointFacts;
  /** The joint's own name in the text, when it has one. */
  design?: string;
  /** Where the maker's choice stands: the `joined` fact, or the end's header. */
  at: Span;
  kind: KindName;
  /** The form of each tenon's section, by its kind. */
  shape: "rectangular" | "round" | "forked" | "none";
  /** As cut, mm; of twin tenons and dowels the width over all, of a fork the thickness and width of the tongue it goes over. */
  thick: number;
  wide: number;
  /** How deep it goes, square to the face it enters, on the tenon's middle. */
  long: number;
  /** Unit, into the member entered. */
  direction: Vec3;
  /** Middle of the tenon at the shoulder. */
  root: Vec3;
  /** Unit: across the tenon's thickness (outward) and up its width. */
  acrossThick: Vec3;
  acrossWide: Vec3;
  /** Wood of the rail outside and inside the tenon, above and below it. */
  shoulders: { outside: number; inside: number; top: number; bottom: number };
  /** The tenon from the shoulder plane in, haunch apart. Several for twin tenons, dowels and forks. */
  tenon: Convex[];
  /** Mortises in the part's own end, where its tenon is a separate tongue; and the least wood left beside them, mm. */
  socket: Convex[];
  socketWall?: number;
  /** The section of each, from the joint's middle along `acrossThick` and `acrossWide`, mm; of a dowel the square about it. */
  sections: SectionBox[];
  haunch?: Convex;
  /** mm³, tenon with haunch. */
  volume: number;
  /** Least wood left beside the mortise in the member entered, mm; negative when it breaks out. */
  mortiseWall: number;
  /** How much stuff the member has behind the shoulder on the tenon's middle, measured as `long` is: square to the face, mm. */
  depthThere: number;
  /** How far under its shoulder the wood begins, where it stands over a seat's hollow, measured as `long` is, mm. */
  overHollow?: number;
  /** Long grain to long grain: the cheeks, mm². */
  glueArea: number;
}

export interface SeatSurface extends MemberOf<"seat", SeatDesign> {
  /** The sitting surface as drawn, looking up. */
  plane: Plane;
  /** Outline as drawn, anticlockwise from above, starting front left. */
  outline: Vec3[];
  /** Its front and back edges: their ends and their middle. */
  front: { left: Vec3; middle: Vec3; right: Vec3 };
  back: { left: Vec3; middle: Vec3; right: Vec3 };
  /** The slabs that its body is made of, from its upper face down, and how far they keep from the posts, mm. */
  layers: SeatLayer[];
  clearance: number;
  /** Of a solid seat: its outline in its own measure. */
  plan?: SeatPlan;
}

export interface Worked {
  /** Dotted name: `seat.slope`. */
  name: string;
  /** mm, rad, kg, N, mm², mm³ or a plain number. */
  number: number;
  dimension: Dimension;
  /** What it is, one sentence. */
  meaning: string;
  /** Full name of the part it belongs to, if any. */
  part?: string;
}

/** The members by kind, each by its full name. */
export interface MemberViews {
  posts: Map<string, Post>;
  rails: Map<string, Rail>;
  slats: Map<string, Rail>;
  sticks: Map<string, Rail>;
  bows: Map<string, Bow>;
  blocks: Map<string, Block>;
  seat?: SeatSurface;
}

/** Its views by kind hold the very members that `members` holds, in the same order. */
export interface Chair extends MemberViews {
  design: Design;
  /** Every part by its full name, in the order to list them: posts, rails, slats, sticks, bows, corner blocks, the seat. */
  members: Map<string, Member>;
  joints: Map<string, Joint>;
  /** As drawn → as it stands. */
  stance: Motion;
  /** The floor's plane in drawn places, looking up; feet are cut to it. */
  floor: Plane;
  /** How far each foot is from the plane of the others, mm, by post; empty when all touch. */
  hanging: Map<string, number>;
  /** Every worked-out value, by dotted name, in the order to list them. Right-hand twins are found by `workedValue`. */
  values: Map<string, Worked>;
  /** Names of values that come to no finite number, so that they are not among those. */
  endless: readonly string[];
  /** Things that could not be built, each said once, such as a rail end that reaches nothing. */
  faults: Fault[];
  /** Answers to questions asked of this chair, by the function that gives them; read through `kept`. */
  answers: Map<(chair: Chair) => unknown, unknown>;
  /** What it was built of, for the next version of its file. */
  made: Made;
}

/** Re-exported so that a later room need not reach into the design for trims. */
export type { Given, Problem, TrimDesign };
