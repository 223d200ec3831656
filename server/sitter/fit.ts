import type { SitterDesign } from "../design/design.ts";
import data from "./allowances.json" with { type: "json" };
import { type Group, groups, type Measure } from "./body-sizes.ts";
import { jointShare, type MeasureRange } from "./joint-share.ts";
import seats from "./seats.json" with { type: "json" };

type NamedSitter = Extract<SitterDesign, { is: "named" }>;

/** The chair's sizes that meet a sitter, mm, as it stands; what a chair does not have is absent. */
export interface ChairSizes {
  /** Front edge of the seat with a sitter on it, above the floor. */
  seatHeight?: number;
  /** From the front edge to where the back is leant on, along the seat. */
  seatDepth?: number;
  /** Clear between the arms, else the seat's width at its middle. */
  seatWidth?: number;
  /** The width is between arms. */
  betweenArms?: true;
  /** Top of the arms above the loaded seat. */
  armHeight?: number;
  /** Top of the back above the loaded seat. */
  backTop?: number;
}

/** What a sitter has on, mm: the height of the heels, and what clothing adds to the breadth of the hips. */
interface Worn {
  shoes: number;
  clothing: number;
}

/** What a group is taken to have on: shoes, medium clothing. */
export const wornBy = (group: Group): Worn => ({ shoes: data.shoes[group], clothing: data.clothing.medium });

/** What is taken for granted besides, mm. */
interface Allowances {
  /** Between arms, clothing included. */
  betweenSides: number;
  behindKnee: number;
  lowSeat: number;
  armAboveElbow: number;
  armBelowElbow: number;
  bladeBelowShoulder: number;
}

const usualAllowances: Allowances = {
  betweenSides: data.betweenSides.value,
  behindKnee: data.behindKnee.value,
  lowSeat: data.lowSeat.value,
  armAboveElbow: data.armAboveElbow.value,
  armBelowElbow: data.armBelowElbow.value,
  bladeBelowShoulder: data.bladeBelowShoulder.value,
};

/** One way in which a chair must suit a sitter. */
export interface FitCheck {
  name: "height" | "not too low" | "depth" | "width" | "arms" | "back" | "under a table";
  /** A plain sentence of what must hold. */
  meaning: string;
  measure: Measure;
  /** The sitters it suits, in the measure's own terms. */
  range: (worn: Worn) => { low?: number; high?: number };
}

/** How a chair suits one group of people. Shares 0 to 1. */
export interface GroupFit {
  group: Group;
  /** Of people whom every measure suits at once. */
  share: number;
  each: { check: FitCheck; share: number }[];
  /** The check without which the most more people would be suited. */
  excludesMost?: { check: FitCheck; shareWithout: number };
}

/** The checks that a chair of these sizes can be put to. */
export function fitChecks(sizes: ChairSizes, allow: Allowances = usualAllowances): FitCheck[] {
  const checks: FitCheck[] = [];
  const { seatHeight, seatDepth, seatWidth, armHeight, backTop } = sizes;
  if (seatHeight !== undefined) {
    checks.push({
      name: "height",
      meaning: "both feet rest on the floor",
      measure: "popliteal-height",
      range: ({ shoes }) => ({ low: seatHeight - shoes }),
    });
    checks.push({
      name: "not too low",
      meaning: "the thighs rest on the seat",
      measure: "popliteal-height",
      range: ({ shoes }) => ({ high: seatHeight - shoes + allow.lowSeat }),
    });
    checks.push({
      name: "under a table",
      meaning: "the thighs go under a table",
      measure: "thigh-clearance",
      range: () => ({ high: seats.underTable.high - seatHeight }),
    });
  }
  if (seatDepth !== undefined) {
    checks.push({
      name: "depth",
      meaning: "the back can be leant on with room behind the knee",
      measure: "buttock-popliteal-length",
      range: () => ({ low: seatDepth + allow.behindKnee }),
    });
  }
  if (seatWidth !== undefined) {
    checks.push({
      name: "width",
      meaning: "the hips find room",
      measure: "hip-breadth-sitting",
      range: ({ clothing }) => ({
        high: seatWidth - (sizes.betweenArms ? Math.max(allow.betweenSides, clothing) : clothing),
      }),
    });
  }
  if (armHeight !== undefined) {
    checks.push({
      name: "arms",
      meaning: "the elbows rest on the arms with the shoulders down",
      measure: "elbow-rest-height",
      range: () => ({
        low: armHeight - allow.armAboveElbow,
        high: armHeight + allow.armBelowElbow,
      }),
    });
  }
  if (backTop !== undefined) {
    checks.push({
      name: "back",
      meaning: "the back reaches the shoulder blades",
      measure: "shoulder-height-sitting",
      range: () => ({ high: backTop + allow.bladeBelowShoulder }),
    });
  }
  return checks;
}

