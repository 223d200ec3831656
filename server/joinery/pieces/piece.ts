/**
 * A chair's parts as pieces to mark out: pure data, millimetres and radians. A face is laid flat as a strip of panels that hinge on
 * each other where the stick bends, so that every line on it has its true length.
 */
import type { EndKind } from "../../design/joint-facts.ts";
import type { Vec3 } from "../../geometry/solid.ts";

/** A place on a laid-open face: along the stick from the datum, and up the page. */
export type Spot = readonly [number, number];

/** A flat stretch of a face and where it comes to lie. */
export interface Panel {
  /** A point of the stretch in the chair, and unit directions in it: along the stick, and up the page; the normal looks out. */
  origin: Vec3;
  along: Vec3;
  across: Vec3;
  normal: Vec3;
  /** Where `origin` lies on the laid-open face, and the angle of `along` there, anticlockwise. */
  at: Spot;
  turn: number;
}

type MarkKind =
  | "arris"
  /** Cut end of the stick: its shoulder, where it has a tenon. */
  | "end"
  /** Beyond the shoulder, as seen square to this face. */
  | "tenon"
  | "haunch"
  | "mortise"
  | "haunch-mortise"
  /** Where a through mortise comes out. */
  | "exit"
  | "hole"
  /** Squared round: where the stick turns, a curve begins, or a taper. */
  | "knee"
  | "taper"
  /** A line of a rebate, a groove or a strip. */
  | "rest"
  /** A datum, squared round; `letter` is its name. */
  | "datum";

export interface Mark {
  is: MarkKind;
  /** One spot for a hole's middle, else a line; `closed` ones are drawn round. */
  spots: Spot[];
  closed?: true;
  diameter?: number;
  /** The panel each spot lies in, for folding it back; a tenon lies behind the face and has none. */
  panels?: number[];
  /** Letter of the mortise or hole in the piece's list. */
  letter?: string;
}

export interface LaidFace {
  /** `front`, `outside` … */
  name: string;
  panels: Panel[];
  /** The corners of each panel's stretch of the face, in order round it. */
  rings: Spot[][];
  marks: Mark[];
  gauge?: "face side" | "face edge";
  /** Its long lines are not straight and parallel, so that it wants a full-size template; why, in a word. */
  shaped?: "curved" | "tapered";
}

/** A line squared round the stick from which distances run along one straight stretch of it. */
export interface Datum {
  name: string;
  /** Where it is: a sentence without its full stop. */
  says: string;
  /** Along the centre line from the first datum, for a rod. */
  along: number;
  /** How far the stretch runs from it, one way and the other, along the centre line. */
  reach: [number, number];
  /** Of a datum beyond a bend: where it crosses the centre line, and how the stick goes on there. */
  place?: DatumPlace;
}

/** From the datum that the piece's outline runs from, along its line and towards two faces beside each other; and the turn towards them, radians. */
export interface DatumPlace {
  from: string;
  along: number;
  off: readonly [number, number];
  turn: readonly [number, number];
}

/** How far each face lies from the outline's line at a station, in the order of the faces: at its arris with the one before, and with the next. */
export interface OutlineRow {
  at: number;
  offsets: (readonly [number, number])[];
}

/** The outline of squared stuff that is not plain; straight from one row to the next, or a fair curve through them. */
export interface Outline {
  rows: OutlineRow[];
  /** What the offsets run from: the centre line at the piece's own datum, or an arris. */
  line: "centre line" | "outside top arris";
  /** Whether each face is square to the next across each run's own line, however it is tapered. */
  square: boolean;
  curves?: OutlineCurve[];
}

interface OutlineCurve {
  is: "arch" | "bow";
  face: "top" | "bottom" | "outside";
  towards: "top" | "outside" | "inside";
  from: number;
  to: number;
  rise: number;
  radius: number;
}

/** Two figures where a line runs out of parallel, at the low and the high end; the same twice where it does not. */
export type Ends = readonly [number, number];

/** A mortise, hole or peg hole as it is set out on one face. */
export interface Mortise {
  letter: string;
  is: "mortise" | "hole" | "peg";
  face: string;
  /** Full name of what enters. */
  for: string;
  /** Name of the datum that `from` and `to` run from. */
  datum: string;
  /** Along the stick: where it starts and ends, on its near and its far side; a hole's middle throughout. */
  from: Ends;
  to: Ends;
  /** Gauged from the face named: near and far side, at the start and at the end; a hole's middle throughout. Of a peg through turned stuff: off the axis. */
  near: Ends;
  far: Ends;
  gaugedFrom: string;
  /** Square to the face; undefined right through. */
  deep?: number;
  /** Of the tenon that goes in: so that a mortise is never set out narrower. */
  tenon: { thick: number; wide: number };
  /** How far it leans from square to the face it is cut in, going in: towards the far end of the stick, and away from the gauged face. */
  lean: { along: number; across: number };
  diameter?: number;
  haunch?: { from: Ends; to: Ends; near: Ends; far: Ends; deep: number; sloped: boolean };
  /** Where a through mortise comes out on the face opposite, gauged there as it is here. */
  exit?: { face: string; from: Ends; to: Ends; near: Ends; far: Ends };
  /** On a turned stick: round from its front, anticlockwise as seen from its far end. */
  round?: number;
  /** And of a mortise there: how its middle line turns onward round, towards the far end. */
  turn?: number;
  mitred?: true;
}

