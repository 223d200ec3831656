import type { PostDesign } from "../../design/design.ts";
import { stationHeight } from "./centre-line.ts";

/** How far each face of a post stands from its centre line, square to it, mm. */
export interface Offsets {
  front: number;
  back: number;
  inside: number;
  outside: number;
}

/** A post's section at each plumb height, and the heights at which its change begins or ends. */
export interface SectionLine {
  at: (z: number) => Offsets;
  breaks: number[];
  round: boolean;
}

const EVEN = (width: number, depth: number): Offsets => ({
  front: depth / 2,
  back: depth / 2,
  inside: width / 2,
  outside: width / 2,
});

/** The sections of a post, or undefined when it was given none. For a turned post all four offsets are the radius. */
export function sectionLineOf(
  design: PostDesign,
  ends: { foot: number; top: number },
): SectionLine | undefined {
  const round = design.round !== undefined;
  const stuff = round ? { first: design.round!.value, second: design.round!.value } : design.section?.value;
  const shape = design.shape?.value;
  if (shape && shape.length > 0) return shaped(withEnds(shape, ends, stuff), ends, round);
  if (!stuff) return undefined;
  const start = EVEN(stuff.first, stuff.second);
  const tapers = design.tapers.map(({ value }) => ({
    from: stationHeight(value.from, ends),
    to: stationHeight(value.to, ends),
    goal: keepingFaces(start, value.section, round ? [] : value.keeping),
  }));
  return {
    round,
    breaks: tapers.flatMap((taper) => [taper.from, taper.to]),
    at: (z) => {
      let offsets = start;
      for (const taper of tapers) {
        const run = taper.to - taper.from;
        const share = run === 0 ? 0 : Math.min(1, Math.max(0, (z - taper.from) / run));
        if (share > 0) offsets = blend(offsets, taper.goal, share);
      }
      return offsets;
    },
  };
}

/** The tapered section, about the centre line but for faces that stay straight: then its opposite takes it all. */
function keepingFaces(
  start: Offsets,
  goal: { first: number; second: number },
  keeping: readonly (keyof Offsets)[],
): Offsets {
  const even = EVEN(goal.first, goal.second);
  const pair = (a: keyof Offsets, b: keyof Offsets, size: number): [number, number] => {
    const keepA = keeping.includes(a);
    const keepB = keeping.includes(b);
    if (keepA && keepB) return [start[a], start[b]];
    if (keepA) return [start[a], size - start[a]];
    if (keepB) return [size - start[b], start[b]];
    return [even[a], even[b]];
  };
  const [front, back] = pair("front", "back", goal.second);
  const [inside, outside] = pair("inside", "outside", goal.first);
  return { front, back, inside, outside };
}

type Shaped = { station: "foot" | "top" | number; first: number; second: number };

/** An end that no line of the shape names keeps the post's own section. */
function withEnds(
  shape: readonly Shaped[],
  ends: { foot: number; top: number },
  own: { first: number; second: number } | undefined,
): Shaped[] {
  if (!own) return [...shape];
  const heights = shape.map(({ station }) => stationHeight(station, ends));
  const foot: Shaped[] = heights.some((z) => z <= ends.foot) ? [] : [{ station: "foot", ...own }];
  const top: Shaped[] = heights.some((z) => z >= ends.top) ? [] : [{ station: "top", ...own }];
  return [...foot, ...shape, ...top];
}

function shaped(shape: readonly Shaped[], ends: { foot: number; top: number }, round: boolean): SectionLine {
  const rows = shape
    .map((row) => ({
      z: stationHeight(row.station, ends),
      offsets: EVEN(row.first, round ? row.first : row.second),
    }))
    .sort((a, b) => a.z - b.z);
  return {
    round,
    breaks: rows.map((row) => row.z),
    at: (z) => {
      const next = rows.findIndex((row) => row.z >= z);
      if (next < 0) return rows[rows.length - 1]!.offsets;
      if (next === 0) return rows[0]!.offsets;
      const below = rows[next - 1]!;
      const above = rows[next]!;
      return blend(
        below.offsets,
        above.offsets,
        above.z === below.z ? 1 : (z - below.z) / (above.z - below.z),
      );
    },
  };
}

function blend(a: Offsets, b: Offsets, share: number): Offsets {
  const mix = (face: keyof Offsets) => a[face] + (b[face] - a[face]) * share;
  return { front: mix("front"), back: mix("back"), inside: mix("inside"), outside: mix("outside") };
}
