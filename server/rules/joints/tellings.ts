/**
 * What is said of each kind of joint, and which rules judge it. The sheets' words stand in `server/drawing/markout/wording.ts`, as they
 * round their figures in their own way.
 */
import type { Joint } from "../../chair/chair.ts";
import type { KindName } from "../../design/joint-facts.ts";

/** Rules that ask of a joint only what some kinds have. */
export type JointRule =
  | "haunch-missing"
  | "mortise-breaks-out"
  | "mortise-near-end"
  | "mortise-too-wide"
  | "mortise-wall-thin"
  | "peg-draws-too-far"
  | "peg-misplaced"
  | "post-weakened"
  | "shoulder-too-narrow"
  | "tenon-short-grain"
  | "tenon-too-broad"
  | "tenon-too-long"
  | "tenon-too-short"
  | "tenon-too-thick"
  | "tenon-too-thin"
  | "tenon-too-wide";

export interface JointTelling {
  /** As a sentence speaks of it: `the tenon` of a rail. */
  noun: string;
  /** As cut, in one phrase, for hovers and reports; `print` writes a length. */
  asCut(joint: Joint, print: (mm: number) => string): string;
  judgedBy: readonly JointRule[];
}

const ANY_MORTISE: JointRule[] = [
  "mortise-breaks-out",
  "mortise-near-end",
  "mortise-too-wide",
  "mortise-wall-thin",
  "post-weakened",
  "tenon-too-long",
  "tenon-too-wide",
];
const PEGGED: JointRule[] = ["peg-draws-too-far", "peg-misplaced"];
const SAWN: JointRule[] = [
  ...ANY_MORTISE,
  ...PEGGED,
  "haunch-missing",
  "shoulder-too-narrow",
  "tenon-short-grain",
  "tenon-too-broad",
  "tenon-too-short",
  "tenon-too-thick",
  "tenon-too-thin",
];

const through = ({ facts }: Joint): string =>
  facts.through ? (facts.through.value.wedged ? ", through and wedged" : ", through") : "";

export const tellings: Readonly<Record<KindName, JointTelling>> = {
  none: { noun: "the end", asCut: () => "no tenon", judgedBy: [] },
  rectangular: {
    noun: "the tenon",
    asCut: (joint, print) =>
      `tenon ${print(joint.thick)} × ${print(joint.wide)}, ${print(joint.long)} long${through(joint)}`,
    judgedBy: SAWN,
  },
  twin: {
    noun: "the tenon",
    asCut(joint, print) {
      const { sections, thick, wide, long } = joint;
      const [low, high] = sections[0]?.wide ?? [0, 0];
      const each = high - low;
      if (sections.length < 2) return tellings.rectangular.asCut(joint, print);
      return `twin tenons ${print(thick)} × ${print(each)}, ${print(wide - 2 * each)} apart, ${print(long)} long${through(joint)}`;
    },
    judgedBy: SAWN,
  },
  round: {
    noun: "the tenon",
    asCut: (joint, print) =>
      `round tenon ⌀ ${print(joint.thick)}, ${print(joint.long)} long${through(joint)}`,
    judgedBy: [...ANY_MORTISE, ...PEGGED, "tenon-short-grain", "tenon-too-short"],
  },
  dowels: {
    noun: "each dowel",
    asCut: ({ sections, thick, long }, print) =>
      `${sections.length} dowels ⌀ ${print(thick)}, ${print(long)} into either part`,
    judgedBy: [...ANY_MORTISE, "tenon-short-grain"],
  },
  fork: {
    noun: "the fork",
    asCut: ({ thick, wide, long }, print) =>
      `forked over ${print(long)}, slot ${print(thick)} × ${print(wide)}`,
    judgedBy: [],
  },
};
