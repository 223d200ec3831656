import { finish, type Steps } from "../../grammar/steps.ts";
import { movePoint } from "../geometry/motion.ts";
import type { Body, Convex, Edge, Motion, Vec3 } from "../geometry/solid.ts";
import { dot } from "../geometry/vec.ts";
import { type Hider, hiddenBy, hiderOf, liesBehind, liesBeside, ON_EDGE, TOUCH } from "./hider.ts";
import { type PictureGrid, pictureGrid } from "./picture-grid.ts";
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
  /** What has the same outline, of fewer pieces where there are some. */
  cover: Hider[];
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
/** Bits beside a hidden stretch that are shorter than this are looked at again: whether only what counts as touching shows them, mm. */
const SHORT_END = 0.5;

/** What can be seen of bodies when `into` carries them before the eye, hidden lines taken out. */
export const see = (bodies: readonly Body[], into: Motion): Seen => finish(seeSteps(bodies, into));

/**
 * The same, resting after each body; `shifts` moves some of them, as drawn, before they are carried there; `behind` gets the stretches of
 * outlines that other wood hides.
 */
export function* seeSteps(
  bodies: readonly Body[],
  into: Motion,
  shifts: readonly (Vec3 | undefined)[] = [],
  behind?: SeenLine[],
): Steps<Seen> {
  const motions = bodies.map((_, index) => {
    const by = shifts[index];
    return by ? { rotation: into.rotation, shift: movePoint(into, by) } : into;
  });
  const seen = bodies.map(({ pieces, cover }, index) => {
    const hiders = (some: readonly Convex[]) =>
      some.flatMap((piece) => hiderOf(piece, motions[index]!) ?? []);
    const own = hiders(pieces);
    return seenBody(own, cover ? hiders(cover) : own);
  });
  const towards = into.rotation[2];
  const lines: SeenLine[] = [];
  const wood = inGrid(seen);
  let past = 0;
  for (let body = 0; body < bodies.length; body++) {
    wood.ownFrom = past;
    past += seen[body]!.hiders.length;
    wood.ownTo = past;
    const motion = motions[body]!;
    for (const edge of bodies[body]!.edges) {
      const is = kindOf(edge, towards);
      if (!is) continue;
      const [a, b] = [movePoint(motion, edge.a), movePoint(motion, edge.b)];
      addVisible(a, b, wood, { body, is }, lines, is === "outline" ? behind : undefined);
    }
    yield;
  }
  return { bodies: seen, lines };
}

function seenBody(hiders: Hider[], cover: Hider[]): SeenBody {
  const body: SeenBody = {
    hiders,
    cover,
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
  wood: Wood,
  { body, is }: Pick<SeenLine, "body" | "is">,
  lines: SeenLine[],
  behind: SeenLine[] | undefined,
): void {
  const length = Math.sqrt((b[0] - a[0]) ** 2 + (b[1] - a[1]) ** 2);
  if (length < SHORT) return;
  const hidden = hiddenParts(a, b, wood, is);
  if (!hidden) {
    behind?.push({ body, is, a: at(a, b, 0), b: at(a, b, 1) });
    return;
  }
  let from = 0;
  const addUpTo = (to: number): void => {
    const size = (to - from) * length;
    if (size <= SHORT) return;
    if (hidden.length > 0 && size < SHORT_END && isBehind(a, b, (from + to) / 2, wood)) return;
    lines.push({ body, is, a: at(a, b, from), b: at(a, b, to) });
  };
  for (const [start, end] of hidden) {
    addUpTo(start);
    if (end <= from) continue;
    behind?.push({ body, is, a: at(a, b, Math.max(start, from)), b: at(a, b, end) });
    from = end;
  }
  addUpTo(1);
}

/** All that hides, and where it lies in the picture. */
interface Wood {
  hiders: Hider[];
  grid: PictureGrid;
  /** The hiders of the body whose lines are looked at: from this one to before that one. */
  ownFrom: number;
  ownTo: number;
}

function inGrid(bodies: readonly SeenBody[]): Wood {
  const hiders = bodies.flatMap((body) => body.hiders);
  const box = { left: Infinity, right: -Infinity, low: Infinity, high: -Infinity };
  for (const { left, right, low, high } of bodies) {
    box.left = Math.min(box.left, left);
    box.right = Math.max(box.right, right);
    box.low = Math.min(box.low, low);
    box.high = Math.max(box.high, high);
  }
  const grid = pictureGrid(hiders.length, box);
  for (const hider of hiders) grid.putBox(hider);
  return { hiders, grid, ownFrom: 0, ownTo: 0 };
}

/**
 * The hidden parts of a straight in order of their starts; undefined when one solid hides all of it. It is not hidden by a solid that it
 * only passes closely, for that need not have a line there: two facets of a hollow that meet have none. An outline is not hidden by another piece
 * of its own body that it only runs along: there the two are one surface, and no nearer line is seen in its stead.
 */
function hiddenParts(
  a: Vec3,
  b: Vec3,
  { hiders, grid, ownFrom, ownTo }: Wood,
  is: SeenLine["is"],
): [number, number][] | undefined {
  const left = Math.min(a[0], b[0]) - TOUCH;
  const right = Math.max(a[0], b[0]) + TOUCH;
  const low = Math.min(a[1], b[1]) - TOUCH;
  const high = Math.max(a[1], b[1]) + TOUCH;
  const far = Math.min(a[2], b[2]);
  const parts: [number, number][] = [];
  for (const number of grid.near([a[0], a[1]], [b[0], b[1]], TOUCH)) {
    const hider = hiders[number]!;
    if (hider.near < far || hider.left > right || hider.right < left || hider.low > high || hider.high < low)
      continue;
    const part = hiddenBy(hider, a, b);
    if (!part) continue;
    const middle = (part[0] + part[1]) / 2;
    const [x, y] = at(a, b, middle);
    if (liesBeside(hider, x, y)) continue;
    if (is === "outline" && number >= ownFrom && number < ownTo) {
      if (!liesBehind(hider, [x, y, a[2] + (b[2] - a[2]) * middle])) continue;
    }
    if (part[0] === 0 && part[1] === 1) return undefined;
    parts.push(part);
  }
  return parts.length > 1 ? parts.sort((p, q) => p[0] - q[0]) : parts;
}

/**
 * Whether a place of a straight lies behind a face, though by less than what counts as touching: where a line goes into the wood at a flat
 * angle its end would show as a bit that ends nowhere.
 */
function isBehind(a: Vec3, b: Vec3, t: number, { hiders, grid }: Wood): boolean {
  const [x, y] = at(a, b, t);
  const z = a[2] + (b[2] - a[2]) * t;
  for (const number of grid.near([x, y], [x, y], TOUCH))
    if (liesBehind(hiders[number]!, [x, y, z])) return true;
  return false;
}

function at(a: Vec3, b: Vec3, t: number): Point {
  if (t === 0) return [a[0], a[1]];
  if (t === 1) return [b[0], b[1]];
  return [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t];
}
