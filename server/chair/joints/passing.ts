/**
 * A stick that goes on through a bow: what is bored out of the bow, and nothing cut of the stick.
 */
import { jointName } from "../../design/identity.ts";
import { prism, volume } from "../../geometry/convex.ts";
import type { Convex, Vec3 } from "../../geometry/solid.ts";
import { along, cross, dot, unit } from "../../geometry/vec.ts";
import type { Bow, Joint, Rail } from "../chair.ts";
import { facetRadius, facetsOf } from "../facets.ts";
import { shapeOf } from "../rails/rail-outline.ts";
import { bowHost } from "./bow-host.ts";
import type { ChosenJoint } from "./joint-facts.ts";

/** The bore runs on past the bow's wood by this, mm. */
const BEYOND = 2;

/** The joint of a stick and the bow that it goes through; undefined of one that goes through none. */
export function passingJoint(stick: Rail, bow: Bow, chosen: ChosenJoint): Joint | undefined {
  if (!stick.passes || stick.passes.bow !== bow.name) return undefined;
  const { s, at } = stick.passes;
  const host = bowHost(bow, s);
  const { thick, wide } = bow.sizeAt(s);
  const run = bow.way(s);
  const out = cross(run, bow.normal);
  const { along: direction } = stick;
  const [dOut, dNormal] = [Math.abs(dot(direction, out)), Math.abs(dot(direction, bow.normal))];
  // Half of the way through its wood along the stick, rounded up to its corners.
  const half =
    Math.min(dNormal > 1e-6 ? wide / 2 / dNormal : Infinity, dOut > 1e-6 ? thick / 2 / dOut : Infinity) +
    stick.thick / 2;
  const shape = shapeOf(stick);
  const x = dot(along(at, stick.start, -1), direction);
  const diameter = shape.outside(x) - shape.inside(x);
  const bore = cylinder(along(at, direction, -half - BEYOND), direction, 2 * (half + BEYOND), diameter);
  const face = host.face([-direction[0], -direction[1], -direction[2]], at);
  const root = along(at, direction, -half + stick.thick / 2);
  const middle = bow.spot(s);
  const aside = along(at, middle, -1);
  const wall =
    bow.round === undefined
      ? dNormal > dOut
        ? wallIn(aside, direction, diameter, [bow.normal, wide], [out, thick])
        : wallIn(aside, direction, diameter, [out, thick], [bow.normal, wide])
      : bow.round / 2 - Math.abs(dot(aside, unit(cross(direction, run)))) - diameter / 2;
  const long = 2 * half - stick.thick;
  return {
    name: jointName(stick.name, bow.name),
    part: stick.name,
    end: bow.name,
    entered: { kind: "bow", name: bow.name },
    facts: chosen.facts,
    ...(chosen.design === undefined ? {} : { design: chosen.design }),
    at: chosen.at,
    kind: "passing",
    shape: "round",
    thick: diameter,
    wide: diameter,
    long: long * Math.abs(dot(direction, face.normal)),
    direction,
    root,
    acrossThick: stick.outward,
    acrossWide: stick.upward,
    shoulders: { outside: 0, inside: 0, top: 0, bottom: 0 },
    tenon: [bore],
    socket: [],
    sections: [{ thick: [-diameter / 2, diameter / 2], wide: [-diameter / 2, diameter / 2] }],
    volume: volume(bore),
    mortiseWall: wall,
    depthThere: long,
    glueArea: (Math.PI * diameter * long) / 2,
  };
}

/**
 * The least wood beside a slanting bore that goes through squared stuff from one face to the one opposite, mm: at a face that it opens in it
 * is nearest a side, and wider there than the bit. `aside` is where its line passes from the middle.
 */
function wallIn(
  aside: Vec3,
  direction: Vec3,
  diameter: number,
  [through, deep]: readonly [Vec3, number],
  [side, broad]: readonly [Vec3, number],
): number {
  const slant = dot(direction, side) / dot(direction, through);
  const off = dot(aside, side) - dot(aside, through) * slant;
  return broad / 2 - Math.abs(off) - (Math.abs(slant) * deep) / 2 - (diameter / 2) * Math.hypot(1, slant);
}

function cylinder(from: Vec3, direction: Vec3, long: number, diameter: number): Convex {
  const u = unit(cross(direction, Math.abs(direction[0]) < 0.9 ? [1, 0, 0] : [0, 1, 0]));
  const v = cross(direction, u);
  const facets = facetsOf(diameter / 2);
  const r = facetRadius(diameter / 2, facets);
  const ring = (at: Vec3): Vec3[] =>
    Array.from({ length: facets }, (_, k) => {
      const angle = (2 * Math.PI * k) / facets;
      return along(along(at, u, r * Math.cos(angle)), v, r * Math.sin(angle));
    });
  return prism(ring(from), ring(along(from, direction, long)));
}
