import type { PostDesign, PostStation } from "../../../server/design/design.ts";
import { above, across, direction, type Face, inner, minus, outer, plus, times, type V } from "./vectors.ts";

/**
 * A post from the charter's words alone. Leans are taken at sharp knees: `over` is an arc tangent to both straights, so the straights
 * are where they would be without it, and only straights carry shoulders.
 */
export interface OwnPost {
  centre: (z: number) => V;
  /** The straight stretch with one taper that holds a height: its ends, axis and, of a squared post, its faces. */
  stretch: (z: number) => OwnStretch;
  /** Up the centre line, at a height. */
  axis: (z: number) => V;
}

export interface OwnStretch {
  from: V;
  to: V;
  axis: V;
  /** Corners at both ends, anticlockwise from above; none of a turned post. */
  corners?: [V[], V[]];
  faces?: Face[];
  radii?: [number, number];
}

export function ownPost(
  design: PostDesign,
  side: "left" | "right" | "middle",
  ends: { foot: number; top: number },
  seatSlope = 0,
): OwnPost {
  const sign = side === "right" ? -1 : 1;
  const knees = design.knees.map((knee) => knee.value);
  const { rake, splay } = leansOf(design, seatSlope);
  const slopes = {
    side: slopeOf(
      rake,
      knees.filter((knee) => knee.seen === "side"),
    ),
    front: slopeOf(
      splay,
      knees.filter((knee) => knee.seen === "front"),
    ),
  };
  const place = design.place?.value ?? legPlace(design, ends);
  const zero = heightOf(place.station, ends);
  const centre = (z: number): V => [
    sign * (place.out - integral(slopes.front, zero, z)),
    place.back + integral(slopes.side, zero, z),
    z,
  ];
  const breaks = [
    ...knees.map((knee) => knee.height),
    ...design.tapers.flatMap(({ value }) => [heightOf(value.from, ends), heightOf(value.to, ends)]),
    ...(design.shape?.value ?? []).map((row) => heightOf(row.station, ends)),
  ];
  const stretch = (z: number): OwnStretch => {
    const low = Math.max(z - 400, ...breaks.filter((b) => b <= z - 1e-9));
    const high = Math.min(z + 400, ...breaks.filter((b) => b > z));
    return straight(design, sign, ends, centre, low, high);
  };
  return { centre, stretch, axis: (z) => stretch(z).axis };
}

/** A leg by its lean goes down from square to the seat, turned towards its foot along the sight line; the seat falls to the back. */
function leansOf({ way, rake, splay }: PostDesign, slope: number): { rake: number; splay: number } {
  if (!way) return { rake: rake?.value ?? 0, splay: splay?.value ?? 0 };
  if (way.value.is === "foot") throw new Error("a leg by its foot is not built here");
  const { lean, sightLine } = way.value;
  const [c, s] = [Math.cos(slope), Math.sin(slope)];
  const back = Math.sin(lean) * Math.cos(sightLine);
  const down = [
    Math.sin(lean) * Math.sin(sightLine),
    back * c - Math.cos(lean) * s,
    back * s + Math.cos(lean) * c,
  ] as const;
  return { rake: -Math.atan(down[1] / down[2]), splay: Math.atan(down[0] / down[2]) };
}

/** A leg is placed where it meets the seat's under face, which is its top; a post on the seat by its foot. */
function legPlace({ intoSeat, onSeat }: PostDesign, { foot, top }: { foot: number; top: number }) {
  if (onSeat) return { station: foot, ...onSeat.value };
  if (!intoSeat || intoSeat.value.above)
    throw new Error("a post that is placed in no way that is built here");
  const { out, back } = intoSeat.value;
  return { station: top, out, back };
}

const heightOf = (station: PostStation, ends: { foot: number; top: number }): number =>
  station === "foot" ? ends.foot : station === "top" ? ends.top : station;

interface Slope {
  at: (z: number) => number;
  breaks: number[];
}

function slopeOf(
  base: number,
  knees: { height: number; stretch: "above" | "below"; slope: number }[],
): Slope {
  return {
    breaks: knees.map((knee) => knee.height).sort((a, b) => a - b),
    at: (z) => {
      const passed = knees.filter((knee) => knee.stretch === "above" && knee.height <= z);
      if (passed.length > 0) return passed.reduce((a, b) => (a.height > b.height ? a : b)).slope;
      const coming = knees.filter((knee) => knee.stretch === "below" && knee.height > z);
      return coming.length > 0 ? coming.reduce((a, b) => (a.height < b.height ? a : b)).slope : base;
    },
  };
}

function integral(slope: Slope, from: number, to: number): number {
  if (to < from) return -integral(slope, to, from);
  const marks = [from, ...slope.breaks.filter((b) => b > from && b < to), to];
  let sum = 0;
  for (let k = 1; k < marks.length; k++) {
    const middle = (marks[k]! + marks[k - 1]!) / 2;
    sum += (marks[k]! - marks[k - 1]!) * Math.tan(slope.at(middle));
  }
  return sum;
}

