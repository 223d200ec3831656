import type { Chair, Joint, Member } from "../chair/chair.ts";
import { clip } from "../geometry/convex.ts";
import type { Convex, Plane, Vec3 } from "../geometry/solid.ts";
import { cross, dot, sub, unit } from "../geometry/vec.ts";
import { pegsOf } from "../joinery/pegs.ts";
import type { Point } from "./sheet.ts";

/** What a cut through a joint meets, in millimetres: x along the tenon into the member entered from its shoulder, y down. */
export interface JointSection {
  /** The member entered, what else is let into it, the part with the tenon, and the pegs. */
  entered: Point[][];
  others: Point[][];
  part: Point[][];
  pegs: { at: Point; diameter: number }[];
  /** What to show: from the rail's end to the far side of the member. */
  shown: { low: Point; high: Point };
}

/** How much of the rail is shown before its shoulder, and of all around a member, mm. */
const BEFORE = 26;
const AROUND = 5;
/** The most that is shown along a member, mm each way. */
const ALONG = 60;

/**
 * A joint cut open through its middle: along its thickness (as it is seen from above where a rail enters a post), and along its width
 * (as it is seen from the side).
 */
export function sectionsOfJoint(
  chair: Chair,
  joint: Joint,
): { thick: JointSection; wide: JointSection } | undefined {
  const member = chair.members.get(joint.entered.name);
  const part = chair.members.get(joint.part);
  if (!member || !part || joint.tenon.length === 0) return undefined;
  const cut = (up: Vec3, middle: Vec3) => sectionAt(chair, joint, member, part, up, middle);
  // Through the middle of one tenon: between twins there is only the gap.
  const first = joint.sections[0]!;
  const high = (first.wide[0] + first.wide[1]) / 2;
  const deep = joint.shape === "forked" ? (first.thick[0] + first.thick[1]) / 2 : 0;
  const off = (axis: Vec3, by: number): Vec3 => [
    joint.root[0] + axis[0] * by,
    joint.root[1] + axis[1] * by,
    joint.root[2] + axis[2] * by,
  ];
  return {
    thick: cut(joint.acrossThick, off(joint.acrossWide, high)),
    wide: cut(joint.acrossWide, off(joint.acrossThick, deep)),
  };
}

/** The cut along the tenon and `up`, through a point. */
function sectionAt(
  chair: Chair,
  joint: Joint,
  member: Member,
  part: Member,
  up: Vec3,
  through: Vec3,
): JointSection {
  const { direction } = joint;
  const normal = unit(cross(direction, up));
  const plane: Plane = { normal, offset: dot(normal, through) };
  const flat = (p: Vec3): Point => {
    const from = sub(p, joint.root);
    return [dot(from, direction), -dot(from, up)];
  };
  const cut = (solids: readonly Convex[]): Point[][] =>
    solids.flatMap((solid) => {
      const ring = ringIn(solid, plane);
      return ring ? [ring.map(flat)] : [];
    });
  const entered = cut(member.body.pieces);
  const own = joint.haunch ? [...joint.tenon, joint.haunch] : joint.tenon;
  const others = [...chair.joints.values()]
    .filter(({ entered: { name }, tenon }) => name === member.name && tenon !== joint.tenon)
    .flatMap(({ tenon, haunch }) => (haunch ? [...tenon, haunch] : tenon));
  const body = cut([...part.body.pieces, ...own]);
  const pegs = pegsOf(joint);
  const seen = up === joint.acrossWide ? (pegs?.middles ?? []) : [];
  return {
    entered,
    others: cut(others),
    part: body,
    pegs: seen.map((at) => ({ at: flat(at), diameter: pegs!.diameter })),
    shown: shownOf(entered, cut(own)),
  };
}

/** From a little of the rail to the far side, and along the member as far as the joint wants. */
function shownOf(entered: readonly Point[][], own: readonly Point[][]): JointSection["shown"] {
  const spots = own.flat();
  const ys = spots.map(([, y]) => y);
  const [top, bottom] = [Math.min(...ys), Math.max(...ys)];
  const near = entered.flat().filter(([x]) => x > -ALONG);
  const limit = (value: number, from: number, way: 1 | -1) =>
    way * Math.min(way * value, way * from + ALONG / 2);
  const memberTop = Math.min(...near.map(([, y]) => y)) - AROUND;
  const memberBottom = Math.max(...near.map(([, y]) => y)) + AROUND;
  const right = Math.max(...near.map(([x]) => Math.min(x, ALONG * 1.5)), ...spots.map(([x]) => x));
  return {
    low: [-BEFORE, Math.max(memberTop, limit(memberTop, top, -1))],
    high: [right + AROUND, Math.min(memberBottom, limit(memberBottom, bottom, 1))],
  };
}

/** The outline in which a plane cuts a solid. */
export function ringIn(solid: Convex, plane: Plane): Vec3[] | undefined {
  const half = clip(solid, plane);
  if (!half || half === solid) return undefined;
  return half.faces.at(-1)?.map((index) => half.points[index]!);
}
