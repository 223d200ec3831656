import type { Rail } from "../../../server/chair/chair.ts";
import type { RailDesign, SlatDesign, StickDesign } from "../../../server/design/design.ts";
import { bentBox, hull, type Solid } from "./manifold.ts";
import { type Face, plus, times, type V } from "./vectors.ts";

/** A rail's stuff by its design: across (outward) and up, at its first and second end. */
export interface OwnSection {
  out: [number, number];
  up: [number, number];
  round: boolean;
  /** Half way, where it tapers from there to both ends. */
  middle?: { out: number; up: number };
}

export function sectionOf(design: RailDesign | SlatDesign | StickDesign): OwnSection {
  if (design.is === "stick") {
    const d = design.round!.value;
    const [taper] = design.tapers;
    const e = taper?.value.diameter ?? d;
    if (taper?.value.towards === "ends")
      return { out: [e, e], up: [e, e], round: true, middle: { out: d, up: d } };
    return { out: [d, e], up: [d, e], round: true };
  }
  if (design.round) {
    const d = design.round.value;
    const taper = design.is === "rail" ? design.tapers[0]?.value : undefined;
    const e = taper?.section.first ?? d;
    if (taper?.towards === "ends") return { out: [e, e], up: [e, e], round: true, middle: { out: d, up: d } };
    return { out: [d, e], up: [d, e], round: true };
  }
  const flat = design.is === "rail" && design.flat?.value === true;
  const turn = (s: { first: number; second: number }) => (flat ? [s.second, s.first] : [s.first, s.second]);
  const [o, u] = turn(design.section!.value) as [number, number];
  const taper = design.is === "rail" ? design.tapers[0]?.value : undefined;
  if (!taper) return { out: [o, o], up: [u, u], round: false };
  if (taper.towards !== "end") throw new Error("the tests build no rail that tapers to both ends yet");
  const [o2, u2] = turn(taper.section) as [number, number];
  return { out: [o, o2], up: [u, u2], round: false };
}

/** The rail's frame as built; what makes it right is tested for itself. */
export interface OwnFrame {
  start: V;
  along: V;
  outward: V;
  upward: V;
  length: number;
}

export const frameOf = (rail: Rail): OwnFrame => ({
  start: [...rail.start] as V,
  along: [...rail.along] as V,
  outward: [...rail.outward] as V,
  upward: [...rail.upward] as V,
  length: rail.length,
});

/** A point in a frame: along it, outward from the outside arris, up from the top one. */
export const spot = (f: OwnFrame, x: number, y: number, z: number): V =>
  plus(plus(plus(f.start, f.along, x), f.outward, y), f.upward, z);

/** Outward and upward reach of the stuff from the arris (a round one's axis). */
export function reachOf(section: OwnSection, share: number) {
  const { middle } = section;
  const away = Math.abs(2 * share - 1);
  const at = (which: "out" | "up") =>
    middle
      ? middle[which] + (section[which][0] - middle[which]) * away
      : section[which][0] + (section[which][1] - section[which][0]) * share;
  const [out, up] = [at("out"), at("up")];
  return section.round
    ? { out: [-out / 2, out / 2], up: [-up / 2, up / 2] }
    : { out: [-out, 0], up: [-up, 0] };
}

/** The rail's stuff, running on past both ends; arches and crowns lie between the shoulders and are left out. */
export function stuffOf(frame: OwnFrame, section: OwnSection, past: number): Solid {
  const points: V[] = [];
  for (const x of [-past, ...(section.middle ? [frame.length / 2] : []), frame.length + past]) {
    const { out, up } = reachOf(section, x / frame.length);
    for (const y of out) for (const z of up) points.push(spot(frame, x, y, z));
  }
  return hull(points);
}

/** Half the length of a bowed rail's end that is made, mm, and its flats: of 0.02 mm, with less than 1e-6 mm of sagitta. */
const END = 15;
const FLATS = 1500;

/** One end of a bowed rail, bent about the circle through the straight's ends and the rise (R = c²/8s + s/2; sources: geometry). */
export function bowedEnd(frame: OwnFrame, section: OwnSection, bow: number, which: 0 | 1): Solid {
  const rise = Math.abs(bow);
  const sign = Math.sign(bow);
  const radius = frame.length ** 2 / (8 * rise) + rise / 2;
  const half = Math.asin(frame.length / 2 / radius) * (which === 0 ? -1 : 1);
  return bentBox([-END, -section.out[0], -section.up[0]], [END, 0, 0], FLATS, ([a, y, z]) => {
    const angle = half + a / radius;
    const r = radius + sign * y;
    const x = frame.length / 2 + r * Math.sin(angle);
    return spot(frame, x, sign * (rise - radius + r * Math.cos(angle)), z);
  });
}

/** The faces of a straight rail at a station: outside, inside, top, bottom. */
export function facesOf(frame: OwnFrame, section: OwnSection, x: number): Face[] {
  const { out, up } = reachOf(section, x / frame.length);
  return [
    { at: spot(frame, x, out[1]!, 0), out: frame.outward },
    { at: spot(frame, x, out[0]!, 0), out: times(frame.outward, -1) },
    { at: spot(frame, x, 0, up[1]!), out: frame.upward },
    { at: spot(frame, x, 0, up[0]!), out: times(frame.upward, -1) },
  ];
}

/** The middle of a bowed rail's thickness where its outside arris ends: the other face is an arc about the same centre. */
export function middleOfBow(rail: Rail): number {
  const rise = Math.abs(rail.bow!);
  const radius = rail.length ** 2 / (8 * rise) + rise / 2;
  const other = radius - Math.sign(rail.bow!) * sectionOf(rail.design).out[0];
  return (Math.sign(rail.bow!) * (rise - radius + Math.sqrt(other ** 2 - (rail.length / 2) ** 2))) / 2;
}
