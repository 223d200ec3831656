/**
 * The parts of a chair as finished pieces of wood: the one place where the boards look at the chair.
 */
import { stripLength } from "../chair/bows/strip.ts";
import type { Bow, Chair, Joint, Member, Rail } from "../chair/chair.ts";
import { diameterOf, directionsOf, grainOf } from "../chair/grain.ts";
import { isRail } from "../chair/member.ts";
import type { BoardRef } from "../design/board-design.ts";
import type { Given, HiddenFace, TimberDesign } from "../design/design.ts";
import type { PartId } from "../design/identity.ts";
import type { Vec3 } from "../geometry/solid.ts";
import { cross, dot, norm, squareTo, unit } from "../geometry/vec.ts";
import { type Hides, hidesOf } from "./hidden.ts";
import { extents, type Outline, outlineOf, type Spot } from "./outline.ts";

/** mm. */
export interface Size {
  thick: number;
  wide: number;
  long: number;
}

/** One part, finished: tenons and haunches are of its length. */
export interface FinishedPart {
  name: string;
  id: PartId;
  /** Of what is fixed to a part and sawn by itself: what it is called, and the name of that part, whose `id` it has. */
  called?: string;
  fixedTo?: string;
  timber?: TimberDesign;
  finished: Size;
  is: "straight" | "curved" | "turned" | "seat";
  /** Of a curved part: in the plane of its curve, grain along x; `thick` is square to it. */
  outline?: Outline;
  /** The greatest angle between its centre line and the grain, the outline turned so that it is least; 0 of a straight part. Radians. */
  grainSlope: number;
  /** How many boards of equal width the text has it jointed of. */
  boards?: number;
  sawnFrom?: Given<BoardRef>;
  hidden: readonly HiddenFace[];
  /** Where a defect may lie in it; absent where no face is hidden. */
  hides?: Hides;
}

/**
 * Every part that is sawn from a board, in the order to list them, the strips of a rail after it; a seat only where it is a solid board.
 */
export function finishedParts(chair: Chair): FinishedPart[] {
  const cut = new Map<string, Joint[]>();
  for (const joint of chair.joints.values()) {
    if (joint.facts.dowels || joint.kind === "passing") continue;
    const own = cut.get(joint.part);
    if (own) own.push(joint);
    else cut.set(joint.part, [joint]);
  }
  return [...chair.members.values()].flatMap((member) => {
    if (member.is === "seat" && member.design.kind !== "board" && member.design.kind !== "solid") return [];
    const points = wood(member, cut.get(member.name) ?? []);
    const own = points.body.length === 0 ? [] : [finishedPart(chair, member, points)];
    return member.is === "rail" ? [...own, ...stripParts(member)] : own;
  });
}

/** Strips that a loose seat rests on, each of the rail's timber; one that follows a curved rail is sawn to its outline. */
function stripParts({ id, name, timber, along: run, outward, strips = [] }: Rail): FinishedPart[] {
  return strips.map(({ pieces, design }, k) => {
    const { wide, thick } = design.value;
    const called = (of: string) => `strip${k > 0 ? ` ${k + 1}` : ""} of ${of}`;
    const flat = (p: Vec3): Spot => [dot(p, run), dot(p, outward)];
    const outline = outlineOf(pieces.map(({ points }) => points.map(flat)));
    const box = extents(outline);
    const long = box.to - box.from;
    const bends = box.high - box.low > thick + BENDS;
    return {
      name: called(name),
      id,
      called: called(id.stem),
      fixedTo: name,
      ...(timber && { timber }),
      is: bends ? "curved" : "straight",
      ...(bends && { outline: origined(outline, box.from, box.low) }),
      finished: bends
        ? { thick: wide, wide: box.high - box.low, long }
        : { thick: Math.min(wide, thick), wide: Math.max(wide, thick), long },
      grainSlope: 0,
      hidden: [],
    };
  });
}

/** A strip that strays further than this from the straight is sawn to its curve, mm. */
const BENDS = 0.5;

interface Wood {
  /** The points of each stretch of its body. */
  body: (readonly Vec3[])[];
  tenons: Vec3[];
}

/** `own` are the joints cut on its ends. */
function wood(member: Member, own: readonly Joint[]): Wood {
  // What is fixed to a rail is sawn apart from it.
  const { pieces } = (member.is === "rail" && member.uncut) || member.body;
  const solids = own.flatMap((joint) => (joint.haunch ? [...joint.tenon, joint.haunch] : joint.tenon));
  return { body: pieces.map(({ points }) => points), tenons: solids.flatMap(({ points }) => points) };
}