function straight(
  design: PostDesign,
  sign: 1 | -1,
  ends: { foot: number; top: number },
  centre: (z: number) => V,
  low: number,
  high: number,
): OwnStretch {
  const from = centre(low);
  const to = centre(high);
  const axis = direction(minus(to, from));
  const a = sectionAt(design, ends, low);
  const b = sectionAt(design, ends, high);
  if (design.round) return { from, to, axis, radii: [a.front, b.front] };
  const level = direction(across([1, 0, 0], axis));
  const rear = outer(axis, level);
  const turn = sign * (design.turn?.value ?? 0);
  const left = plus(times(level, Math.cos(turn)), rear, Math.sin(turn));
  const back = plus(times(rear, Math.cos(turn)), level, -Math.sin(turn));
  const ring = (p: V, s: Offsets): V[] => {
    const [l, r] = sign > 0 ? [s.outside, s.inside] : [s.inside, s.outside];
    return (
      [
        [l, -s.front],
        [l, s.back],
        [-r, s.back],
        [-r, -s.front],
      ] as const
    ).map(([x, y]) => plus(plus(p, left, x), back, y));
  };
  const corners: [V[], V[]] = [ring(from, a), ring(to, b)];
  const faces = corners[0].map((p, k) => {
    const next = corners[0][(k + 1) % 4]!;
    const out = direction(outer(minus(next, p), minus(corners[1][k]!, p)));
    return { at: p, out };
  });
  return { from, to, axis, corners, faces };
}

interface Offsets {
  front: number;
  back: number;
  inside: number;
  outside: number;
}

function sectionAt(design: PostDesign, ends: { foot: number; top: number }, z: number): Offsets {
  const even = (w: number, d: number): Offsets => ({
    front: d / 2,
    back: d / 2,
    inside: w / 2,
    outside: w / 2,
  });
  const mix = (a: Offsets, b: Offsets, t: number): Offsets => ({
    front: a.front + (b.front - a.front) * t,
    back: a.back + (b.back - a.back) * t,
    inside: a.inside + (b.inside - a.inside) * t,
    outside: a.outside + (b.outside - a.outside) * t,
  });
  const rows = design.shape?.value;
  if (rows) {
    const sorted = rows
      .map((row) => ({ z: heightOf(row.station, ends), d: row.first }))
      .sort((a, b) => a.z - b.z);
    const next = sorted.findIndex((row) => row.z >= z);
    if (next <= 0) return even(sorted.at(next)!.d, sorted.at(next)!.d);
    const [a, b] = [sorted[next - 1]!, sorted[next]!];
    return mix(even(a.d, a.d), even(b.d, b.d), (z - a.z) / (b.z - a.z));
  }
  const [w, d] = design.round
    ? [design.round.value, design.round.value]
    : [design.section!.value.first, design.section!.value.second];
  const whole = even(w, d);
  let found = whole;
  for (const { value: taper } of design.tapers) {
    const [begin, end] = [heightOf(taper.from, ends), heightOf(taper.to, ends)];
    const t = Math.min(1, Math.max(0, (z - begin) / (end - begin)));
    if (t === 0) continue;
    const goal = even(taper.section.first, taper.section.second);
    for (const kept of taper.keeping) {
      const opposite = ({ front: "back", back: "front", inside: "outside", outside: "inside" } as const)[
        kept
      ];
      const all = kept === "front" || kept === "back" ? taper.section.second : taper.section.first;
      goal[kept] = whole[kept];
      goal[opposite] = all - whole[kept];
    }
    found = mix(found, goal, t);
  }
  return found;
}

/** The face of a stretch that looks most along a direction; of turned stuff the plane that touches it there. */
export function faceTowards(stretch: OwnStretch, look: V): Face {
  if (stretch.faces) return stretch.faces.reduce((a, b) => (inner(a.out, look) > inner(b.out, look) ? a : b));
  const side = direction(across(look, stretch.axis));
  const [a, b] = stretch.radii!;
  const length = inner(minus(stretch.to, stretch.from), stretch.axis);
  return { at: plus(stretch.from, side, a), out: direction(plus(times(side, length), stretch.axis, a - b)) };
}

/** The stretch's side face that looks most along a direction, other than the one entered. */
export function sideTowards(stretch: OwnStretch, look: V, entered: Face): Face {
  if (!stretch.faces) return faceTowards(stretch, look);
  const rest = stretch.faces.filter((face) => inner(face.out, entered.out) < 0.999);
  return rest.reduce((a, b) => (inner(a.out, look) > inner(b.out, look) ? a : b));
}

export const offFace = above;
