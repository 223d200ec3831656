/**
 * What is said of each kind of joint, and which rules judge it. The sheets' words stand in `server/drawing/markout/wording.ts`, as they
 * round their figures in their own way.
 */
import type { Joint } from "../../chair/chair.ts";
import type { Given } from "../../design/given.ts";
import type { JointFacts, KindName } from "../../design/joint-facts.ts";

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

type Size = Given<unknown> | undefined;

export interface JointTelling {
  /** The facts that give its sizes, on which findings land; `apart` where each stands by itself, so that a fix can change it. */
  sizes(facts: JointFacts): { thick?: Size; wide?: Size; long?: Size; apart: boolean };
  /** How many times as long it is said to be as it goes into the member. */
  times: 1 | 2;
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

const sawnSizes = ({ tenonThick, tenonWide, tenonLong }: JointFacts) => ({
  thick: tenonThick,
  wide: tenonWide,
  long: tenonLong,
  apart: true,
});

const through = ({ facts }: Joint): string =>
  facts.through ? (facts.through.value.wedged ? ", through and wedged" : ", through") : "";

export const tellings: Readonly<Record<KindName, JointTelling>> = {
  none: {
    sizes: sawnSizes,
    times: 1,
    asCut: () => "no tenon",
    judgedBy: [],
  },
  rectangular: {
    sizes: sawnSizes,
    times: 1,
    asCut: (joint, print) =>
      `tenon ${print(joint.thick)} × ${print(joint.wide)}, ${print(joint.long)} long${through(joint)}`,
    judgedBy: SAWN,
  },
  twin: {
    sizes: sawnSizes,
    times: 1,
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
    sizes: ({ round, tenonThick, tenonWide, tenonLong }) => ({
      thick: round ?? tenonThick,
      wide: round ?? tenonWide,
      long: round ?? tenonLong,
      apart: round === undefined,
    }),
    times: 1,
    asCut: (joint, print) =>
      `round tenon ⌀ ${print(joint.thick)}, ${print(joint.long)} long${through(joint)}`,
    judgedBy: [...ANY_MORTISE, ...PEGGED, "tenon-short-grain", "tenon-too-short"],
  },
  "loose-tenon": {
    sizes: ({ looseTenon }) => {
      const { thick, wide, long } = looseTenon?.value ?? {};
      return { thick, wide, long, apart: true };
    },
    times: 2,
    asCut({ sections, thick, long }, print) {
      const [low, high] = sections[0]?.wide ?? [0, 0];
      const several = sections.length > 1 ? `${sections.length} loose tenons, each` : "loose tenon";
      return `${several} ${print(thick)} × ${print(high - low)} × ${print(2 * long)}, ${print(long)} into either part`;
    },
    judgedBy: [
      ...ANY_MORTISE,
      ...PEGGED,
      "shoulder-too-narrow",
      "tenon-too-broad",
      "tenon-too-short",
      "tenon-too-thick",
      "tenon-too-thin",
    ],
  },
  halving: {
    sizes: () => ({ apart: false }),
    times: 1,
    asCut: ({ thick, wide, long }, print) =>
      `halved, a notch ${print(wide)} long and ${print(long)} deep over ${print(thick)}`,
    judgedBy: [],
  },
  passing: {
    sizes: () => ({ apart: false }),
    times: 1,
    asCut: ({ thick }, print) => `bored ⌀ ${print(thick)}, right through`,
    judgedBy: ["mortise-breaks-out", "mortise-wall-thin"],
  },
  dowels: {
    sizes: ({ dowels }) => ({ thick: dowels, wide: dowels, long: dowels, apart: false }),
    times: 2,
    asCut: ({ sections, thick, long }, print) =>
      `${sections.length} dowels ⌀ ${print(thick)}, ${print(long)} into either part`,
    judgedBy: [...ANY_MORTISE, "tenon-short-grain"],
  },
  fork: {
    sizes: sawnSizes,
    times: 1,
    asCut: ({ thick, wide, long }, print) =>
      `forked over ${print(long)}, slot ${print(thick)} × ${print(wide)}`,
    judgedBy: [],
  },
};
