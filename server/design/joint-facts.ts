import type { Given } from "./given.ts";

/** A length, or a share of the rail's thickness or of the post it enters. */
export type Size = { mm: number } | { share: number; of: "rail" | "post" };

/** What the text says of a joint. */
export interface JointFacts {
  /** `full` is barefaced both sides: as thick as the rail. */
  tenonThick?: Given<Size | "full">;
  tenonWide?: Given<Size>;
  tenonLong?: Given<Size>;
  /** Square to the face it enters, or along the rail. */
  line?: Given<"in-line" | "square">;
  withBow?: Given<boolean>;
  /** Tenon's face from the rail's outside face, or centred in the thickness. */
  set?: Given<{ from: "outside"; distance: number } | { from: "centred" }>;
  shoulderTop?: Given<number>;
  shoulderBottom?: Given<number>;
  haunch?: Given<{ long: number; wide?: number; sloped?: boolean }>;
  mitre?: Given<{ gap: number }>;
  through?: Given<{ wedged: boolean }>;
  peg?: Given<{ diameter: number; draw: number; count: number; setback?: number }>;
  dowels?: Given<{ count: number; diameter: number; long: number }>;
  /** A separate tongue, or several; `long` is the whole of it. */
  looseTenon?: Given<{ count: number; thick: Given<Size>; wide?: Given<Size>; long: Given<number> }>;
  twin?: Given<{ gap: number }>;
  bridle?: Given<boolean>;
  glue?: Given<string>;
  fit?: Given<number>;
  /** A turned tenon: its diameter at the shoulder, at its end where it tapers, and its length where it is given. */
  round?: Given<{ diameter: number; tip?: number; long?: Size }>;
}

/** The kinds of joint that are cut at the end of a part. */
export type EndKind = "loose-tenon" | "dowels" | "fork" | "round" | "twin" | "rectangular";

/** Those, that of two rails which cross, and the bore that a stick goes through. */
export type CutKind = EndKind | "halving" | "passing";

/** `none` where the text asks for no kind, or says too little to cut one. */
export type KindName = CutKind | "none";

/** Ways to say what a tenon is: one of them given nearer by takes the place of the others. */
export const tenonWays: readonly (readonly (keyof JointFacts)[])[] = [
  ["tenonThick", "tenonWide", "tenonLong"],
  ["round"],
  ["looseTenon"],
];
