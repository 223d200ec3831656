import type { BowDesign } from "../../design/bow-design.ts";

/** The centre line of a bow in its own plane: `u` across from the middle towards the left, `v` from the line between its ends. mm */
export interface BowPath {
  /** Along it, from the left end to the right. */
  length: number;
  /** A place so far along from the left end, and the unit way it runs there. */
  at(s: number): { u: number; v: number; du: number; dv: number };
  /** The radius it bends in there; Infinity where it is straight. */
  radiusAt(s: number): number;
  /** Where it passes from the arc to the ellipse, on the left. */
  bend: number;
}

/** A stretch of the left half, its way growing from the end to the crown. */
interface Stretch {
  length: number;
  at(s: number): { u: number; v: number; du: number; dv: number };
  radiusAt(s: number): number;
}

/** Parts into which a stretch of an ellipse is divided to be measured. */
const PARTS = 512;
/** A bow as wide at its ends as at its widest runs straight there, mm. */
const SAME = 1e-9;

/** The line that a bow's text gives: an arc up to its widest place, half an ellipse beyond; undefined where it lacks a figure. */
export function bowPath(design: BowDesign): BowPath | undefined {
  const out = (design.feet ?? design.hands)?.value.out;
  const rise = design.rise?.value;
  if (out === undefined || rise === undefined) return undefined;
  const widest = design.wide?.value;
  const half = widest ? widest.wide / 2 : out;
  const station = widest?.at ?? 0;
  if (!(half > 0 && rise > station && out > 0)) return undefined;
  const lower = station > 0 ? arcTo(out, half, station) : undefined;
  const upper = quarter(half, rise - station, station);
  const first = lower?.length ?? 0;
  const length = 2 * (first + upper.length);
  const onHalf = (s: number) => (lower && s < first ? lower.at(s) : upper.at(s - first));
  return {
    length,
    bend: first,
    at(s) {
      if (s <= length / 2) return onHalf(s);
      const { u, v, du, dv } = onHalf(length - s);
      // The right half is the left one mirrored, run through the other way.
      return { u: -u, v, du, dv: -dv };
    },
    radiusAt(s) {
      const near = s <= length / 2 ? s : length - s;
      return lower && near < first ? lower.radiusAt(near) : upper.radiusAt(near - first);
    },
  };
}

/** The arc of a circle from (out, 0) to (half, station) that runs parallel with the middle there; straight where both are as far out. */
function arcTo(out: number, half: number, station: number): Stretch {
  if (Math.abs(out - half) < SAME)
    return {
      length: station,
      at: (s) => ({ u: out, v: s, du: 0, dv: 1 }),
      radiusAt: () => Number.POSITIVE_INFINITY,
    };
  const centre = (out * out + station * station - half * half) / (2 * (out - half));
  // Less than 0 where the bow is wider at its ends: the arc then bends outward.
  const radius = half - centre;
  const from = Math.atan2(station, Math.sign(radius) * (out - centre));
  const length = Math.abs(radius) * from;
  return {
    length,
    at(s) {
      const angle = from - s / Math.abs(radius);
      const sign = Math.sign(radius);
      return {
        u: centre + radius * Math.cos(angle),
        v: station - Math.abs(radius) * Math.sin(angle),
        du: sign * Math.sin(angle),
        dv: Math.cos(angle),
      };
    },
    radiusAt: () => Math.abs(radius),
  };
}

/** A quarter of an ellipse `a` wide and `b` high that stands on `station`, from its side to its top. */
function quarter(a: number, b: number, station: number): Stretch {
  const speed = (t: number) => Math.hypot(a * Math.sin(t), b * Math.cos(t));
  const step = Math.PI / 2 / PARTS;
  const measured = [0];
  for (let k = 0; k < PARTS; k++) {
    const [t, u] = [k * step, (k + 1) * step];
    // Simpson's rule on each part.
    const part = (step / 6) * (speed(t) + 4 * speed((t + u) / 2) + speed(u));
    measured.push(measured[k]! + part);
  }
  const length = measured[PARTS]!;
  const turnAt = (s: number): number => {
    if (s <= 0) return 0;
    if (s >= length) return Math.PI / 2;
    let [low, high] = [0, PARTS];
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (measured[middle]! <= s) low = middle;
      else high = middle;
    }
    let t = low * step;
    const rest = s - measured[low]!;
    // The speed changes little within a part: two steps are exact to the last figure.
    let gone = rest / speed(t);
    gone = rest / speed(t + gone / 2);
    t += gone;
    return t;
  };
  return {
    length,
    at(s) {
      const t = turnAt(s);
      const size = speed(t);
      return {
        u: a * Math.cos(t),
        v: station + b * Math.sin(t),
        du: (-a * Math.sin(t)) / size,
        dv: (b * Math.cos(t)) / size,
      };
    },
    radiusAt: (s) => speed(turnAt(s)) ** 3 / (a * b),
  };
}
