import type { Design, PartRef, RailCourse, RailDesign, RailStation } from "../../design/design.ts";
import type { Bow, Post, Rail, Side } from "../chair.ts";

/** One end of a rail as its course has it. */
export interface CourseEnd {
  /** As in dotted names: `left`, `right`, or the member it enters. */
  name: string;
  /** Full name of the member. */
  member: string;
  station?: RailStation;
  overhang?: number;
}

/** Posts, rails and bows built so far, by full name. */
export type Built = (name: string) => Post | Rail | Bow | undefined;

/**
 * The two ends of a rail on one side of the chair, first and second. Undefined when the text gives none, or when a reference to a pair
 * leaves open which of the two is meant.
 */
export function courseEnds(design: Design, rail: RailDesign, side: Side): [CourseEnd, CourseEnd] | undefined {
  const course = rail.course?.value;
  if (!course) return undefined;
  if (course.is === "from-to") return fromTo(design, course, side);
  const first = fullName(design, { ...course.of, side: "left" }, side);
  const second = fullName(design, { ...course.of, side: "right" }, side);
  if (!first || !second || first === second) return undefined;
  const end = (name: string, member: string): CourseEnd => ({
    name,
    member,
    ...(course.is === "over"
      ? { overhang: course.overhang }
      : course.station
        ? { station: course.station }
        : {}),
  });
  return [end("left", first), end("right", second)];
}

function fromTo(
  design: Design,
  course: Extract<RailCourse, { is: "from-to" }>,
  side: Side,
): [CourseEnd, CourseEnd] | undefined {
  const from = fullName(design, course.from, side);
  const to = fullName(design, course.to, side);
  if (!from || !to || from === to) return undefined;
  return [
    {
      name: endName(course.from, course.to),
      member: from,
      ...(course.stationFrom ? { station: course.stationFrom } : {}),
    },
    {
      name: endName(course.to, course.from),
      member: to,
      ...(course.stationTo ? { station: course.stationTo } : {}),
    },
  ];
}

/** `front`; where both ends enter twins of one pair, the side tells them apart. */
const endName = (ref: PartRef, other: PartRef): string =>
  ref.name === other.name && ref.side ? ref.side : ref.name;

/**
 * The full name a reference stands for from a part on `side`: each side's own of a pair, the bare name of a lone part.
 * Undefined when a pair is meant from the middle without saying which.
 */
export function fullName(design: Design, ref: PartRef, side: Side): string | undefined {
  const [base, index] = splitIndex(ref.name);
  const part = design.posts.get(ref.name) ?? design.rails.get(ref.name) ?? design.rails.get(base);
  if (!part) return ref.side ? `${ref.name}.${ref.side}` : ref.name;
  const repeated = part.is === "rail" && part.ups.length > 1;
  const stem = repeated && index === undefined ? `${ref.name}.1` : ref.name;
  if (!part.pair) return stem;
  const which = ref.side ?? (side === "middle" ? undefined : side);
  return which && `${stem}.${which}`;
}

function splitIndex(name: string): [string, number | undefined] {
  const found = /^(.*)\.(\d+)$/.exec(name);
  return found ? [found[1]!, Number(found[2])] : [name, undefined];
}

/** mm from a rail's first shoulder; halfway when no station is given. */
export function stationOn(rail: Rail, station: RailStation | undefined): number {
  if (!station) return rail.length / 2;
  return "mm" in station ? station.mm : station.share * rail.length;
}