function finishedPart(chair: Chair, member: Member, points: Wood): FinishedPart {
  const { name, id, timber, design } = member;
  const boards = member.is === "seat" ? member.design.solid?.boards : undefined;
  const common = {
    name,
    id,
    ...(timber && { timber }),
    ...(boards && !boards.assumed && { boards: boards.value }),
    ...(design.sawnFrom && { sawnFrom: design.sawnFrom }),
    hidden: design.hidden?.value ?? [],
  };
  if (member.is === "bow") return { ...common, ...strip(chair, member) };
  const round = diameterOf(member);
  const curve = grainOf(member);
  if (!curve) return { ...common, ...straight(chair, member, points, round) };
  const { bend, grain, slope } = curve;
  const across = cross(bend, grain);
  const flat = (p: Vec3): Spot => [dot(p, grain), dot(p, across)];
  const outline = outlineOf(
    points.body.map((stretch) => stretch.map(flat)),
    points.tenons.map(flat),
  );
  const { from, to, low, high } = extents(outline);
  const [least, most] = spanOf(points, bend);
  const hides = hidesOf(chair, member, { grain, wide: across, thick: bend, from, straight: false });
  return {
    ...common,
    ...(hides && { hides }),
    is: "curved",
    finished: { thick: most - least, wide: high - low, long: to - from },
    outline: origined(outline, from, low),
    grainSlope: slope,
  };
}

/** A bow is sawn as the straight strip that it is bent from. */
function strip(chair: Chair, bow: Bow): Pick<FinishedPart, "is" | "finished" | "grainSlope"> {
  const { thick, wide } = bow.sizeAt(bow.path.length / 2);
  const ends = bow.sizeAt(0);
  const [a, b] = [Math.max(thick, ends.thick), Math.max(wide, ends.wide)];
  return {
    is: bow.round === undefined ? "straight" : "turned",
    finished: { thick: Math.min(a, b), wide: Math.max(a, b), long: stripLength(bow, chair) },
    grainSlope: 0,
  };
}

const origined = ({ low, high }: Outline, x: number, y: number): Outline => ({
  low: low.map(([u, v]): Spot => [u - x, v - y]),
  high: high.map(([u, v]): Spot => [u - x, v - y]),
});

function straight(
  chair: Chair,
  member: Member,
  points: Wood,
  round: number | undefined,
): Pick<FinishedPart, "is" | "finished" | "grainSlope" | "hides"> {
  const grain = member.is === "post" || isRail(member) ? wayOf(member) : member.grain;
  const [from, to] = spanOf(points, grain);
  const long = to - from;
  if (round !== undefined)
    return { is: "turned", finished: { thick: round, wide: round, long }, grainSlope: 0 };
  const side = sidewaysOf(member, grain);
  const other = cross(grain, side);
  const sizes = [reach(points, side), reach(points, other)] as const;
  const [thick, wide] = sizes[0] <= sizes[1] ? [side, other] : [other, side];
  const hides = hidesOf(chair, member, { grain, wide, thick, from, straight: true });
  return {
    ...(hides && { hides }),
    is: member.is === "seat" ? "seat" : "straight",
    finished: { thick: Math.min(...sizes), wide: Math.max(...sizes), long },
    grainSlope: 0,
  };
}

function reach(wood: Wood, way: Vec3): number {
  const [low, high] = spanOf(wood, way);
  return high - low;
}

/** Where some wood begins and ends along a way. */
function spanOf({ body, tenons }: Wood, way: Vec3): [number, number] {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  const take = (points: readonly Vec3[]) => {
    for (const point of points) {
      const at = dot(point, way);
      if (at < low) low = at;
      if (at > high) high = at;
    }
  };
  for (const points of body) take(points);
  take(tenons);
  return [low, high];
}

/** Square to the grain and to one of its faces. */
function sidewaysOf({ faces }: Member, grain: Vec3): Vec3 {
  const normals = faces.map(({ plane }) => squareTo(plane.normal, grain)).filter((way) => norm(way) > 0.5);
  const upright = normals.find((way) => Math.abs(way[2]) > 0.9 * norm(way)) ?? normals[0];
  if (upright) return unit(upright);
  const any = squareTo(Math.abs(grain[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0], grain);
  return unit(any);
}

/** Along a straight member. */
function wayOf(member: Member): Vec3 {
  const [way] = directionsOf(member);
  return way ?? member.grain;
}
