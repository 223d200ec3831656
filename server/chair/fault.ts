import type { Span } from "../../grammar/problem.ts";
import type { EndKind, JointFacts } from "../design/design.ts";

/** Why two rails cannot be halved: how much too far or too flat, mm or radians, and what is allowed. */
export interface HalvingTrouble {
  why: "side-by-side" | "does-not-reach" | "misses" | "no-shared-height";
  found: number;
  allowed: number;
}

/** What building found wrong; the rules turn it into sentences. */
export type Fault =
  | { is: "end-reaches-nothing"; part: string; end: string; at: Span; gap?: number; towards: string }
  | { is: "rail-misses-post"; part: string; end: string; at: Span; by: number; towards: string }
  | {
      is: "shoulder-on-curve";
      part: string;
      end: string;
      at: Span;
      towards: string;
      from: number;
      to: number;
    }
  | {
      is: "shoulder-over-knee";
      part: string;
      end: string;
      at: Span;
      towards: string;
      height: number;
      turn: number;
    }
  | { is: "wind"; part: string; at: Span; difference: number }
  /** A fact of its joint that this kind of joint cannot have. */
  | { is: "fact-refused"; part: string; at: Span; kind: EndKind; fact: keyof JointFacts }
  | ({ is: "not-halved"; part: string; at: Span; over: string } & (HalvingTrouble | { why: "said-twice" }))
  | { is: "no-room"; part: string; at: Span; message: string }
  | { is: "not-buildable"; part: string; at: Span; message: string; thrown?: unknown }
  /** Work of ours threw: the text is not to blame, and what it would have given is missing. `what` names it: `the value weight`. */
  | { is: "failed"; part: string; at: Span; what: string; thrown: unknown };

/** Work that threw, such as a rule or a value, by the name it is logged under. */
export interface Failure {
  what: string;
  thrown: unknown;
}
