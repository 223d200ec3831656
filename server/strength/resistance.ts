/**
 * What members and joints bear. Each figure's ground stands in `wood.json`.
 */
import type { Joint } from "../chair/chair.ts";
import { strengthsOf } from "../timber/strengths.ts";
import type { SectionFigures } from "./section.ts";
import data from "./wood.json" with { type: "json" };

/** Share of the strength along the grain at an angle to it, rad: Hankinson's form. */
export function grainShare(angle: number): number {
  const { ratio, exponent } = data.grain;
  const s = Math.sin(Math.abs(angle)) ** exponent;
  const c = Math.cos(angle) ** exponent;
  return ratio / (s + ratio * c);
}

/** Share of the strength of one load that is left when it comes so often; straight between the published points over log cycles. */
export function repeatedShare(times: number): number {
  const { share, cycles } = data.repeated;
  if (times <= 10) return 1;
  const at = (k: number): [number, number] => [Math.log10(cycles[k] ?? 1), share[k] ?? 1];
  const n = Math.log10(times);
  const points: [number, number][] = [[1, 1], ...cycles.map((_, k) => at(k))];
  for (let k = 1; k < points.length; k++) {
    const [a, b] = [points[k - 1] as [number, number], points[k] as [number, number]];
    if (n <= b[0]) return a[1] + ((n - a[0]) * (b[1] - a[1])) / (b[0] - a[0]);
  }
  // Beyond the last point a tenth of the load for every half of a tenfold, as the points run.
  return Math.max(0.2, (share.at(-1) ?? 0.4) - 0.2 * (n - Math.log10(cycles.at(-1) ?? 1)));
}

/**
 * How hard a member works at one end of a beam: forces over what its section bears when loads come so often that `share` of its strength is
 * left; nothing where its species is not known.
 */
export function memberDemand(
  ends: readonly number[],
  { A, Iy, Iz, farY, farZ }: SectionFigures,
  { species, grain, share }: { species: string; grain: number; share: number },
): number | undefined {
  const known = strengthsOf(species);
  if (!known?.bendingStrength) return undefined;
  const left = grainShare(grain) * share;
  const [N, Vy, Vz, T, My, Mz] = ends.map((value) => Math.abs(value ?? 0)) as [
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  const bending = (My * farZ) / Iy + (Mz * farY) / Iz;
  const axial = N / A / ((known.crushingAlong ?? known.bendingStrength / 2) * left);
  const shear = (1.5 * Math.hypot(Vy, Vz)) / A + torsionStress(T, A, farY, farZ);
  const across = known.shearAlong ? shear / (known.shearAlong * share) : 0;
  return Math.max(bending / (known.bendingStrength * left) + axial, across);
}

/** Largest shear stress of a moment about a section's length: T / (αab²) with α 0.208 of a square (any text on torsion), the safe side for others. */
function torsionStress(T: number, A: number, farY: number, farZ: number): number {
  const b = 2 * Math.min(farY, farZ);
  return b > 0 ? T / (0.208 * A * b) : 0;
}

export interface JointStrength {
  /** N·mm about the thickness (in the plane of the width), and about the width. */
  momentWide: number;
  momentThick: number;
  /** N, drawn out. */
  withdrawal: number;
  /** N, across. */
  shear: number;
}

/** As much of a joint as its strength depends on. */
type Judged = Pick<Joint, "kind" | "shape" | "long" | "sections" | "glueArea" | "facts">;

/** What a joint bears on the mean, once; nothing where the species is not known. */
export function jointStrength(joint: Judged, species: string): JointStrength | undefined {
  const known = strengthsOf(species);
  if (!known?.bendingStrength || !known.shearAlong) return undefined;
  const { momentFactor, turnedFactor, fullLength, dowelRatio, glueShare, roundShare, unglued } = data.joints;
  const glue = joint.facts.glue?.value;
  const held = glue === "none" ? unglued : 1;
  const turned = joint.shape === "round";
  const factor = turned ? turnedFactor : momentFactor;
  // A round tenon stays in its hole whether it is glued or not.
  const length = Math.min(1, joint.long / fullLength) * (turned ? 1 : held);
  const round = joint.shape === "round" || joint.kind === "dowels";
  const kind = joint.kind === "dowels" ? dowelRatio : 1;
  const modulus = joint.sections.reduce((sum, { thick: [t0, t1], wide: [w0, w1] }) => {
    const [t, w] = [t1 - t0, w1 - w0];
    return sum + (round ? (Math.PI * Math.min(t, w) ** 3) / 32 : (t * w * w) / 6);
  }, 0);
  const spreadOver = spread(joint);
  const flat = joint.sections.reduce(
    (sum, { thick: [t0, t1], wide: [w0, w1] }) => sum + ((w1 - w0) * (t1 - t0) ** 2) / 6,
    0,
  );
  // A round tenon is held by half its skin, all the way round.
  const skin = joint.sections.reduce(
    (sum, { thick: [t0, t1], tip = 1 }) => sum + (Math.PI * (t1 - t0) * ((1 + tip) / 2) * joint.long) / 2,
    0,
  );
  const holds = turned ? skin * roundShare : joint.glueArea * (round ? roundShare : glueShare);
  const withdrawal = Math.max(1, holds * known.shearAlong * held);
  const area = joint.sections.reduce(
    (sum, { thick: [t0, t1], wide: [w0, w1] }) => sum + (t1 - t0) * (w1 - w0),
    0,
  );
  return {
    momentWide: Math.max(
      1,
      (factor * known.bendingStrength * modulus + (spreadOver * withdrawal) / 2) * length * kind,
    ),
    momentThick: Math.max(1, factor * known.bendingStrength * (turned ? modulus : flat) * length * kind),
    withdrawal,
    shear: Math.max(1, (known.shearAlong * area) / 1.5),
  };
}

/** How far the outermost of several tenons or dowels stand from each other across the width, mm: they draw against each other. */
function spread({ sections }: Judged): number {
  if (sections.length < 2) return 0;
  const middles = sections.map(({ wide: [a, b] }) => (a + b) / 2);
  return Math.max(...middles) - Math.min(...middles);
}

/** How hard a joint works: what its spring passes on over what it bears when `share` of that is left. */
export function jointDemand(passed: readonly number[], bears: JointStrength, share: number): number {
  const left = data.joints.lower * share;
  const [N, V1, V2, T, Mwide, Mthick] = passed as [number, number, number, number, number, number];
  const moments =
    Math.abs(Mwide) / bears.momentWide +
    Math.abs(Mthick) / bears.momentThick +
    Math.abs(T) / (bears.momentWide * 2);
  // Pressed together it does not draw.
  const drawn = Math.max(0, N) / bears.withdrawal;
  const across = Math.hypot(V1, V2) / bears.shear;
  return Math.max(moments + drawn, across) / left;
}
