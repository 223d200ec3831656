/**
 * What holds of every chair on a solid seat; each law gives what is wrong in plain words, nothing when it holds.
 */
import type { Chair, Post, Rail } from "../../../server/chair/chair.ts";
import { measureBody } from "../../../server/geometry/body.ts";
import { volume } from "../../../server/geometry/convex.ts";
import type { Vec3 } from "../../../server/geometry/solid.ts";
import { weigh } from "../../../server/timber/weight.ts";
import { goesOverAt, pieces, weighted } from "../floor/rolled.ts";

/** Every value, every corner and every weight is a finite number. */
export function notFinite(chair: Chair): string[] {
  const values = [...chair.values.values()].flatMap(({ name, number }) =>
    Number.isNaN(number) ? [`${name} is ${number}`] : [],
  );
  const bodies = [...chair.members.values()].flatMap((member) => {
    const points = member.body.pieces.flatMap((piece) => [
      ...piece.points.flat(),
      ...piece.planes.flatMap(({ normal, offset }) => [...normal, offset]),
    ]);
    return points.every(Number.isFinite) ? [] : [`${member.name} has corners that are nowhere`];
  });
  const heavy = [...weigh(chair).parts].flatMap(([name, { mass, centre }]) =>
    [mass, ...centre].every(Number.isFinite) && mass > 0 ? [] : [`${name} weighs ${mass}`],
  );
  return [...values, ...bodies, ...heavy];
}

/** A part named `.left` is that named `.right` in a mirror, and the chair's weight is on its middle line. */
export function notMirrored(chair: Chair): string[] {
  const wrong: string[] = [];
  for (const [name, member] of chair.members) {
    const twin = chair.members.get(name.replace(/\.left$/, ".right"));
    if (!twin || twin === member) continue;
    const [a, b] = [measureBody(member.body), measureBody(twin.body)];
    const off = Math.hypot(
      a.centroid[0] + b.centroid[0],
      a.centroid[1] - b.centroid[1],
      a.centroid[2] - b.centroid[2],
    );
    if (off > MIRRORED || Math.abs(a.volume / b.volume - 1) > MIRRORED)
      wrong.push(`${name} and its twin are ${off} mm and ${a.volume / b.volume - 1} apart`);
  }
  const { centre } = weigh(chair);
  if (Math.abs(centre[0]) > CENTRED) wrong.push(`the weight is ${centre[0]} mm beside the middle`);
  // A right-hand part has values of its own only where they are others.
  for (const name of chair.values.keys()) if (/\.right(\.|$)/.test(name)) wrong.push(`${name} is its own`);
  return wrong;
}

/** Both sides differ by rounding alone, mm or as a share; the weight by what is left out as crumbs, mm. */
const MIRRORED = 1e-6;
const CENTRED = 1e-3;

/** With every length twice as long, lengths are twice as long, areas and weights four and eight times as much, angles and ratios the same. */
export function notScaled(chair: Chair, twice: Chair): string[] {
  const power = { length: 1, area: 2, mass: 3, angle: 0, number: 0 } as Record<string, number>;
  return [...chair.values].flatMap(([name, { number, dimension }]) => {
    const other = twice.values.get(name)?.number;
    const times = power[dimension];
    if (other === undefined) return [`${name} is no value of the chair twice as large`];
    if (times === undefined || BY_SIZE.test(name)) return [];
    if (other === number) return times > 0 && number !== 0 ? [`${name} stays ${number}`] : [];
    const asked = number * 2 ** times;
    const least = EXTENTS.test(name) ? FACETS : SCALED;
    return Math.abs(other - asked) <= Math.max(SCALED * Math.abs(asked), least)
      ? []
      : [`${name}: ${number}, then ${other}`];
  });
}

/** Curves have as many corners on the chair twice as large: figures scale but for rounding, as a share and in mm, mm², g or radians. */
const SCALED = 1e-6;

/**
 * Extents are those of solids, in which 24 flats stand for a circle of up to 12 mm radius and 32 for a larger one: 24 reach from 0.29 % inside
 * it to 0.57 % outside, 32 from 0.16 to 0.32 %. So much both ends may differ on the chair twice as large, where a radius of 12 mm is 24, mm.
 */
const EXTENTS = /^(height|width|depth)$/;
const FACETS = 2 * 24 * (0.0057 + 0.0016);

/** What depends on a person's size or on a load in newtons rather than on the chair's proportions. */
const BY_SIZE = /^(tip\.leaning|tip\..*-margin|strength|seat\.loaded)/;

