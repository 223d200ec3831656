import type { Chair } from "../chair/chair.ts";
import { centreAt } from "../chair/posts/post-query.ts";
import { partOf } from "../chair/values/angles.ts";
import type { AngleDesign, AngleTerm } from "../design/design.ts";
import { printAngle, printLength } from "../design/units.ts";
import { moveDirection, movePoint } from "../geometry/motion.ts";
import type { Vec3 } from "../geometry/solid.ts";
import { dot, negate, sub } from "../geometry/vec.ts";
import type { Point, View } from "./sheet.ts";
import { sights } from "./sight.ts";

/** A length to be shown in a view, as seen: right and up. */
export interface LengthMeasure {
  name: string;
  label: string;
  view: View["name"];
  /** Where its line stands: vertical beside the view, level over or under it. */
  beside: "left" | "right" | "above" | "below";
  from: Point;
  to: Point;
}

/** A lean to be shown in the side view: the line that leans, and which way it would go if it did not. */
export interface LeanMeasure {
  name: string;
  label: string;
  from: Point;
  to: Point;
  /** Unit. */
  upright: Point;
}

/** What a view reaches, as seen. */
export interface Extent {
  left: number;
  right: number;
  low: number;
  high: number;
}

/** The same, with where its highest place begins on the left. */
export interface Reach extends Extent {
  topLeft: number;
}

/** The main dimensions of the chair, in the file's units. */
export function lengthMeasures(chair: Chair, extents: Record<View["name"], Reach>): LengthMeasure[] {
  const { front, side } = extents;
  const measures: LengthMeasure[] = [];
  const put = (name: string, where: Pick<LengthMeasure, "view" | "beside" | "from" | "to">) => {
    const value = chair.values.get(name);
    if (value) measures.push({ name, label: printLength(value.number, chair.design.units), ...where });
  };
  const { seat } = chair;
  const seen = (view: View["name"], place: Vec3): Point => {
    const { right, up } = sights[view];
    const standing = movePoint(chair.stance, place);
    return [dot(right, standing), dot(up, standing)];
  };
  if (seat) {
    const plan = (place: Vec3) => seen("plan", place);
    put("seat.front-width", {
      view: "plan",
      beside: "below",
      from: plan(seat.front.right),
      to: plan(seat.front.left),
    });
    put("seat.back-width", {
      view: "plan",
      beside: "above",
      from: plan(seat.back.right),
      to: plan(seat.back.left),
    });
    put("seat.depth", {
      view: "plan",
      beside: "right",
      // The corners of a solid seat lie behind its front edge and before its back edge.
      from: plan(seat.plan ? beside(seat.front.left, seat.front.middle) : seat.front.left),
      to: plan(seat.plan ? beside(seat.back.left, seat.back.middle) : seat.back.left),
    });
    const edge = seen("side", seat.front.middle);
    put("seat.height", { view: "side", beside: "left", from: [edge[0], 0], to: edge });
  }
  put("height", { view: "front", beside: "left", from: [front.left, 0], to: [front.topLeft, front.high] });
  put("width", { view: "front", beside: "below", from: [front.left, 0], to: [front.right, 0] });
  put("depth", { view: "side", beside: "below", from: [side.left, 0], to: [side.right, 0] });
  return measures;
}

/** A point as far back and up as the middle of an edge, out at its end. */
const beside = (end: Vec3, middle: Vec3): Vec3 => [end[0], middle[1], middle[2]];

/** The declared leans of a post from the seat or the floor, as they look from the side. */
export function leanMeasures(chair: Chair): LeanMeasure[] {
  return [...chair.design.angles.values()].flatMap((angle) => leanMeasure(chair, angle) ?? []);
}

function leanMeasure(chair: Chair, angle: AngleDesign): LeanMeasure | undefined {
  const value = chair.values.get(angle.name);
  const terms = angle.between?.value;
  const seen = angle.seenFrom?.value;
  if (!value || !terms || (seen !== undefined && seen !== "side")) return undefined;
  const surface = terms.map((term) => squareTo(chair, term)).find((normal) => normal !== undefined);
  const line = terms.map((term) => stretchOf(chair, term)).find((stretch) => stretch !== undefined);
  if (!surface || !line) return undefined;
  const flat = (p: Vec3): Point => [p[1], p[2]];
  const [x, y] = flat(surface);
  const size = Math.hypot(x, y);
  if (size < 0.1) return undefined;
  const of = terms.find((term) => term.is === "part")!.part;
  return {
    name: angle.name,
    label: `${of.name} ${printAngle(value.number)} from ${terms.some(({ is }) => is === "seat") ? "square to the seat" : "plumb"}`,
    from: flat(movePoint(chair.stance, line[0])),
    to: flat(movePoint(chair.stance, line[1])),
    upright: [x / size, y / size],
  };
}

function squareTo(chair: Chair, term: AngleTerm): Vec3 | undefined {
  if (term.is === "floor") return [0, 0, 1];
  return term.is === "seat" && chair.seat ? moveDirection(chair.stance, chair.seat.plane.normal) : undefined;
}

function stretchOf(chair: Chair, term: AngleTerm): [Vec3, Vec3] | undefined {
  if (term.is !== "part") return undefined;
  const post = partOf(chair.posts, term.part);
  if (!post) return undefined;
  const from = term.above === undefined ? post.foot : centreAt(post, term.above);
  const to = term.below === undefined ? post.top : centreAt(post, term.below);
  return dot(sub(to, from), negate([0, 0, 1])) < 0 ? [from, to] : undefined;
}
