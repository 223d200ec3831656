/**
 * Whom a chair suits: lengths in mm, leans in degrees, shares from 0 to 1, each rounded as it is given away.
 */
import type { Chair } from "../../chair/chair.ts";
import { caution } from "../../floor/editions.ts";
import { assumedOf, fitAdults, fitNamed, type GroupFit } from "../../sitter/fit.ts";
import { loinsOf } from "../../sitter/loins.ts";
import { marksForAges, type SchoolMark, schoolMark } from "../../sitter/school-marks.ts";
import { sizesOf } from "../../sitter/sizes.ts";

export interface FitFound {
  chair: string;
  /** What meets the sitter. */
  sizes: Record<string, number>;
  /** The seat's fall to the back, the back's lean from square to the seat. */
  leans: { seat?: number; back?: number };
  /** Whether the back meets the small of the back; null without a back. */
  loins: boolean | null;
  groups: {
    group: "women" | "men";
    share: number;
    checks: { check: string; meaning: string; share: number }[];
    excludesMost?: { check: string; without: number };
  }[];
  together: number | null;
  assumed: { name: string; mm: number[]; seen: string; shareWithout: number }[];
  schoolMarks: { mark: number; seatHeight: number; popliteal: number[]; stature: number[] }[];
  sitter: { check: string; meaning: string; own: number; low?: number; high?: number; fits: boolean }[];
  caution: string;
}

/** Whom a chair suits. */
export function fitOf(title: string, chair: Chair): FitFound {
  const sitter = chair.design.sitter.value;
  const sizes = sizesOf(chair);
  const round = (value: number, places = 1) => Number(value.toFixed(places));
  const output: FitFound = {
    chair: title,
    sizes: Object.fromEntries(
      Object.entries(sizes).flatMap(([name, size]) =>
        typeof size === "number" ? [[name, round(size)]] : [],
      ),
    ),
    leans: leansOf(chair),
    loins: loinsOf(chair)?.meets ?? null,
    groups: [],
    together: null,
    assumed: [],
    schoolMarks: [],
    sitter: [],
    caution: `Sit in a prototype before the set is built. ${caution}`,
  };
  if (sitter.is === "adult") {
    const { groups, share } = fitAdults(sizes, sitter.group);
    output.groups = groups.map(groupOf);
    output.together = round(share, 4);
    output.assumed = assumedOf(sizes, chair.design.seat?.sag?.value ?? 0, sitter.group).map((each) => ({
      ...each,
      shareWithout: round(each.shareWithout, 4),
    }));
    output.caution = `Shares are of the people measured, soldiers, with the shoes and clothing assumed; the public differs. ${output.caution}`;
  } else if (sitter.is === "named") {
    output.sitter = fitNamed(sizes, sitter).map(({ check, own: value, low, high, fits }) => ({
      check: check.name,
      meaning: check.meaning,
      own: round(value),
      ...(low !== undefined && { low: round(low) }),
      ...(high !== undefined && { high: round(high) }),
      fits,
    }));
  } else {
    const marks = sitter.is === "child" ? marksForAges(sitter.from, sitter.to) : [schoolMark(sitter.mark)];
    output.schoolMarks = marks
      .filter((mark): mark is SchoolMark => mark !== undefined)
      .map(({ mark, seatHeight, popliteal, stature }) => ({ mark, seatHeight, popliteal, stature }));
  }
  return output;
}

/** What of a chair leans to its sitter, degrees. */
function leansOf({ values }: Chair): FitFound["leans"] {
  const degrees = (name: string) => {
    const worked = values.get(name);
    return worked && Number(((worked.number * 180) / Math.PI).toFixed(1));
  };
  const [seat, back] = [degrees("seat.slope"), degrees("backrest.rake")];
  return { ...(seat !== undefined && { seat }), ...(back !== undefined && { back }) };
}

function groupOf({ group, share, each, excludesMost }: GroupFit): FitFound["groups"][number] {
  const round = (value: number) => Number(value.toFixed(4));
  return {
    group,
    share: round(share),
    checks: each.map(({ check, share: alone }) => ({
      check: check.name,
      meaning: check.meaning,
      share: round(alone),
    })),
    ...(excludesMost && {
      excludesMost: { check: excludesMost.check.name, without: round(excludesMost.shareWithout) },
    }),
  };
}
