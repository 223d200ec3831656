import { finish, type Steps } from "../../../grammar/steps.ts";
import type { Chair } from "../../chair/chair.ts";
import { edgesOf } from "../../geometry/body.ts";
import { movePoint } from "../../geometry/motion.ts";
import type { Body, Motion, Vec3 } from "../../geometry/solid.ts";
import { dot, scale } from "../../geometry/vec.ts";
import { solidsOf } from "../../solids/part-pieces.ts";
import { chainSteps } from "../chains.ts";
import { seeSteps } from "../hidden-lines.ts";
import { sceneOf } from "../scene.ts";
import type { Point, Stroke } from "../sheet.ts";
import { motionInto } from "../sight.ts";
import { benchPart, movedBy, offsetsApart } from "./apart.ts";
import { type Eye, sightFrom, spokenEye } from "./eye.ts";

export interface PictorialOptions {
  eye: Eye;
  /** How far it is taken apart: 0 whole, 1 apart. */
  apart?: number;
  /** The tenons are seen through the wood, dashed. */
  joints?: boolean;
}

/** A chair seen from anywhere; mm, y down. */
export interface Pictorial {
  title: string;
  /** "From the front left, 25° above level, taken apart." */
  caption: string;
  width: number;
  height: number;
  strokes: Stroke[];
  /** Lines of the tenons that the wood hides. */
  tenons: { points: Point[]; part: string }[];
}

/** Round the picture, mm on a full-size sheet. */
const MARGIN = 50;
/** A line of a tenon seen on end is none, mm. */
const SHORT = 0.05;
/** Facets of a turned tenon turn by less than this, the cosine. */
const FACET = Math.cos(0.5);

/** A chair as it stands, seen from the given place, hidden lines taken out. */
export const drawPictorial = (chair: Chair, options: PictorialOptions): Pictorial =>
  finish(pictorialSteps(chair, options));

/** The same, resting after each part. */
export function* pictorialSteps(
  chair: Chair,
  { eye, apart = 0, joints = false }: PictorialOptions,
): Steps<Pictorial> {
  const into = motionInto(sightFrom(eye), chair.stance);
  const offsets = apart > 0 ? offsetsApart(chair) : new Map<string, Vec3>();
  const offsetOf = (part: string): Vec3 => scale(offsets.get(part) ?? [0, 0, 0], apart);
  const bodies: Body[] = [];
  const parts = sceneOf(chair);
  for (const part of parts) {
    bodies.push(apart > 0 ? movedBy(benchPart(chair, part).body, offsetOf(part.name)) : part.body);
    yield;
  }
  const seen = yield* seeSteps(bodies, into);
  const chains = yield* chainSteps(seen.lines);
  const strokes = chains.map(({ body, is, points }): Stroke => ({ points, is, part: parts[body]!.name }));
  const tenons = joints ? tenonLines(chair, into, offsetOf) : [];
  const all = [...strokes, ...tenons].flatMap(({ points }) => points);
  const left = Math.min(...all.map(([x]) => x)) - MARGIN;
  const top = Math.max(...all.map(([, y]) => y)) + MARGIN;
  const place = <T extends { points: Point[] }>(line: T): T => ({
    ...line,
    points: line.points.map(([x, y]): Point => [x - left, top - y]),
  });
  const from = spokenEye(eye);
  return {
    title: chair.design.title?.value ?? "",
    caption: `${from[0]!.toUpperCase()}${from.slice(1)}${apart > 0 ? ", taken apart" : ""}.`,
    width: Math.max(...all.map(([x]) => x)) - left + MARGIN,
    height: top - Math.min(...all.map(([, y]) => y)) + MARGIN,
    strokes: strokes.map(place),
    tenons: tenons.map(place),
  };
}

/** Each tenon's outline and the edges of its faces that look at the eye, whatever lies in front. */
function tenonLines(chair: Chair, into: Motion, offsetOf: (part: string) => Vec3): Pictorial["tenons"] {
  const towards = into.rotation[2];
  const lines: Pictorial["tenons"] = [];
  for (const joint of chair.joints.values()) {
    for (const solid of solidsOf(joint)) {
      const body = movedBy({ pieces: [solid], edges: [] }, offsetOf(joint.part)).pieces[0]!;
      for (const { a, b, normals } of edgesOf(body)) {
        const [first, second] = normals.map((normal) => dot(normal, towards) > 0);
        if (!first && !second) continue;
        if (first && second && dot(...normals) > FACET) continue;
        const [p, q] = [movePoint(into, a), movePoint(into, b)];
        if (Math.hypot(q[0] - p[0], q[1] - p[1]) < SHORT) continue;
        lines.push({
          points: [
            [p[0], p[1]],
            [q[0], q[1]],
          ],
          part: joint.part,
        });
      }
    }
  }
  return lines;
}