/** The angles at which the chair, empty, goes over are those of its bodies rolled over the edges of their feet. */
export function notRolling(chair: Chair): string[] {
  const of = pieces(chair);
  const least = (bearings: [number, number][]) =>
    Math.min(...bearings.map((bearing) => goesOverAt(bearing, of)));
  return (
    [
      ["tip.back", weighted(chair, 1).filter(([, y]) => y > 0)],
      ["tip.front", weighted(chair, 1).filter(([, y]) => y < 0)],
      ["tip.side", weighted(chair, 0)],
    ] as const
  ).flatMap(([name, bearings]) => {
    const value = chair.values.get(name)?.number;
    const rolled = least([...bearings]);
    if (value === undefined || !Number.isFinite(rolled)) return [];
    const off = Math.abs(value - rolled);
    return off < 2e-4 ? [] : [`${name} is ${value}, rolled it is ${rolled}`];
  });
}

/** Places along an edge of the grid at which a seat's thickness is looked up, mm. */
const GRID = 2.5;

/**
 * The seat's body holds as much as a grid of its thicknesses: from the outline alone, the hollow D·sin²(90°·t/L) and the bevels by how far
 * a place lies inside it.
 */
export function notSeat({ seat }: Chair): string[] {
  if (!seat?.plan) return [];
  const { solid, thick } = seat.design;
  const { ring, deep, widest } = seat.plan;
  const tail = Math.max(...ring.map(([, s]) => s)) + GRID;
  let sum = 0;
  for (let x = GRID / 2; x < widest / 2 + GRID; x += GRID) {
    for (let s = Math.min(...ring.map(([, v]) => v)); s < Math.max(deep, tail); s += GRID) {
      const [inside, all, open] = depths(ring, [x, s], seat.plan.frontCorner?.[1]);
      if (!inside) continue;
      let left = thick!.value;
      for (const { value } of solid?.bevels ?? []) left -= value.deep * Math.max(0, 1 - all / value.wide);
      const hollow = solid?.hollow?.value;
      if (hollow) {
        const t = Math.min(1, Math.max(0, ((hollow.open ? open : all) - hollow.rim) / hollow.over));
        left -= hollow.deep * Math.sin((Math.PI / 2) * t) ** 2;
      }
      sum += 2 * left * GRID * GRID;
    }
  }
  const own = seat.body.pieces.reduce((total, piece) => total + volume(piece), 0);
  // The hollow is made of six steps along its slope, and of an outline with fewer corners.
  return Math.abs(own / sum - 1) < 0.006
    ? []
    : [`the seat's body holds ${own} mm³, by its thicknesses ${sum}`];
}

type At = readonly [number, number];

/** Whether a place is inside a ring, how far from all of it, and from all but its front edge. */
function depths(ring: readonly At[], [x, s]: At, corner: number | undefined): [boolean, number, number] {
  let inside = false;
  let [all, open] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  for (const [k, a] of ring.entries()) {
    const b = ring[(k + 1) % ring.length]!;
    if (a[1] > s !== b[1] > s && x < a[0] + ((b[0] - a[0]) * (s - a[1])) / (b[1] - a[1])) inside = !inside;
    const run = [b[0] - a[0], b[1] - a[1]] as const;
    const t = ((x - a[0]) * run[0] + (s - a[1]) * run[1]) / (run[0] ** 2 + run[1] ** 2);
    const at = Math.min(1, Math.max(0, t));
    const off = Math.hypot(x - a[0] - run[0] * at, s - a[1] - run[1] * at);
    all = Math.min(all, off);
    if (corner === undefined || Math.max(a[1], b[1]) > corner + 1e-6) open = Math.min(open, off);
  }
  return [inside, all, open];
}

/** Sticks and legs are as long as the distance between their ends' surfaces says: `over-all` holds both tenons. */
export function notLong(chair: Chair): string[] {
  return [...chair.sticks.values()].flatMap((stick: Rail | Post) => {
    const reach = stick.body.pieces.flatMap(({ points }) => points.map((p: Vec3) => along(stick, p)));
    const value = chair.values.get(`${stick.name}.length`)?.number;
    if (value === undefined || reach.length === 0) return [];
    const own = Math.max(...reach) - Math.min(...reach);
    // Its shoulders are cut aslant: the body is longer than its line by no more than its thickness.
    return own > value - 1 && own < value + 40 ? [] : [`${stick.name} is ${value} long, its body ${own}`];
  });
}

const along = (stick: Rail | Post, p: Vec3): number => {
  const way = stick.is === "post" ? stick.pieces[0]!.direction : stick.along;
  return p[0] * way[0] + p[1] * way[1] + p[2] * way[2];
};
