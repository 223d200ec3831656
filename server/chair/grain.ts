/**
 * Which way the grain of a part should run: along a straight one, and through the middle of the ways that a curved one goes.
 */
import type { Vec3 } from "../geometry/solid.ts";
import { add, along, angleBetween, cross, dot, norm, scale, squareTo, sub, unit } from "../geometry/vec.ts";
import type { Member, Rail } from "./chair.ts";
import { isRail } from "./member.ts";

/** Directions nearer than this are one, radians. */
const SAME_WAY = 1e-4;
/** A curve whose centre line strays less than this from one plane is flat, as a sine. */
const FLAT = 1e-3;

/**
 * How the grain of a curved part should run: the direction that its centre line strays least from, by how much (radians), and the
 * normal of the plane it bends in. Undefined for a straight or a turned part.
 */
export function grainOf(member: Member): { grain: Vec3; slope: number; bend: Vec3 } | undefined {
  // A bow is bent: its grain follows it.
  if (member.is === "bow" || diameterOf(member) !== undefined) return undefined;
  const ways = directionsOf(member);
  const bend = planeOfBend(ways);
  return bend && { ...middleWay(ways, bend), bend };
}

/** The ways its centre line goes, each with its length; of a bowed rail at its very ends too, where the chords of a curve do not reach. */
export function directionsOf(member: Member): Vec3[] {
  const { centreLine } = member;
  const ways = centreLine.slice(1).flatMap((point, k) => {
    const run = sub(point, centreLine[k]!);
    return norm(run) > 1e-6 ? [unit(run)] : [];
  });
  if ((member.is !== "rail" && member.is !== "slat") || !member.bow) return ways;
  const half = 2 * Math.atan((2 * Math.abs(member.bow)) / member.length);
  const lean = Math.sign(member.bow) * Math.tan(half);
  return [
    unit(along(member.along, member.outward, lean)),
    unit(along(member.along, member.outward, -lean)),
    ...ways,
  ];
}

/** The normal of the plane that a centre line bends in; undefined for a straight one. */
function planeOfBend(ways: readonly Vec3[]): Vec3 | undefined {
  const [first] = ways;
  if (!first) return undefined;
  const far = ways.reduce(
    (best, way) => (angleBetween(first, way) > angleBetween(first, best) ? way : best),
    first,
  );
  if (angleBetween(first, far) < SAME_WAY) return undefined;
  return unit(cross(first, far));
}

/** The way through the middle of all, and how far the farthest is from it: the grain that serves a curve best. */
function middleWay(ways: readonly Vec3[], normal: Vec3): { grain: Vec3; slope: number } {
  const mean = unit(squareTo(scale(ways.reduce(add), 1 / ways.length), normal));
  const across = cross(normal, mean);
  const angles = ways.map((way) => Math.atan2(dot(way, across), dot(way, mean)));
  const [low, high] = [Math.min(...angles), Math.max(...angles)];
  const middle = (low + high) / 2;
  const grain = along(scale(mean, Math.cos(middle)), across, Math.sin(middle));
  // Out of the plane too, for a stick that bends both ways.
  const off = Math.max(...ways.map((way) => Math.abs(dot(way, normal))));
  const inPlane = (high - low) / 2;
  return { grain, slope: off < FLAT ? inPlane : Math.max(...ways.map((way) => angleBetween(way, grain))) };
}

/** The diameter of turned work, at its thickest; undefined for squared stuff. */
export function diameterOf(member: Member): number | undefined {
  if (member.is === "bow") return member.round;
  if (isRail(member)) return member.round === undefined ? undefined : stoutest(member, member.round);
  if (member.is !== "post" || !member.pieces.some(({ radii }) => radii)) return undefined;
  return 2 * Math.max(...member.pieces.flatMap(({ radii }) => radii ?? []));
}

/** The largest diameter of a round rail along its length, mm. */
function stoutest({ shape, length }: Rail, round: number): number {
  if (!shape) return round;
  return Math.max(...[0, ...shape.bends, length].map((at) => shape.thick(at)));
}
