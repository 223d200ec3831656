import { height, planeAt } from "../../geometry/plane.ts";
import type { Plane, Vec3 } from "../../geometry/solid.ts";
import { along, cross, dot, negate, sub } from "../../geometry/vec.ts";
import type { Bow, Chair, Rail } from "../chair.ts";
import { railsAndSlats } from "../member.ts";
import { middleSection, shapeOf, spotOn } from "../rails/rail-outline.ts";

/** The back of a chair, as drawn. */
export interface Backrest {
  /** The lowest and the highest member that carry the back; the same one when there is only one. */
  lowest: Rail;
  highest: Rail;
  /** Radians, from square to the seat, positive away from the sitter. */
  rake: number;
  /** The straight of the back: a point on it and its direction going up. */
  at: Vec3;
  run: Vec3;
  /** The top of the highest member, at the middle of its length: the higher of its two arrises in the plane given as level. */
  top: Vec3;
}

/** A member with a face to the sitter above the seat and behind its middle. */
interface BackMember {
  rail: Rail;
  /** The middle of that face, as drawn. */
  face: Vec3;
  /** How high the middle of the face is above the seat's surface, and its lowest and highest, mm. */
  up: number;
  from: number;
  to: number;
}

type Backed = Pick<Chair, "members" | "seat">;

/** The members that carry the back of a chair with a seat, the lowest first; none without a seat. */
export function backMembers(chair: Backed): BackMember[] {
  const seat = chair.seat;
  if (!seat) return [];
  const { plane } = seat;
  const behind = planeAt(along(seat.front.middle, sub(seat.back.middle, seat.front.middle), 0.5), [0, 1, 0]);
  const found: BackMember[] = [];
  for (const rail of railsAndSlats(chair)) {
    if (rail.flat || Math.abs(rail.outward[1]) < Math.SQRT1_2) continue;
    if (rail.is === "rail" && Math.abs(rail.along[0]) < Math.SQRT1_2) continue;
    const face = faceMiddle(rail);
    const up = height(plane, face);
    if (!(up > 0 && height(behind, face) > 0)) continue;
    const ends = (rail.is !== "rail" ? [rail.start, rail.end] : middleSection(rail)).map((point) =>
      height(plane, point),
    );
    found.push({ rail, face, up, from: Math.min(...ends), to: Math.max(...ends) });
  }
  return found.sort((a, b) => a.up - b.up);
}

/**
 * The backrest of a chair with a seat: members across the chair, and slats, that stand above the seat and behind its middle with a face
 * to the sitter. Its rake is that of the straight through the middles of those faces, lowest to highest; of a single member, that of
 * its own face, or of the one post that it lies over. Undefined when there is none.
 */
export function backrestOf(chair: Backed & Pick<Chair, "floor">): Backrest | undefined {
  const { seat } = chair;
  const found = backMembers(chair);
  if (!seat) return undefined;
  const { plane } = seat;
  const low = found[0];
  const high = found[found.length - 1];
  if (!low || !high) return undefined;
  const sticks = middleSticks(found.map(({ rail }) => rail));
  const across = found.filter(({ rail }) => rail.is !== "stick");
  if (sticks.length > 0 && across.length < 2) return ofSticks(chair, sticks, low, high);
  const run =
    high.up - low.up > 1
      ? sub(high.face, low.face)
      : (alongPost(chair, low.rail) ?? upAlong(low.rail, plane));
  const back = cross(plane.normal, [1, 0, 0]);
  return {
    lowest: low.rail,
    highest: high.rail,
    rake: Math.atan2(dot(run, back), dot(run, plane.normal)),
    at: low.face,
    run,
    top: topOf(high.rail, chair.floor),
  };
}

/** The middle stick of the row whose heads are highest, or its middle two; none where no sticks stand behind. */
function middleSticks(members: readonly Rail[]): Rail[] {
  const sticks = members.filter(({ is }) => is === "stick");
  const highest = sticks.reduce<Rail | undefined>((a, b) => (a && a.end[2] >= b.end[2] ? a : b), undefined);
  const row = sticks.filter(({ design }) => design === highest?.design);
  row.sort((a, b) => a.end[0] - b.end[0]);
  const middle = (row.length - 1) / 2;
  return row.slice(Math.floor(middle), Math.ceil(middle) + 1);
}

/** A back of sticks, with no member across it but what holds their heads: it leans as they do. */
function ofSticks(
  { seat, members, floor }: Backed & Pick<Chair, "floor">,
  sticks: readonly Rail[],
  low: BackMember,
  high: BackMember,
): Backrest {
  const { plane } = seat!;
  const back = cross(plane.normal, [1, 0, 0]);
  const runs = sticks.map((stick) => stick.along);
  const rake =
    runs.reduce((sum, run) => sum + Math.atan2(dot(run, back), dot(run, plane.normal)), 0) / runs.length;
  const holder = members.get(sticks[0]!.ends[1].entered?.name ?? "");
  const crown = holder?.is === "bow" ? crownOf(holder) : topOf(high.rail, floor);
  return {
    lowest: low.rail,
    highest: high.rail,
    rake,
    at: low.face,
    run: along(plane.normal, back, Math.tan(rake)),
    top: crown,
  };
}

/** The top of a hoop's outside, at the middle. */
function crownOf(bow: Bow): Vec3 {
  const s = bow.path.length / 2;
  const out = cross(bow.way(s), bow.normal);
  return along(bow.spot(s), out, bow.sizeAt(s).thick / 2);
}

/** The way up of the one post that a rail lies over. */
function alongPost({ members }: Backed, { design }: Rail): Vec3 | undefined {
  const post = design.is === "rail" ? members.get(design.onOne?.value.name ?? "") : undefined;
  return post?.is === "post" ? post.pieces[post.pieces.length - 1]?.direction : undefined;
}

function upAlong(rail: Rail, plane: Plane): Vec3 {
  const run = rail.is !== "rail" ? rail.along : rail.upward;
  return dot(run, plane.normal) < 0 ? negate(run) : run;
}

/** The middle of the face that looks to the front. */
function faceMiddle(rail: Rail): Vec3 {
  const shape = shapeOf(rail);
  const x = rail.length / 2;
  const y = rail.outward[1] > 0 ? shape.inside(x) : shape.outside(x);
  return spotOn(rail, x, y, (shape.top(x) + shape.bottom(x)) / 2);
}

function topOf(rail: Rail, floor: Plane): Vec3 {
  const shape = shapeOf(rail);
  if (rail.is !== "rail") return rail.start[2] > rail.end[2] ? rail.start : rail.end;
  const x = rail.length / 2;
  const edge = (y: number) => spotOn(rail, x, y, shape.top(x));
  if (shape.round)
    return along(spotOn(rail, x, (shape.outside(x) + shape.inside(x)) / 2, 0), floor.normal, shape.top(x));
  const outside = edge(shape.outside(x));
  const inside = edge(shape.inside(x));
  return height(floor, outside) > height(floor, inside) ? outside : inside;
}
