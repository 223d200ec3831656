/**
 * The picture of a chair from any side: the hidden-line pass of the three views, turned. It needs nothing of the chair but what has been
 * made ready, so that it runs where the turning happens.
 */
import { finish, type Steps } from "../../../grammar/steps.ts";
import { movePoint } from "../../geometry/motion.ts";
import type { Motion, Vec3 } from "../../geometry/solid.ts";
import { add, dot, scale } from "../../geometry/vec.ts";
import { chainSteps } from "../chains.ts";
import { type Seen, seeSteps } from "../hidden-lines.ts";
import type { Point } from "../sheet.ts";
import { motionInto } from "../sight.ts";
import { type Eye, sightFrom } from "./eye.ts";
import type { Turnable } from "./turnable.ts";

export interface Look {
  eye: Eye;
  /** How far it is taken apart: 0 whole, 1 apart. */
  apart?: number;
  /** The tenons are seen through the wood, dashed. */
  joints?: boolean;
  /** Only what comes together in this glue-up, by its index; `apart` is then how far that is open. */
  glueUp?: number;
}

/** What is seen, right and up, mm; the middle of nothing in particular. */
export interface Looked {
  strokes: { points: Point[]; is: "edge" | "outline"; part: string }[];
  /** Lines of the tenons, whatever lies in front. */
  tenons: { points: [Point, Point]; part: string }[];
  /** Outlines of the convex pieces of each part, anticlockwise, the farthest part first. */
  shapes: { part: string; outlines: Point[][]; seen: Seen["bodies"][number] }[];
}

/** A line of a tenon seen on end is none, mm. */
const SHORT = 0.05;

/** What is seen from there. */
export const lookAt = (turnable: Turnable, look: Look): Looked => finish(lookSteps(turnable, look));

/** The same, resting after each part. */
export function* lookSteps(turnable: Turnable, look: Look): Steps<Looked> {
  const into = motionInto(sightFrom(look.eye), turnable.stance);
  const shiftOf = shiftsFor(turnable, look);
  const parts = turnable.parts.filter(({ name }) => shiftOf(name) !== undefined);
  const seen = yield* seeSteps(
    parts.map(({ body }) => body),
    into,
    parts.map(({ name }) => shiftOf(name)),
  );
  const chains = yield* chainSteps(seen.lines);
  return {
    strokes: chains.map(({ body, is, points }) => ({ points, is, part: parts[body]!.name })),
    tenons: look.joints ? tenonLines(turnable, into, shiftOf) : [],
    shapes: seen.bodies
      .map((body, k) => ({
        part: parts[k]!.name,
        outlines: body.hiders.map(({ outline }) => outline),
        seen: body,
      }))
      .sort((a, b) => a.seen.near - b.seen.near),
  };
}

/** How far a part is moved; undefined when it is not in the picture. */
function shiftsFor({ offsets, glueUps }: Turnable, { apart = 0, glueUp }: Pick<Look, "apart" | "glueUp">) {
  const shown = glueUp === undefined ? undefined : glueUps[glueUp];
  if (!shown) return (part: string): Vec3 | undefined => scale(offsets.get(part) ?? [0, 0, 0], apart);
  const moves = new Map(shown.parts.map(({ name, by }) => [name, scale(by, apart)]));
  return (part: string): Vec3 | undefined => moves.get(part);
}

/** Each tenon's outline and the edges of its faces that look at the eye. */
export function tenonLines(
  { tenons }: Turnable,
  into: Motion,
  shiftOf: (part: string) => Vec3 | undefined,
): Looked["tenons"] {
  const towards = into.rotation[2];
  const lines: Looked["tenons"] = [];
  for (const { part, edges } of tenons) {
    const by = shiftOf(part);
    if (!by) continue;
    for (const { a, b, is, normals } of edges) {
      const first = dot(normals[0], towards) > 0;
      const second = dot(normals[1], towards) > 0;
      if (!first && !second) continue;
      if (first && second && is === "smooth") continue;
      const p = movePoint(into, add(a, by));
      const q = movePoint(into, add(b, by));
      if (Math.hypot(q[0] - p[0], q[1] - p[1]) < SHORT) continue;
      const points: [Point, Point] = [
        [p[0], p[1]],
        [q[0], q[1]],
      ];
      lines.push({ points, part });
    }
  }
  return lines;
}

/** The room that all views of it take, mm: so wide about its upright axis, so high, and what lies in the middle, as it stands. */
export interface Room {
  middle: Vec3;
  width: number;
  height: number;
}

/** The room for turning what is shown: one glue-up with its parts moved away, the whole together or, with `apart`, all moved away. */
export function roomOf(turnable: Turnable, { apart, glueUp }: { apart: boolean; glueUp?: number }): Room {
  const shiftOf = shiftsFor(turnable, {
    apart: apart || glueUp !== undefined ? 1 : 0,
    ...(glueUp !== undefined && { glueUp }),
  });
  const low = [Infinity, Infinity, Infinity];
  const high = [-Infinity, -Infinity, -Infinity];
  const places = turnable.parts.flatMap(({ name, body }) => {
    const by = shiftOf(name);
    if (!by) return [];
    return body.pieces.flatMap(({ points }) =>
      points.map((p) => {
        const at = movePoint(turnable.stance, add(p, by));
        for (let k = 0; k < 3; k++) {
          low[k] = Math.min(low[k]!, at[k]!);
          high[k] = Math.max(high[k]!, at[k]!);
        }
        return at;
      }),
    );
  });
  const middle = low.map((v, k) => (v + high[k]!) / 2) as unknown as Vec3;
  let across = 0;
  let whole = 0;
  for (const [x, y, z] of places) {
    const level = (x - middle[0]) ** 2 + (y - middle[1]) ** 2;
    across = Math.max(across, level);
    whole = Math.max(whole, level + (z - middle[2]) ** 2);
  }
  return { middle, width: 2 * Math.sqrt(across), height: 2 * Math.sqrt(whole) };
}

/** Where the middle of the room is seen from there. */
export function middleSeen({ middle }: Room, eye: Eye): Point {
  const { right, up } = sightFrom(eye);
  return [dot(right, middle), dot(up, middle)];
}
