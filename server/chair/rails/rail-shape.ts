import type { RoundStation } from "../../design/design.ts";
import { type Arc, arcOver } from "./arc.ts";
import { diameterOn } from "./round-profile.ts";

/**
 * A rail's outline in its own measure: x along it from the first shoulder on the outside top arris, y outward, z up its width, mm.
 * The straight rail has y from −thick to 0 and z from −wide to 0; a round one is about its axis.
 */
export interface RailShape {
  outside: (x: number) => number;
  inside: (x: number) => number;
  top: (x: number) => number;
  bottom: (x: number) => number;
  /** The lower edge as it would be without its arch, from end to end. */
  straightBottom: (x: number) => number;
  /** So far into the wood from the outside face, square to it, mm; less than nothing is outside. */
  inward: (x: number, deep: number) => number;
  /** How thick it is, square to its outside face. */
  thick: (x: number) => number;
  /** Where the outline bends, x. */
  arcs: { from: number; arc: Arc; chord: number }[];
  bends: number[];
  bow?: Arc;
  round: boolean;
}

export interface RailSizes {
  length: number;
  thick: number;
  wide: number;
  round: boolean;
  /** Rise of the outside arris, positive outward. */
  bow?: number;
  arch?: { below?: number; above?: number };
  /** Between these the whole section is there, clear of both shoulders: arches stay between them. */
  clear: [number, number];
  tapers: { thick: number; wide: number; towards: "end" | "ends" }[];
  /** Diameters of turned stuff along it, which take the place of tapers. */
  stations?: readonly RoundStation[];
}

/** Undefined curves (a rise past a half circle) are left straight. */
export function railShape(sizes: RailSizes): RailShape {
  const { length, round } = sizes;
  const bow = sizes.bow ? arcOver(length, Math.abs(sizes.bow)) : undefined;
  const sign = Math.sign(sizes.bow ?? 0);
  const [from, to] = sizes.clear;
  const below = sizes.arch?.below ? arcOver(to - from, sizes.arch.below) : undefined;
  const above = sizes.arch?.above ? arcOver(to - from, sizes.arch.above) : undefined;
  const stations = round && sizes.stations?.length ? sizes.stations : undefined;
  const thickAt = (x: number) =>
    stations ? diameterOn(sizes.thick, stations, length, x) : sizeAt(sizes, "thick", x / length);
  const wideAt = (x: number) => sizeAt(sizes, "wide", x / length);
  const outerOf = (x: number) => (bow ? sign * bow.parallel(x, 0) : 0);
  const arcs: RailShape["arcs"] = [];
  if (bow) arcs.push({ from: 0, arc: bow, chord: length });
  if (below) arcs.push({ from, arc: below, chord: to - from });
  if (above) arcs.push({ from, arc: above, chord: to - from });
  const bends = below || above ? [from, to] : [];
  if (stations) bends.push(...stations.map(({ at }) => at).filter((at) => at > 0 && at < length));
  else if (sizes.tapers.some((taper) => taper.towards === "ends")) bends.push(length / 2);
  if (round) {
    return {
      outside: (x) => outerOf(x) + thickAt(x) / 2,
      inside: (x) => outerOf(x) - thickAt(x) / 2,
      top: (x) => thickAt(x) / 2,
      bottom: (x) => -thickAt(x) / 2,
      straightBottom: (x) => -thickAt(x) / 2,
      inward: (x, deep) => outerOf(x) + thickAt(x) / 2 - deep,
      thick: thickAt,
      arcs,
      bends,
      ...(bow ? { bow } : {}),
      round,
    };
  }
  const inward = (x: number, deep: number) => (bow ? sign * bow.parallel(x, -sign * deep) : -deep);
  return {
    outside: outerOf,
    inside: (x) => inward(x, thickAt(x)),
    top: (x) => (above ? above.rise(x - from) : 0),
    bottom: (x) => -wideAt(x) + (below ? below.rise(x - from) : 0),
    straightBottom: (x) => -wideAt(x),
    inward,
    thick: thickAt,
    arcs,
    bends,
    ...(bow ? { bow } : {}),
    round,
  };
}

/** Thickness or width at a share of the length, tapers taken in; beyond the ends they run on. */
export function sizeAt(
  sizes: Pick<RailSizes, "thick" | "wide" | "tapers">,
  which: "thick" | "wide",
  share: number,
): number {
  let size = sizes[which];
  for (const taper of sizes.tapers) {
    size += (taper[which] - size) * (taper.towards === "end" ? share : Math.abs(2 * share - 1));
  }
  return size;
}
