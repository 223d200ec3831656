import type { Chair, SeatSurface } from "../chair/chair.ts";
import type { TimberDesign } from "../design/design.ts";
import { measureBody } from "../geometry/body.ts";
import { movePoint } from "../geometry/motion.ts";
import type { Body, Vec3 } from "../geometry/solid.ts";
import { add, cross, norm, scale, sub } from "../geometry/vec.ts";
import { type Cut, cutsOf } from "./cuts.ts";
import { density } from "./density.ts";
import seatWeights from "./seat-weights.json" with { type: "json" };
import { speciesOf, tableMoisture } from "./species.ts";

/** What one part weighs. Centre as the chair stands, mm; volume less its mortises, mm³; mass kg. */
interface PartWeight {
  name: string;
  volume: number;
  mass: number;
  centre: Vec3;
  /** kg/m³; absent for made-up seats, which are weighed by their area. */
  density?: number;
}

export interface ChairWeight {
  parts: Map<string, PartWeight>;
  /** kg. */
  mass: number;
  /** Centre of gravity as the chair stands, mm. */
  centre: Vec3;
  /** Parts whose timber is not known, so that the chair cannot be weighed whole. */
  unknown: string[];
}

/** Density in kg/m³ of the timber a part is made of, or nothing when it names none that is known. */
export function densityOf(timber: TimberDesign | undefined): number | undefined {
  if (!timber) return undefined;
  if (timber.density !== undefined) return timber.density;
  const species = speciesOf(timber.species);
  return species && density(species, timber.moisture ?? tableMoisture);
}

/** Weighs every part and the chair: each part's timber, less its mortises, with its own tenons; and the seat. */
export function weigh(chair: Chair): ChairWeight {
  const parts = new Map<string, PartWeight>();
  const unknown: string[] = [];
  const cuts = cutsOf(chair);
  for (const member of chair.members.values()) {
    if (member.is === "seat") continue;
    const perVolume = densityOf(member.timber);
    if (perVolume === undefined) {
      unknown.push(member.name);
      continue;
    }
    const { volume, centroid } = timberOf(member.body, cuts.get(member.name) ?? []);
    parts.set(member.name, {
      name: member.name,
      volume,
      mass: (volume * perVolume) / 1e9,
      centre: movePoint(chair.stance, centroid),
      density: perVolume,
    });
  }
  if (chair.seat) {
    const seat = seatWeight(chair, chair.seat, cuts.get("seat") ?? []);
    if (seat) parts.set("seat", seat);
    else unknown.push("seat");
  }
  const all = [...parts.values()];
  const mass = all.reduce((sum, part) => sum + part.mass, 0);
  const moment = all.reduce<Vec3>((sum, part) => add(sum, scale(part.centre, part.mass)), [0, 0, 0]);
  return { parts, mass, centre: mass > 0 ? scale(moment, 1 / mass) : [0, 0, 0], unknown };
}

/** A member's own wood: its body and its tenons less the mortises cut in it. mm³, and the centroid as drawn. */
function timberOf(body: Body, cuts: readonly Cut[]): { volume: number; centroid: Vec3 } {
  const own = measureBody(body);
  let volume = own.volume;
  let moment = scale(own.centroid, own.volume);
  for (const cut of cuts) {
    volume += cut.sign * cut.volume;
    moment = add(moment, scale(cut.centroid, cut.sign * cut.volume));
  }
  return { volume, centroid: volume > 0 ? scale(moment, 1 / volume) : own.centroid };
}

function seatWeight(chair: Chair, seat: SeatSurface, cuts: readonly Cut[]): PartWeight | undefined {
  const { volume, centroid } = timberOf(seat.body, cuts);
  const { kind } = seat.design;
  if (kind === "board" || kind === "solid") {
    const perVolume = densityOf(seat.timber);
    if (perVolume === undefined) return undefined;
    const centre = movePoint(chair.stance, centroid);
    return { name: "seat", volume, mass: (volume * perVolume) / 1e9, centre, density: perVolume };
  }
  const mass = (areaOf(seat.outline) / 1e6) * seatWeights.perSquareMetre[kind];
  return { name: "seat", volume, mass, centre: movePoint(chair.stance, centroid) };
}

/** Area of a flat outline in space, mm². */
function areaOf(outline: readonly Vec3[]): number {
  const first = outline[0];
  if (!first) return 0;
  let sum: Vec3 = [0, 0, 0];
  for (let i = 1; i + 1 < outline.length; i += 1) {
    sum = add(sum, cross(sub(outline[i]!, first), sub(outline[i + 1]!, first)));
  }
  return norm(sum) / 2;
}
