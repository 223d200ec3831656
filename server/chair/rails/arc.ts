/** The circle through a chord and its rise: an arch's edge, a bow's arris. */
export interface Arc {
  radius: number;
  /** Half of the angle it turns through, radians. */
  half: number;
  /** Its length along the curve, mm. */
  length: number;
  /** Height over the chord at a distance from the chord's first end; 0 beyond both ends. */
  rise: (x: number) => number;
  /** The same for the curve `by` mm outside it (towards its convex side when positive), run on beyond the ends. */
  parallel: (x: number, by: number) => number;
}

/** A rise of less than this is not a curve, mm. */
export const NO_RISE = 1e-6;

/**
 * R = c²/8s + s/2 for chord c and rise s (both positive). Undefined when the rise is more than half the chord: past a half circle.
 */
export function arcOver(chord: number, rise: number): Arc | undefined {
  if (!(chord > 0 && rise > NO_RISE) || rise > chord / 2) return undefined;
  const radius = (chord * chord) / (8 * rise) + rise / 2;
  const half = Math.asin(Math.min(1, chord / (2 * radius)));
  const parallel = (x: number, by: number) => {
    const r = radius + by;
    const d = x - chord / 2;
    return Math.sqrt(Math.max(0, r * r - d * d)) - (radius - rise);
  };
  return {
    radius,
    half,
    length: 2 * radius * half,
    rise: (x) => (x <= 0 || x >= chord ? 0 : parallel(x, 0)),
    parallel,
  };
}

/** Distances along a chord at which its arc turns by equal angles of about 1°, ends left out; at most 60 of them. */
export function facetStations(arc: Arc, chord: number): number[] {
  const count = Math.min(60, Math.max(2, Math.ceil((2 * arc.half) / (Math.PI / 180) - 1e-9)));
  return Array.from({ length: count - 1 }, (_, k) => {
    const angle = -arc.half + (2 * arc.half * (k + 1)) / count;
    return chord / 2 + arc.radius * Math.sin(angle);
  });
}
