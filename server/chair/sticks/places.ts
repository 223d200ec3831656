/**
 * Where the sticks of a row stand and where their heads are.
 */
import { sentence } from "../../../grammar/sentences/sentence.ts";
import type { LengthUnit, RowPlace, StickDesign } from "../../design/design.ts";
import { printLength } from "../../design/units.ts";
import { lineMeets } from "../../geometry/plane.ts";
import type { Vec3 } from "../../geometry/solid.ts";
import { along, sub, unit } from "../../geometry/vec.ts";
import type { Bow, SeatSurface } from "../chair.ts";
import type { Fault } from "../fault.ts";
import type { Spot } from "../seat/solid/edge.ts";
import { insetBy } from "../seat/solid/inset.ts";
import { backwardOf } from "../seat/solid/on-face.ts";
import { ringOf } from "../seat/solid/ring.ts";
import { type HeadLine, headLine, placeOut, widestOut } from "./line.ts";

/** A stick's line: its foot on the seat's top, and its head, so far along the line that holds it. */
export interface StickLine {
  foot: Vec3;
  head: Vec3;
  s: number;
}

interface Asked {
  stick: StickDesign;
  seat: SeatSurface;
  heads: HeadLine;
  /** The bow that sets their lines, where one does. */
  through?: Bow;
  units: LengthUnit;
  /** Says what cannot be, once for the row. */
  tell(at: Fault["at"], message: string): void;
}

/**
 * The lines of a row from its first stick to its last; of a pair those on the left, from the front. Undefined where the text gives too little,
 * or what it gives cannot be.
 */
export function linesOf(asked: Asked): StickLine[] | undefined {
  const { stick, heads } = asked;
  const places = stick.heads
    ? rowOn(asked, heads, stick.heads.value, stick.heads.at)
    : stick.place?.value.out === 0 && !stick.pair
      ? [heads.length / 2]
      : undefined;
  if (!places) return undefined;
  const feet = feetOf(asked, places);
  return feet?.map((foot, k) => ({ foot, head: heads.at(places[k]!), s: places[k]! }));
}

function feetOf(asked: Asked, places: readonly number[]): Vec3[] | undefined {
  const { stick, seat, heads, through } = asked;
  const row = stick.through?.value.row;
  if (row && stick.through) {
    const line = through && headLine(through);
    const inBow = line && rowOn(asked, line, row, stick.through.at);
    if (!line || !inBow) return undefined;
    const feet = places.map((s, k) => {
      const [high, low] = [heads.at(s), line.at(inBow[k]!)];
      return lineMeets(seat.plane, low, unit(sub(low, high)));
    });
    return feet.some((foot) => !foot) ? undefined : (feet as Vec3[]);
  }
  if (stick.place) {
    const { out, back } = stick.place.value;
    const foot = lineMeets(seat.plane, [out, back, 0], [0, 0, 1]);
    return foot && [foot];
  }
  return stick.feet && rowOnSeat(asked, stick.feet);
}

/** Places along a line, from the left: evenly from the first to the last. */
function rowOn(
  { stick, units, tell }: Asked,
  line: HeadLine,
  row: RowPlace,
  at: Fault["at"],
): number[] | undefined {
  const length = (mm: number) => printLength(mm, units);
  const count = stick.count.value;
  let [first, last] = [0, line.length];
  if (row.is === "spread") {
    const found = placeOut(line, row.wide / 2);
    if (found === undefined) {
      const most = 2 * widestOut(line);
      tell(
        at,
        sentence("fault.heads-spread", {
          wide: length(row.wide),
          line: line.name,
          most: length(most),
          less: length(Math.floor(most * 0.9)),
        }),
      );
      return undefined;
    }
    [first, last] = stick.pair || stick.place ? [found, found] : [found, line.length - found];
  } else if (stick.pair || stick.place) [first, last] = [row.first, row.last];
  else [first, last] = [row.first, line.length - row.last];
  const most = stick.pair || stick.place ? line.length / 2 : line.length;
  if (
    Math.max(first, last) > most ||
    Math.min(first, last) < 0 ||
    (!stick.pair && !stick.place && last < first)
  ) {
    tell(
      at,
      sentence("fault.heads-beyond", {
        line: line.name,
        long: length(line.length),
        less: length(Math.floor(line.length / 10)),
      }),
    );
    return undefined;
  }
  return evenly(count, first, last);
}

