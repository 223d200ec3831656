import type { Knee } from "../../design/design.ts";

/** Facets of a fair curve turn by this much or less. */
const FACET = Math.PI / 180;

/** A straight stretch of a profile, going up. */
interface Stretch {
  /** Plumb heights; the lowest is open downward and the highest upward. */
  from: number;
  to: number;
  /** The profile's value at `from` (at `to` for the lowest), and its change per mm of height. */
  at: number;
  slope: number;
  /** Part of a fair curve. */
  curved: boolean;
}

/** How a centre line leans as seen from one direction: stretches from the lowest up. Its value is 0 at height 0. */
export interface Profile {
  stretches: Stretch[];
  /** Pairs of knees whose curves had to be shortened: there was room for `room` mm where `wanted` was asked. */
  crowded: { lower: number; upper: number; room: number; wanted: number }[];
}

/**
 * The profile of a lean `base` (from plumb, radians, positive where the value grows going up) changed by knees. A knee with `over` is
 * an arc tangent to both straights, its tangents half of `over` long, so that changing `over` moves nothing else.
 */
export function profileOf(base: number, knees: readonly Knee[]): Profile {
  const sorted = [...knees].sort((a, b) => a.height - b.height);
  const leans = [leanOf(0)];
  for (let k = 0; k < sorted.length; k++) leans.push(leanOf(k + 1));

  /** The lean of the stretch between knees k−1 and k: the knee below it speaks first, then the one above, then the base. */
  function leanOf(k: number): number {
    for (let below = k - 1; below >= 0; below--)
      if (sorted[below]!.stretch === "above") return sorted[below]!.slope;
    for (let above = k; above < sorted.length; above++)
      if (sorted[above]!.stretch === "below") return sorted[above]!.slope;
    return base;
  }

  // Lines that no post can follow are refused later; they get no curves, which could be endless.
  const possible =
    leans.every((lean) => Math.abs(lean) < Math.PI / 2) && sorted.every((knee) => knee.over < 1e6);
  const { overs, crowded } = possible
    ? fitCurves(sorted, leans)
    : { overs: sorted.map(() => 0), crowded: [] };
  const stretches: Stretch[] = [
    { from: -Infinity, to: Infinity, at: 0, slope: Math.tan(leans[0]!), curved: false },
  ];
  let z = sorted[0]?.height ?? 0;
  let y = 0;
  for (let k = 0; k < sorted.length; k++) {
    const knee = sorted[k]!;
    y += (knee.height - z) * Math.tan(leans[k]!);
    z = knee.height;
    addKnee(stretches, { z, y, before: leans[k]!, after: leans[k + 1]!, over: overs[k]! });
  }
  anchor(stretches);
  return { stretches, crowded };
}

function fitCurves(sorted: readonly Knee[], leans: readonly number[]) {
  const overs = sorted.map((knee) => Math.max(0, knee.over));
  const crowded: Profile["crowded"] = [];
  for (let k = 0; k + 1 < sorted.length; k++) {
    const room = (sorted[k + 1]!.height - sorted[k]!.height) / Math.cos(leans[k + 1]!);
    const wanted = (overs[k]! + overs[k + 1]!) / 2;
    if (wanted <= room + 1e-9) continue;
    crowded.push({ lower: sorted[k]!.height, upper: sorted[k + 1]!.height, room, wanted });
    overs[k]! *= room / wanted;
    overs[k + 1]! *= room / wanted;
  }
  return { overs, crowded };
}

/** Ends the topmost stretch at a knee (arc and all) and opens the one above. Values are from the first knee until `anchor`. */
function addKnee(
  stretches: Stretch[],
  knee: { z: number; y: number; before: number; after: number; over: number },
): void {
  const { before, after } = knee;
  const turn = after - before;
  const open = stretches[stretches.length - 1]!;
  if (Math.abs(turn) < 1e-12) return;
  const half = knee.over / 2;
  let z = knee.z - half * Math.cos(before);
  let y = knee.y - half * Math.sin(before);
  open.to = z;
  if (open.from === -Infinity) open.at = y;
  if (half > 0) {
    const radius = half / Math.tan(Math.abs(turn) / 2);
    const sign = Math.sign(turn);
    const count = Math.ceil(Math.abs(turn) / FACET - 1e-9);
    for (let i = 1; i <= count; i++) {
      const a = before + (turn * (i - 1)) / count;
      const b = before + (turn * i) / count;
      const rise = radius * sign * (Math.sin(b) - Math.sin(a));
      const run = radius * sign * (Math.cos(a) - Math.cos(b));
      stretches.push({ from: z, to: z + rise, at: y, slope: run / rise, curved: true });
      z += rise;
      y += run;
    }
  }
  stretches.push({ from: z, to: Infinity, at: y, slope: Math.tan(after), curved: false });
}

/** Shifts all values so that the profile is 0 at height 0. */
function anchor(stretches: Stretch[]): void {
  const shift = valueAt({ stretches, crowded: [] }, 0);
  for (const stretch of stretches) stretch.at -= shift;
}

/** The stretch that holds a height. */
export function stretchAt(profile: Profile, z: number): Stretch {
  for (const stretch of profile.stretches) if (z < stretch.to) return stretch;
  return profile.stretches[profile.stretches.length - 1]!;
}

/** How far the line has gone at a height, from its place at height 0, mm. */
export function valueAt(profile: Profile, z: number): number {
  const stretch = stretchAt(profile, z);
  if (stretch.from === -Infinity)
    return stretch.at + (stretch.to === Infinity ? z : z - stretch.to) * stretch.slope;
  return stretch.at + (z - stretch.from) * stretch.slope;
}

/** The heights at which the profile changes direction. */
export function breaksOf(profile: Profile): number[] {
  return profile.stretches.slice(1).map((stretch) => stretch.from);
}
