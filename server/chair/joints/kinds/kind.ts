/**
 * What a kind of joint is: one file a kind gives one of these, and the table in `index.ts` holds them all.
 */
import type { JointFacts } from "../../../design/design.ts";
import type { Convex, Vec3 } from "../../../geometry/solid.ts";
import type { Joint, SectionBox } from "../../chair.ts";
import type { Fault } from "../../fault.ts";
import type { JointSite } from "../joint-site.ts";
import type { TenonFrame } from "../joint-solid.ts";

/** What is left of the end around its tenon, and how big that is, mm. */
export interface TenonSizes {
  /** Both the diameter of a round one; `wide` over all where there are several. */
  thick: number;
  wide: number;
  shoulders: Joint["shoulders"];
}

/** One tenon of a joint. */
export interface Cut {
  section: SectionBox;
  thick: number;
  wide: number;
  /** Its size at its end against that at the shoulder; 1 unless it tapers. */
  tip: number;
  /** Along the tenon from the shoulder, mm; and as much of it as lies in the wood. */
  run: number;
  glued: number;
}

/** The form of a tenon's section. */
export interface Form {
  name: "rectangular" | "round" | "forked";
  /** From the shoulder in, ended parallel to the face entered and `depth` mm behind it. */
  solid(frame: TenonFrame, section: SectionBox, depth: number): Convex | undefined;
  /** Of its section, mm². */
  /** The mean over its length of one that tapers. */
  area(cut: Pick<Cut, "thick" | "wide" | "tip">): number;
  /** The most that w · p comes to over the section about its middle, for w with these parts along its thickness and width. */
  support(thick: number, wide: number): number;
  /** Sides that meet long grain, mm²; `grain` runs along the member entered, `wall` is the wood left beside it. */
  glued(frame: TenonFrame, cut: Cut, grain: Vec3, wall: number): number;
}

export interface JointKind {
  form: Form;
  /** The facts that it reads beside those which every joint may have. */
  reads: readonly (keyof JointFacts)[];
  /** Whether the text asks for this kind here. */
  isAsked(facts: JointFacts, end: Pick<JointSite, "round">): boolean;
  /** The tenon's section and what is left around it; undefined when there is no room, which `faults` then tells. */
  sizes(site: JointSite, frame: TenonFrame, faults: Fault[]): TenonSizes | undefined;
  /** How deep it goes, square to the face; `depth` is how much wood there is. Undefined when the text does not say. */
  long(site: JointSite, depth: number, faults: Fault[]): number | undefined;
  /** Where each tenon lies about the joint's middle. */
  sections(sizes: TenonSizes, facts: JointFacts): SectionBox[];
  /** May have a haunch beside its tenon. */
  haunched: boolean;
  /** The tenon may lie open at the member's sides, as a fork's tines do. */
  open: boolean;
  /** Goes in square to the face entered, whatever the text says of its line. */
  square?: true;
  /** A tongue of its own, let as deep into the part's end as into the member it enters. */
  separate?: true;
  /** Facts that it cannot have. */
  refuses?: readonly (keyof JointFacts)[];
}

/** The facts that every kind of joint may have: how it is placed, closed and held. */
export const COMMON = [
  "line",
  "withBow",
  "set",
  "shoulderTop",
  "shoulderBottom",
  "peg",
  "glue",
  "fit",
] as const;