/** A hole or a tenon that tapers: its diameter at its end, and how far along it that is. */
export interface Cone {
  tip: number;
  over: number;
}

/** A socket in a solid seat, mm and radians. */
export interface SeatBore {
  letter: string;
  /** Full name of what is let in. */
  for: string;
  /** The face that the bit goes in. */
  face: string;
  /** On that face: from the middle line to one side, and behind the front edge. */
  out: number;
  side: "left" | "right" | "middle";
  behind: number;
  /** The way the far end of what is let in leans: from straight back, towards one side. */
  sightLine: number;
  towards: "left" | "right";
  /** From square to the face. */
  lean: number;
  diameter: number;
  cone?: Cone;
  /** Along the bore on its middle, to where it holds all of the tenon; undefined right through. */
  deep?: number;
}

/** A notch that lets another rail through, on the two faces beside the one that it opens in. */
export interface CutNotch {
  /** Full name of the rail that goes through it. */
  for: string;
  /** The face that it opens in. */
  face: string;
  datum: string;
  sides: [NotchSide, NotchSide];
}

/** What is cut along a rail, or fixed to it, for a loose seat; mm. From shoulder to shoulder unless `along` says. */
export type CutRest = { datum: string } & (
  | {
      is: "rebate";
      face: "inside" | "outside";
      edge: "top" | "bottom";
      /** Off the face, and off the edge. */
      wide: number;
      deep: number;
      along?: Ends;
    }
  /** `at` from the top edge to its nearer side; in an edge, from the outside face. */
  | { is: "groove"; face: "inside" | "outside" | "top" | "bottom"; wide: number; deep: number; at: number }
  | {
      is: "strip";
      face: "inside" | "outside";
      /** Up and down, and off the face; its top so far below the rail's. */
      wide: number;
      thick: number;
      at: number;
      /** Where it ends along the stick: on the rail at its top, at its far side there, and on the rail below. */
      on: Ends;
      far: Ends;
      below: Ends;
      /** To be cut from. */
      long: number;
      /** The rails of the strips that it butts against. */
      butts?: string[];
    }
);

/** Where it starts and ends along the stick, at the arris and at its floor, and how deep it is there, square to the face it opens in. */
interface NotchSide {
  face: string;
  mouth: Ends;
  floor: Ends;
  deep: Ends;
}

/** One end of a stick. */
export interface CutEnd {
  name: string;
  /** Full name of what it enters. */
  enters?: string;
  /** Where each arris is cut, from the datum named; none on turned stuff. */
  cuts: { arris: string; at: number }[];
  datum: string;
  /** On each face, between the arris that the bevel's stock lies on as it runs there and the line, inside the stick: π/2 when square. */
  bevels: { face: string; from: string; angle: number }[];
  /** On turned stuff that is not cut square: the angle to its axis, and where round from the front it is longest. */
  slant?: { angle: number; round: number };
  /** On stuff that enters turned work: how far its wood runs on past the shoulder line, hollowed to fit, and over what diameter. */
  hollowed?: { past: number; over: number };
  tenon?: CutTenon;
}

export interface CutTenon {
  thick: number;
  wide: number;
  /** As the text has it, square to the face it enters; and along the tenon on its middle. */
  long: number;
  run: number;
  /** The faces that its cheeks and its edges look to: `["outside", "inside"]`. On turned stuff as if it were squared about its front. */
  cheeks: readonly [string, string];
  edges: readonly [string, string];
  /** From each face, square to it, to the nearest of the tenon where it meets the shoulder; in the order of cheeks, then edges. */
  shoulders: readonly [number, number, number, number];
  /** How far it is turned about the stick, from `cheeks[0]` towards `edges[0]`, radians; 0 as a rule. */
  turn: number;
  haunch?: { long: number; wide: number; sloped: boolean };
  /** `thick` and `wide` are each one's own; of a fork the tongue's that is left out between its tines. */
  kind: EndKind;
  count: number;
  /** From the upper edge's face to the middle of each, when there are several. */
  middles: number[];
  /** From the stick's own line towards `cheeks[0]` and `edges[0]`, radians. */
  lean: readonly [number, number];
  /** Whether its direction is square to the shoulder. */
  square: boolean;
  /** Each mitre: the cheek it cuts shorter, where it crosses that cheek's two edges from the shoulder along the tenon, and its angle to the cheek. */
  mitres: CutMitre[];
  /** The deepest that is left of it square to the face it enters: `long`, or less where it is mitred. */
  deep: number;
  /** Of a round one that tapers. */
  cone?: Cone;
  through: boolean;
  wedges?: Wedges;
  /** How much looser than its mortise it is to be made; less than nothing when tighter. */
  fit?: number;
  glue?: string;
  peg?: { diameter: number; count: number; setback: number; draw: number };
}

