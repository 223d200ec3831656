/**
 * A chair's parts as pieces to mark out: pure data, millimetres and radians. A face is laid flat as a strip of panels that hinge on
 * each other where the stick bends, so that every line on it has its true length.
 */
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

export type MarkKind =
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
  /** How far it leans from square to the face going in: towards the far end of the stick, and away from the gauged face. */
  lean: { along: number; across: number };
  diameter?: number;
  haunch?: { from: number; to: number; deep: number; sloped: boolean };
  /** On a turned stick: round from its front, anticlockwise as seen from its far end. */
  round?: number;
  mitred?: true;
}

/** One end of a stick. */
export interface CutEnd {
  name: string;
  /** Full name of what it enters. */
  enters?: string;
  /** Where each arris is cut, from the datum named; none on turned stuff. */
  cuts: { arris: string; at: number }[];
  datum: string;
  /** On each face, between the arris that the bevel's stock lies on and the line, inside the stick: π/2 when square. */
  bevels: { face: string; from: string; angle: number }[];
  /** On turned stuff that is not cut square: the angle to its axis, and where round from the front it is longest. */
  slant?: { angle: number; round: number };
  tenon?: CutTenon;
}

export interface CutTenon {
  thick: number;
  wide: number;
  /** Square to the face it enters, and along the tenon on its middle. */
  long: number;
  run: number;
  shoulders: { outside: number; inside: number; top: number; bottom: number };
  haunch?: { long: number; wide: number; sloped: boolean };
  /** `thick` and `wide` are each one's own; of a fork the tongue's that is left out between its tines. */
  kind: "tenon" | "round" | "dowels" | "fork";
  count: number;
  /** From the top edge of the stuff to the middle of each, when there are several. */
  middles: number[];
  /** From the stick's own line. */
  lean: number;
  mitred: boolean;
  through: boolean;
  wedged: boolean;
  /** How much looser than its mortise it is to be made; less than nothing when tighter. */
  fit?: number;
  glue?: string;
  peg?: { diameter: number; count: number; setback: number; draw: number };
}

/** The outline of turned stuff, from its first end: a straight run from each station to the next. */
export interface Turned {
  stations: { at: number; diameter: number }[];
  /** Its centre line as it lies in the plane it is bent in, when it is bent. */
  bent?: Spot[];
}

export interface Piece {
  /** `seat-side`, or a member's own, `ladder.2`. */
  name: string;
  is: "post" | "rail" | "slat" | "block" | "seat";
  /** All the parts made to this sheet; the first is the one drawn. */
  parts: { name: string; mirrored: boolean }[];
  timber?: string;
  /** The finished stick, tenons in, before it is shaped. */
  size: { long: number; wide: number; thick: number; round?: number };
  /** Between the shoulders, on the arris that lengths are given for. */
  between?: number;
  faces: LaidFace[];
  turned?: Turned;
  /** A part marked out in plan: its outline, anticlockwise from its lower left, and how it is seen. */
  plan?: { ring: Spot[]; seen: string };
  datums: Datum[];
  ends: CutEnd[];
  mortises: Mortise[];
  notes: string[];
}
