/**
 * A tenon as it is cut on its stick's end: measured from the faces of the stick, its leans told towards them.
 */

import type { Joint } from "../../chair/chair.ts";
import { isEndKind } from "../../chair/joints/kinds/index.ts";
import { lineMeets } from "../../geometry/plane.ts";
import type { Plane, Vec3 } from "../../geometry/solid.ts";
import { along, dot } from "../../geometry/vec.ts";
import { pegsOf } from "../pegs.ts";
import { depthOf, faceEntered } from "./mouths.ts";
import type { CutMitre, CutTenon, Wedges } from "./piece.ts";
import { coneOf } from "./seat-bores.ts";
import { wedgesFor } from "./wedges.ts";

/** The stick at the end that has the tenon. */
export interface EndFrame {
  /** The four faces in rolling order and the ways they look, square to the stick's own line. */
  names: readonly [string, string, string, string];
  ways: readonly [Vec3, Vec3, Vec3, Vec3];
  /** The stick's own line, out of its end. */
  outward: Vec3;
  /** How far a point lies inside a face. */
  inside: (face: number, at: Vec3) => number;
}

/** A mitre's normal is at least this far from running along the tenon's sides, and this near to the end is the end. */
const SIDE = 0.05;
const END = 0.999_999;
/** Turns of less than this are none, radians. */
const TURN = 1e-4;

/** The tenon at an end, by the joint it is cut for; nothing where the joint has none. */
export function tenonOf(joint: Joint | undefined, frame: EndFrame): { tenon?: CutTenon } {
  const kind = joint?.kind ?? "none";
  if (!joint || !isEndKind(kind) || joint.tenon.length === 0) return {};
  const { ways, names, outward } = frame;
  const entered = faceEntered(joint);
  const facing = (v: Vec3) =>
    [0, 1, 2, 3].reduce((best, k) => (dot(v, ways[k as 0]) > dot(v, ways[best as 0]) ? k : best), 0);
  const [cheek, edge] = [facing(joint.acrossThick), facing(joint.acrossWide)];
  const opposite = (face: number) => (face + 2) % 4;
  // One that only leans keeps its width along its shoulder's line on the face.
  const turn = -Math.asin(Math.max(-1, Math.min(1, dot(joint.acrossWide, ways[cheek as 0]))));
  const turned = Math.abs(turn) > TURN;
  const from = (face: number) => nearest(joint, entered, frame, face, turned);
  const first = joint.sections[0];
  const haunch = joint.haunch && joint.facts.haunch?.value;
  const pegs = pegsOf(joint);
  const slant = -dot(joint.direction, entered.normal);
  const lean = (face: number) =>
    Math.atan2(dot(joint.direction, ways[face as 0]), dot(joint.direction, outward));
  const run = joint.long / slant;
  const cone = coneOf(joint, run);
  return {
    tenon: {
      thick: joint.thick,
      wide: kind === "fork" || !first ? joint.wide : first.wide[1] - first.wide[0],
      long: joint.long,
      run,
      cheeks: [names[cheek as 0], names[opposite(cheek) as 0]],
      edges: [names[edge as 0], names[opposite(edge) as 0]],
      shoulders: [from(cheek), from(opposite(cheek)), from(edge), from(opposite(edge))],
      turn: turned ? turn : 0,
      ...(haunch
        ? {
            haunch: {
              long: haunch.long,
              wide: Math.min(haunch.wide ?? joint.shoulders.top, joint.shoulders.top),
              sloped: haunch.sloped === true,
            },
          }
        : {}),
      kind,
      count: joint.tenon.length,
      middles: joint.sections
        .map(({ wide: [low, high] }) => from(edge) + joint.wide / 2 - (low + high) / 2)
        .sort((a, b) => a - b),
      lean: [lean(cheek), lean(edge)],
      square: slant > END,
      mitres: mitresOf(joint, entered),
      deep: Math.min(joint.long, Math.max(...joint.tenon.map((solid) => depthOf(solid, entered)))),
      ...(cone && { cone }),
      through: joint.facts.through !== undefined,
      ...(joint.facts.through?.value.wedged ? { wedges: wedgesOf(joint, run) } : {}),
      ...(joint.facts.fit ? { fit: joint.facts.fit.value } : {}),
      ...(joint.facts.glue ? { glue: joint.facts.glue.value } : {}),
      ...(pegs
        ? { peg: { diameter: pegs.diameter, count: pegs.count, setback: pegs.setback, draw: pegs.draw } }
        : {}),
    },
  };
}

/** A leg's tenon in a seat is split once, in its middle, across the seat's grain. */
function wedgesOf({ wide, sections, entered }: Joint, run: number): Wedges {
  if (entered.kind !== "seat") return wedgesFor(wide, run);
  return { ...wedgesFor(wide * (sections[0]?.tip ?? 1), run, 1), across: true };
}

/** A point of the tenon where it meets the shoulder, by its place in the section. */
function atShoulder(
  { root, direction, acrossThick, acrossWide }: Joint,
  entered: Plane,
  t: number,
  w: number,
) {
  const point = along(along(root, acrossThick, t), acrossWide, w);
  return lineMeets(entered, point, direction) ?? point;
}

/** From a face to the tenon: to the middle of the side that looks to it, or to the nearest corner of a turned one. */
function nearest(joint: Joint, entered: Plane, frame: EndFrame, face: number, turned: boolean): number {
  const [t, w] = [joint.thick / 2, joint.wide / 2];
  const way = frame.ways[face as 0];
  const [dt, dw] = [dot(joint.acrossThick, way), dot(joint.acrossWide, way)];
  const spots = turned
    ? [1, -1].flatMap((a) => [1, -1].map((b) => [a * t, b * w] as const))
    : Math.abs(dt) > Math.abs(dw)
      ? [[Math.sign(dt) * t, 0] as const]
      : [[0, Math.sign(dw) * w] as const];
  return Math.min(...spots.map(([a, b]) => frame.inside(face, atShoulder(joint, entered, a, b))));
}

/** Each plane that cuts a tenon's end short of lying along the face entered. */
function mitresOf(joint: Joint, entered: Plane): CutMitre[] {
  const { direction, acrossThick, thick, wide, long } = joint;
  // The sides of one that tapers look forward a little by themselves.
  const tip = joint.sections[0]?.tip ?? 1;
  const side = SIDE + (thick * (1 - tip)) / (2 * long);
  const found: { plane: Plane; mitre: CutMitre }[] = [];
  for (const { planes } of joint.tenon) {
    for (const plane of planes) {
      const { normal, offset } = plane;
      const rate = dot(normal, direction);
      if (rate < side || dot(normal, entered.normal) < -END) continue;
      if (
        found.some(
          ({ plane: known }) => dot(known.normal, normal) > END && Math.abs(known.offset - offset) < 1e-6,
        )
      )
        continue;
      const reach = (t: number, w: number) => {
        const p = atShoulder(joint, entered, t, w);
        return (offset - dot(normal, p)) / rate;
      };
      const sides = [1, -1].map((t) => [1, -1].map((w) => reach((t * thick) / 2, (w * wide) / 2)));
      const sum = (k: number) => sides[k]![0]! + sides[k]![1]!;
      const cheek = sum(0) <= sum(1) ? 0 : 1;
      const at = sides[cheek] as [number, number];
      found.push({
        plane,
        mitre: { cheek, at, angle: Math.atan2(rate, Math.abs(dot(normal, acrossThick))) },
      });
    }
  }
  return found.map(({ mitre }) => mitre);
}