export interface CutMitre {
  /** Index into `cheeks`. */
  cheek: 0 | 1;
  /** At the edge that looks to `edges[0]` and at the other. */
  at: readonly [number, number];
  angle: number;
}

/** Wedges driven into the end of a through tenon, mm: each as wide as the tenon is thick. */
export interface Wedges {
  count: number;
  /** From the tenon's edges to the saw cuts for them. */
  in: number;
  /** How deep the cuts run from the end. */
  deep: number;
  /** At its thick end, and how long it is. */
  thick: number;
  long: number;
  /** Set across the grain of the seat that the tenon goes through. */
  across?: true;
}

/** The outline of turned stuff, from its first end: a straight run from each station to the next. */
export interface Turned {
  stations: { at: number; diameter: number }[];
  /** Its centre line as it lies in the plane it is bent in, when it is bent. */
  bent?: Spot[];
  /** The same from the line of the piece's own datum: along it, and towards the first two faces. */
  axis?: { at: number; off: readonly [number, number] }[];
  /** Four ways round it, in rolling order from its front, as a squared stick has faces. */
  faces: readonly [string, string, string, string];
}

/** A part seen in plan: slabs from its upper face down, the first one's outline is drawn. */
export interface Plan {
  ring: Spot[];
  seen: string;
  /** The way its grain runs, from the drawing's right anticlockwise, radians. */
  grain: number;
  layers: PlanLayer[];
  /** Of a solid seat: its sockets, and its hollow from the rim in. */
  bores?: SeatBore[];
  hollow?: Contour[];
}

/** A slab between two depths under the upper face, mm; `under` runs round as `top` does, corner by corner, where its lower outline differs. */
export interface PlanLayer {
  name: string;
  from: number;
  to: number;
  top: Spot[];
  under?: Spot[];
  /** Openings within it, such as a post stands in. */
  openings: { top: Spot[]; under: Spot[] }[];
}

/** A contour of a hollow: how deep it is there, mm. */
export interface Contour {
  deep: number;
  ring: Spot[];
}

/** A bow: where its centre line lies in its plane, and what is cut on it and in it. mm and radians. */
export interface BowForm {
  /** From the left end to the crown; the other half mirrors it: along the line, across from the middle, up from the line between the ends. */
  spots: { along: number; across: number; rise: number }[];
  /** The whole centre line without tenons, and straight from end to end. */
  along: number;
  between: number;
  /** How its centre line leans outward where it leaves that line, from square. */
  lean: number;
  /** The tightest of its inside face. */
  radius: number;
  /** Its section at the ends, where it tapers to them. */
  ends?: { thick: number; wide: number };
  feet: BowFoot[];
  bores: BowBore[];
}

interface BowFoot {
  end: string;
  enters: string;
  thick: number;
  wide: number;
  round: boolean;
  /** Square to the seat, and along the bow's own line there. */
  long: number;
  run: number;
  /** How the seat's square leans from the bow's line there, going down: out of the curve in the bow's plane, and to the back of that. */
  lean: { outward: number; back: number };
  cone?: Cone;
}

/** A bore in a bow where the bit goes in: its section's place along the centre line from the left end, the face, and how it leans from square to that. */
export interface BowBore {
  letter: string;
  for: string;
  along: number;
  /** Out of the centre line in the bow's plane. */
  off: number;
  face: string;
  /** On the face, from the face named beside it; of round stuff how far round towards that. */
  gauge?: number;
  round?: number;
  diameter: number;
  /** Towards the right end, and towards the face named. */
  lean: { along: number; across: number };
  towards: string;
  deep?: number;
}

/** The blank of a part, mm: its grain along its length. */
export interface Blank {
  thick: number;
  wide: number;
  long: number;
  /** The sawn thickness that gives it. */
  sawn?: number;
  /** How many are glued side by side. */
  staves: number;
  /** What becomes of it, where that is not plain: `sawn to its outline`. */
  kind?: string;
}

export interface Piece {
  /** `seat-side`, or a member's own, `ladder.2`. */
  name: string;
  is: "post" | "rail" | "slat" | "stick" | "bow" | "block" | "seat";
  /** All the parts made to this sheet; the first is the one drawn. */
  parts: { name: string; mirrored: boolean }[];
  timber?: string;
  /** Of its timber, percent, where the file says. */
  moisture?: number;
  /** What stands over the part in the file. */
  comment?: string;
  /** The finished stick, tenons in, before it is shaped. */
  size: { long: number; wide: number; thick: number; round?: number };
  /** What it is planed from, where that is asked for. */
  blank?: Blank;
  /** Between the shoulders, on the arris that lengths are given for. */
  between?: number;
  faces: LaidFace[];
  turned?: Turned;
  outline?: Outline;
  /** Of a bow. */
  form?: BowForm;
  /** Of a leg in a solid seat: how much comes off one side of its foot when it is cut to the floor. */
  levelling?: number;
  /** A part marked out in plan: its outline, anticlockwise from its lower left, and how it is seen. */
  plan?: Plan;
  datums: Datum[];
  ends: CutEnd[];
  mortises: Mortise[];
  notches?: CutNotch[];
  rests?: CutRest[];
  notes: string[];
}
