import { finish, type Steps } from "../../grammar/steps.ts";
import { movePoint } from "../geometry/motion.ts";
import type { Body, Edge, Motion, Vec3 } from "../geometry/solid.ts";
import { dot } from "../geometry/vec.ts";
import { type Hider, hiddenBy, hiderOf, ON_EDGE, TOUCH } from "./hider.ts";
import type { Point } from "./sheet.ts";

/** A straight that can be seen, as seen: right and up. */
export interface SeenLine {
  /** Index of the body it belongs to. */
  body: number;
  /** On one side of an outline there is nothing of its body. */
  is: "edge" | "outline";
  a: Point;
  b: Point;
}

/** A body as seen. */
interface SeenBody {
  hiders: Hider[];
  left: number;
  right: number;
  low: number;
  high: number;
  near: number;
}

export interface Seen {
  bodies: SeenBody[];
  lines: SeenLine[];
}

/** Bits of a line shorter than this are not drawn, mm. */
const SHORT = 0.05;

/** What can be seen of bodies when `into` carries them before the eye, hidden lines taken out. */
export const see = (bodies: readonly Body[], into: Motion): Seen => finish(seeSteps(bodies, into));

/** The same, resting after each body. */
export function* seeSteps(bodies: readonly Body[], into: Motion): Steps<Seen> {
  const seen = bodies.map(({ pieces }) => seenBody(pieces.flatMap((piece) => hiderOf(piece, into) ?? [])));
  const towards = into.rotation[2];
  const lines: SeenLine[] = [];
  for (let body = 0; body < bodies.length; body++) {
    for (const edge of bodies[body]!.edges) {
      const is = kindOf(edge, towards);
      if (is) addVisible(movePoint(into, edge.a), movePoint(into, edge.b), seen, { body, is }, lines);
    }
    yield;
  }
  return { bodies: seen, lines };
}

function seenBody(hiders: Hider[]): SeenBody {
  const body: SeenBody = {
    hiders,
    left: Infinity,
    right: -Infinity,
    low: Infinity,
    high: -Infinity,
    near: -Infinity,
  };
  for (const hider of hiders) {
    body.left = Math.min(body.left, hider.left);
    body.right = Math.max(body.right, hider.right);
    body.low = Math.min(body.low, hider.low);
    body.high = Math.max(body.high, hider.high);
    body.near = Math.max(body.near, hider.near);
  }
  return body;
}

/** How a line is drawn where nothing hides it; undefined when it is never drawn. */
function kindOf({ is, normals }: Edge, towards: Vec3): SeenLine["is"] | undefined {
  const first = dot(normals[0], towards) > ON_EDGE;
  const second = dot(normals[1], towards) > ON_EDGE;
  if (first !== second) return "outline";
  return first && is === "arris" ? "edge" : undefined;
}

function addVisible(
  a: Vec3,
  b: Vec3,
  bodies: readonly SeenBody[],
  { body, is }: Pick<SeenLine, "body" | "is">,
  lines: SeenLine[],
): void {
  const length = Math.sqrt((b[0] - a[0]) ** 2 + (b[1] - a[1]) ** 2);
  if (length < SHORT) return;
  const hidden = hiddenParts(a, b, bodies);
  if (!hidden) return;
  let from = 0;
  for (const [start, end] of hidden) {
    if ((start - from) * length > SHORT) lines.push({ body, is, a: at(a, b, from), b: at(a, b, start) });
    if (end > from) from = end;
  }
  if ((1 - from) * length > SHORT) lines.push({ body, is, a: at(a, b, from), b: at(a, b, 1) });
}

/** The hidden parts of a straight in order of their starts; undefined when one solid hides all of it. */
function hiddenParts(a: Vec3, b: Vec3, bodies: readonly SeenBody[]): [number, number][] | undefined {
  const left = Math.min(a[0], b[0]) - TOUCH;
  const right = Math.max(a[0], b[0]) + TOUCH;
  const low = Math.min(a[1], b[1]) - TOUCH;
  const high = Math.max(a[1], b[1]) + TOUCH;
  const far = Math.min(a[2], b[2]);
  const apart = (it: Omit<SeenBody, "hiders">) =>
    it.near < far || it.left > right || it.right < left || it.low > high || it.high < low;
  const parts: [number, number][] = [];
  for (const body of bodies) {
    if (apart(body)) continue;
    for (const hider of body.hiders) {
      if (apart(hider)) continue;
      const part = hiddenBy(hider, a, b);
      if (!part) continue;
      if (part[0] === 0 && part[1] === 1) return undefined;
      parts.push(part);
    }
  }
  return parts.length > 1 ? parts.sort((p, q) => p[0] - q[0]) : parts;
}

function at(a: Vec3, b: Vec3, t: number): Point {
  if (t === 0) return [a[0], a[1]];
  if (t === 1) return [b[0], b[1]];
  return [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t];
}
