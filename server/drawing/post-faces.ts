/**
 * One post from each of its faces, lying with its foot to the left, with every mortise that is cut in it.
 */
import type { Chair, FaceName, Joint, Post, PostPiece } from "../chair/chair.ts";
import type { LengthUnit } from "../design/design.ts";
import { printBareLength, printLength } from "../design/units.ts";
import type { Body, Vec3 } from "../geometry/solid.ts";
import { cross, dot, norm, squareTo, sub, unit } from "../geometry/vec.ts";
import { mortiseSolids } from "../joinery/inside.ts";
import { pegsOf } from "../joinery/pegs.ts";
import { hullOf } from "./hull.ts";
import type { Point } from "./sheet.ts";

export interface PostFaces {
  post: string;
  /** All along it, its own tenons in: where it begins and ends, mm from its foot, and how long that is. */
  overall: { from: number; to: number; label: string };
  /** How far it reaches to each side of its line, mm. */
  half: number;
  /** Its section where it begins, ends and changes, from the foot. */
  sections: { at: number; label: string }[];
  faces: PostFace[];
}

/** Places are mm from the foot along the post, and down from its line. */
export interface PostFace {
  caption: string;
  strokes: FaceStroke[];
  mouths: Mouth[];
}

/** A mortise that opens in a face: what enters it, and from where to where it goes, from the foot as it stands cut. */
interface Mouth {
  part: string;
  label: string;
  at: Point;
}

/** Mouths lie in the face; what is hidden behind it is dashed. */
interface FaceStroke {
  points: Point[];
  is: "edge" | "mouth" | "hidden" | "peg";
}

const FACES: readonly FaceName[] = ["front", "left", "back", "right"];
const ROUND = 24;

/** The faces of a post by its full name; nothing for other parts. */
export function postFaces(chair: Chair, name: string): PostFaces | undefined {
  const post = chair.posts.get(name);
  if (!post || post.pieces.length === 0) return undefined;
  const { units } = chair.design;
  const up = unit(sub(post.top, post.foot));
  const all = [...chair.joints.values()].filter(({ tenon }) => tenon.length > 0);
  const joints = all.filter(({ entered }) => entered.name === name);
  /** Tenons cut on the post itself, as on its top. */
  const own = all.filter(({ part }) => part === name).flatMap(({ tenon }) => tenon);
  const half = Math.max(
    ...post.body.pieces.flatMap(({ points }) => points.map((p) => norm(squareTo(sub(p, post.foot), up)))),
  );
  const along = (p: Vec3) => dot(sub(p, post.foot), up);
  const reach = [...post.body.pieces, ...own].flatMap(({ points }) => points.map(along));
  const [low, high] = [Math.min(...reach), Math.max(...reach)];
  const faces = FACES.map((face): PostFace => {
    const normal = unit(squareTo(normalOf(post, face), up));
    const right = cross(up, normal);
    // The upright view turned a quarter clockwise.
    const flat = (p: Vec3): Point => [along(p) - low, dot(sub(p, post.foot), right)];
    return {
      caption: captionOf(post, face),
      strokes: [
        ...strokesOf(post, joints, normal, flat),
        ...own.map(({ points }): FaceStroke => {
          const edge = outline(points.map(flat));
          return { points: [...edge, edge[0]!], is: "edge" };
        }),
      ],
      mouths: joints.filter((joint) => isOpen(joint, normal)).map((joint) => mouthOf(joint, flat, units)),
    };
  });
  const overall = { from: 0, to: high - low, label: printLength(high - low, units) };
  return { post: name, overall, half, sections: sectionsOf(post, (p) => along(p) - low, units), faces };
}

/** Its section where it begins, where it changes and where it ends; once for a post that is alike all along. */
function sectionsOf({ pieces }: Post, along: (p: Vec3) => number, units: LengthUnit): PostFaces["sections"] {
  const told = pieces
    .flatMap((piece) => [
      { at: along(piece.start), label: sectionAt(piece, 0, units) },
      { at: along(piece.end), label: sectionAt(piece, 1, units) },
    ])
    // One piece ends where the next begins.
    .filter(
      ({ at, label }, k, some) => k === 0 || at - some[k - 1]!.at > SAME || label !== some[k - 1]!.label,
    );
  const first = told[0];
  const last = told.at(-1);
  if (!first || !last) return [];
  if (told.every(({ label }) => label === first.label))
    return [{ at: (first.at + last.at) / 2, label: first.label }];
  // Within a taper it changes all along: told where that begins and ends.
  return told.filter(({ label }, k) => {
    const [before, after] = [told[k - 1], told[k + 1]];
    return !before || !after || (label === before.label) !== (label === after.label);
  });
}