/**
 * The share of a group of adults whom all checks suit at once, each check by itself, and the one that excludes most. From
 * the body-size data (soldiers: younger and leaner than the public); shoes and medium clothing included.
 */
function fitGroup(group: Group, checks: readonly FitCheck[]): GroupFit {
  const ranges = (some: readonly FitCheck[]) => rangesOf(some, wornBy(group));
  const share = jointShare(group, ranges(checks));
  const without = checks.map((check) => ({
    check,
    shareWithout: jointShare(group, ranges(checks.filter((other) => other !== check)), 127),
  }));
  const most = without.reduce<(typeof without)[number] | undefined>(
    (best, one) => (best && best.shareWithout >= one.shareWithout ? best : one),
    undefined,
  );
  return {
    group,
    share,
    each: checks.map((check) => ({ check, share: jointShare(group, ranges([check])) })),
    ...(most && most.shareWithout > share + 0.001 ? { excludesMost: most } : {}),
  };
}

const rangesOf = (checks: readonly FitCheck[], worn: Worn): MeasureRange[] =>
  checks.map((check) => ({ measure: check.measure, ...check.range(worn) }));

/** Something taken for granted about sitters, and what share of people would be suited without it. */
interface Assumed {
  name: "shoes" | "clothing" | "room between the arms" | "room behind the knee" | "sag";
  /** mm; of shoes women's and men's. */
  mm: number[];
  seen: string;
  shareWithout: number;
}

/** What the shares of adults rest on, for the checks that a chair can be put to; `sag` is how far its seat gives way, mm. */
export function assumedOf(sizes: ChairSizes, sag: number, only?: Group): Assumed[] {
  const some = only ? [only] : groups;
  const share = (of: ChairSizes, allow: Allowances, worn: (group: Group) => Worn) =>
    some.reduce((sum, group) => sum + jointShare(group, rangesOf(fitChecks(of, allow), worn(group))), 0) /
    some.length;
  const barefoot = (group: Group): Worn => ({ ...wornBy(group), shoes: 0 });
  const bare = (group: Group): Worn => ({ ...wornBy(group), clothing: 0 });
  const without = (allow: Partial<Allowances>) => share(sizes, { ...usualAllowances, ...allow }, wornBy);
  const { seatHeight, seatDepth, seatWidth, betweenArms } = sizes;
  const assumed: (Assumed | undefined)[] = [
    seatHeight === undefined
      ? undefined
      : {
          name: "shoes",
          mm: some.map((group) => data.shoes[group]),
          seen: data.shoes.seen,
          shareWithout: share(sizes, usualAllowances, barefoot),
        },
    seatWidth === undefined
      ? undefined
      : betweenArms
        ? {
            name: "room between the arms",
            mm: [data.betweenSides.value],
            seen: data.betweenSides.seen,
            shareWithout: share(sizes, { ...usualAllowances, betweenSides: 0 }, bare),
          }
        : {
            name: "clothing",
            mm: [data.clothing.medium],
            seen: data.clothing.seen,
            shareWithout: share(sizes, usualAllowances, bare),
          },
    seatDepth === undefined
      ? undefined
      : {
          name: "room behind the knee",
          mm: [data.behindKnee.value],
          seen: data.behindKnee.seen,
          shareWithout: without({ behindKnee: 0 }),
        },
    seatHeight === undefined || sag === 0
      ? undefined
      : {
          name: "sag",
          mm: [sag],
          seen: "the file's own; taken whole at the front edge",
          shareWithout: share({ ...sizes, seatHeight: seatHeight + sag }, usualAllowances, wornBy),
        },
  ];
  return assumed.filter((each) => each !== undefined);
}

/** Both groups, and the two taken half and half. */
export function fitAdults(sizes: ChairSizes, only?: Group): { groups: GroupFit[]; share: number } {
  const checks = fitChecks(sizes);
  const fits = (only ? [only] : groups).map((group) => fitGroup(group, checks));
  return { groups: fits, share: fits.reduce((sum, fit) => sum + fit.share, 0) / fits.length };
}

/** Which checks a named sitter passes by their own measures, in what they have on; a measure not given is not judged. */
export function fitNamed(
  sizes: ChairSizes,
  { measures }: Pick<NamedSitter, "measures">,
): { check: FitCheck; own: number; low?: number; high?: number; fits: boolean }[] {
  const worn = {
    shoes: measures.get("shoes")?.value ?? data.shoes.men,
    clothing: measures.get("clothing")?.value ?? data.clothing.medium,
  };
  return fitChecks(sizes).flatMap((check) => {
    const own = measures.get(check.measure)?.value;
    if (own === undefined) return [];
    const { low, high } = check.range(worn);
    return [
      {
        check,
        own,
        ...(low !== undefined && { low }),
        ...(high !== undefined && { high }),
        fits: own >= (low ?? own) && own <= (high ?? own),
      },
    ];
  });
}