/** One lies in the middle. */
const evenly = (count: number, first: number, last: number): number[] =>
  Array.from({ length: count }, (_, k) =>
    count === 1 ? (first + last) / 2 : first + ((last - first) * k) / (count - 1),
  );

/** The feet of a row on the line so far inside the outline. */
function rowOnSeat(
  { stick, seat, units, tell }: Asked,
  feet: NonNullable<StickDesign["feet"]>,
): Vec3[] | undefined {
  const { plan } = seat;
  if (!plan) return undefined;
  const length = (mm: number) => printLength(mm, units);
  const { in: inside, behind, to } = feet.value;
  const [ring] = insetBy(ringOf(plan.bare), inside);
  if (!ring) {
    tell(
      feet.at,
      sentence("fault.feet-inside", {
        inside: length(inside),
        less: length(Math.min(plan.deep, plan.widest) / 10),
      }),
    );
    return undefined;
  }
  const left = wayAlong(ring);
  const start = reached(left, behind);
  const end = to === undefined ? left.length - 1 : reached(left, to);
  if (start === undefined || end === undefined) {
    const stations = left.map(({ at: [, s] }) => s);
    tell(
      feet.at,
      sentence("fault.feet-behind", {
        inside: length(inside),
        first: length(Math.min(...stations)),
        last: length(Math.max(...stations)),
      }),
    );
    return undefined;
  }
  const measure = (k: number) => measuredAt(left, k);
  const whole = 2 * (measure(left.length - 1) - measure(start));
  const count = stick.count.value;
  const along0 = measure(start);
  const places = stick.pair ? evenly(count, along0, measure(end)) : evenly(count, along0, along0 + whole);
  const middle = measure(left.length - 1);
  return places.map((p) => {
    const [x, s] = spotAt(left, p <= middle ? p : 2 * middle - p);
    return onSeat(seat, [p <= middle ? x : -x, s]);
  });
}

const onSeat = ({ front, plane }: SeatSurface, [x, s]: Spot): Vec3 =>
  along(along(front.middle, [1, 0, 0], x), backwardOf(plane), s);

/** The left half of a ring from the middle of its front to the middle of its back, each corner with how far along it is. */
function wayAlong(ring: readonly Spot[]): { at: Spot; along: number }[] {
  const count = ring.length;
  const crossing = (k: number): Spot | undefined => {
    const [a, b] = [ring[k]!, ring[(k + 1) % count]!];
    if (a[0] > 0 === b[0] > 0) return undefined;
    const t = a[0] / (a[0] - b[0]);
    return [0, a[1] + (b[1] - a[1]) * t];
  };
  const starts = ring.findIndex((a, k) => a[0] <= 0 && ring[(k + 1) % count]![0] > 0);
  const spots: Spot[] = [crossing(starts) ?? [0, ring[starts]![1]]];
  for (let k = 1; k <= count; k++) {
    const at = (starts + k) % count;
    if (ring[at]![0] <= 0) break;
    spots.push(ring[at]!);
    const end = crossing(at);
    if (end) {
      spots.push(end);
      break;
    }
  }
  let gone = 0;
  return spots.map((at, k) => {
    const before = spots[k - 1];
    if (before) gone += Math.hypot(at[0] - before[0], at[1] - before[1]);
    return { at, along: gone };
  });
}

type Way = ReturnType<typeof wayAlong>;

/** Where the way first comes so far behind the front edge, as a corner and a share of the stretch after it. */
function reached(way: Way, behind: number): number | undefined {
  for (let k = 1; k < way.length; k++) {
    const [a, b] = [way[k - 1]!.at[1], way[k]!.at[1]];
    if (a <= behind && b >= behind && b > a) return k - 1 + (behind - a) / (b - a);
  }
  return undefined;
}

function measuredAt(way: Way, k: number): number {
  const low = Math.min(way.length - 2, Math.floor(k));
  const [a, b] = [way[low]!.along, way[low + 1]!.along];
  return a + (b - a) * (k - low);
}

function spotAt(way: Way, gone: number): Spot {
  const next = Math.max(
    1,
    way.findIndex(({ along }) => along >= gone - 1e-9),
  );
  const [a, b] = [way[next - 1]!, way[next]!];
  const t = b.along > a.along ? (gone - a.along) / (b.along - a.along) : 0;
  return [a.at[0] + (b.at[0] - a.at[0]) * t, a.at[1] + (b.at[1] - a.at[1]) * t];
}