/** Sections nearer than this are told once, mm. */
const SAME = 1;

function sectionAt(
  { start, end, direction, faces, radii }: PostPiece,
  which: 0 | 1,
  units: LengthUnit,
): string {
  if (radii) return `⌀ ${printLength(2 * radii[which], units)}`;
  const centre = which === 0 ? start : end;
  const out = (face: FaceName) => {
    const { normal, offset } = faces![face];
    const way = unit(squareTo(normal, direction));
    return (offset - dot(normal, centre)) / dot(normal, way);
  };
  const [deep, wide] = [out("front") + out("back"), out("left") + out("right")];
  return `${printBareLength(wide, units)} × ${printLength(deep, units)}`;
}

/** Out of a face, by the longest straight of the post; turned stuff is seen from the chair's own sides. */
function normalOf({ pieces }: Post, face: FaceName): Vec3 {
  const long = [...pieces].sort((a, b) => b.to - b.from - (a.to - a.from))[0];
  const own: Record<FaceName, Vec3> = {
    front: [0, -1, 0],
    back: [0, 1, 0],
    left: [1, 0, 0],
    right: [-1, 0, 0],
  };
  return long?.faces?.[face].normal ?? own[face];
}

/** Whether a joint's mortise opens in a face. */
function isOpen(joint: Joint, normal: Vec3): boolean {
  const into = -dot(joint.direction, normal);
  return into > Math.SQRT1_2 || (into < -Math.SQRT1_2 && joint.facts.through !== undefined);
}

function strokesOf(
  { body }: Post,
  joints: readonly Joint[],
  normal: Vec3,
  flat: (p: Vec3) => Point,
): FaceStroke[] {
  const strokes = visible(body, normal).map(
    ({ a, b }): FaceStroke => ({ points: [flat(a), flat(b)], is: "edge" }),
  );
  for (const joint of joints) {
    const is = isOpen(joint, normal) ? "mouth" : "hidden";
    for (const solid of mortiseSolids(joint)) {
      const points = outline(solid.points.map(flat));
      strokes.push({ points: [...points, points[0]!], is });
    }
    const pegs = Math.abs(dot(joint.acrossThick, normal)) > Math.SQRT1_2 ? pegsOf(joint) : undefined;
    for (const at of pegs?.middles ?? [])
      strokes.push({ points: circle(flat(at), pegs!.diameter / 2), is: "peg" });
  }
  return strokes;
}

/** Edges of what looks towards the eye; of curved surfaces their outline. */
const visible = ({ edges }: Body, normal: Vec3) =>
  edges.filter(({ is, normals }) => {
    const [one, other] = normals.map((n) => dot(n, normal) > 1e-6);
    return is === "smooth" ? one !== other : one || other;
  });

function outline(points: readonly Point[]): Point[] {
  const [xs, ys] = [0, 1].map((axis) => Float64Array.from(points, (point) => point[axis as 0])) as [
    Float64Array,
    Float64Array,
  ];
  return hullOf(xs, ys, points.length).map((index) => points[index]!);
}

const circle = ([x, y]: Point, radius: number): Point[] =>
  Array.from({ length: ROUND + 1 }, (_, k) => {
    const angle = (2 * Math.PI * k) / ROUND;
    return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
  });

/** From where to where a mouth goes, from the foot as it stands cut. */
function mouthOf({ part, tenon }: Joint, flat: (p: Vec3) => Point, units: LengthUnit): Mouth {
  const places = tenon.flatMap(({ points }) => points.map(flat));
  const [xs, ys] = [places.map(([x]) => x), places.map(([, y]) => y)];
  const [low, high] = [Math.min(...xs), Math.max(...xs)];
  return {
    part,
    label: `${printBareLength(low, units)} – ${printLength(high, units)}`,
    at: [(low + high) / 2, (Math.min(...ys) + Math.max(...ys)) / 2],
  };
}

/** `front`, `outside`, `back`, `inside`; a middle post has a left and a right. */
function captionOf({ side }: Post, face: FaceName): string {
  if (side === "middle" || face === "front" || face === "back") return face;
  return face === side ? "outside" : "inside";
}
