/**
 * One post from each of its faces, lying with its foot to the left, with every mortise that is cut in it.
 */
import type { Chair, FaceName, Joint, Post } from "../chair/chair.ts";
import { printBareLength, printLength } from "../design/units.ts";
import type { Body, Vec3 } from "../geometry/solid.ts";
import { cross, dot, norm, squareTo, sub, unit } from "../geometry/vec.ts";
import { mortiseSolids } from "../joinery/inside.ts";
import { pegsOf } from "../joinery/pegs.ts";
import { hullOf } from "./hull.ts";
import type { Point } from "./sheet.ts";

export interface PostFaces {
  post: string;
  /** Height of its words, mm: long posts are shown smaller. */
  words: number;
  width: number;
  height: number;
  faces: PostFace[];
}

export interface PostFace {
  caption: string;
  captionAt: Point;
  strokes: FaceStroke[];
  /** Over each mouth: from where to where it goes, from the foot along the post. */
  words: { text: string; at: Point }[];
}

/** Mouths lie in the face; what is hidden behind it is dashed. */
interface FaceStroke {
  points: Point[];
  is: "edge" | "mouth" | "hidden" | "peg";
}

const FACES: readonly FaceName[] = ["front", "left", "back", "right"];
/** Room round the faces, mm, and the height of words against the post's length. */
const ROOM = 16;
const WORDS = 1 / 36;
/** Half of how wide a letter is for its height, with a little air. */
const LETTER = 0.3;
const ROUND = 24;

/** The faces of a post by its full name; nothing for other parts. */
export function postFaces(chair: Chair, name: string): PostFaces | undefined {
  const post = chair.posts.get(name);
  if (!post || post.pieces.length === 0) return undefined;
  const up = unit(sub(post.top, post.foot));
  const all = [...chair.joints.values()].filter(({ tenon }) => tenon.length > 0);
  const joints = all.filter(({ entered }) => entered.name === name);
  /** Tenons cut on the post itself, as on its top. */
  const own = all.filter(({ part }) => part === name).flatMap(({ tenon }) => tenon);
  const wide =
    2 *
    Math.max(
      ...post.body.pieces.flatMap(({ points }) => points.map((p) => norm(squareTo(sub(p, post.foot), up)))),
    );
  const reach = [...post.body.pieces, ...own].flatMap(({ points }) =>
    points.map((p) => dot(sub(p, post.foot), up)),
  );
  const [low, high] = [Math.min(...reach), Math.max(...reach)];
  const size = Math.max(8, (high - low) * WORDS);
  // The names of the faces stand in a column of their own.
  const from = ROOM + 5 * size;
  const width = from + high - low + ROOM;
  let y = ROOM / 2;
  const faces = FACES.map((face): PostFace => {
    const normal = unit(squareTo(normalOf(post, face), up));
    const right = cross(up, normal);
    const along = (p: Vec3) => from + dot(sub(p, post.foot), up) - low;
    const mouths = joints.filter((joint) => isOpen(joint, normal));
    const words = mouths.map((joint) => wordsOf(chair, joint, along, { from, size, width }));
    const lanes = laid(words);
    const middle = y + (Math.max(1, ...lanes.map((lane) => lane + 1)) + 0.3) * 1.25 * size + wide / 2;
    y = middle + wide / 2 + ROOM / 2;
    // The upright view turned a quarter clockwise.
    const flat = (p: Vec3): Point => [along(p), middle + dot(sub(p, post.foot), right)];
    return {
      caption: captionOf(post, face),
      captionAt: [ROOM, middle + size / 3],
      strokes: [
        ...strokesOf(post, joints, normal, flat),
        ...own.map(({ points }): FaceStroke => {
          const edge = outline(points.map(flat));
          return { points: [...edge, edge[0]!], is: "edge" };
        }),
      ],
      words: words.map(({ text, at }, k) => ({
        text,
        at: [at, middle - wide / 2 - (lanes[k]! * 1.25 + 0.4) * size],
      })),
    };
  });
  return { post: name, words: size, width, height: y + ROOM / 2, faces };
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

interface Words {
  text: string;
  /** Their middle, and half their width. */
  at: number;
  half: number;
}

/** From where to where a mouth goes, from the foot as it stands cut. */
function wordsOf(
  { design: { units } }: Chair,
  { tenon }: Joint,
  along: (p: Vec3) => number,
  { from, size, width }: { from: number; size: number; width: number },
): Words {
  const spots = tenon.flatMap((solid) => solid.points.map(along));
  const [low, high] = [Math.min(...spots), Math.max(...spots)];
  const text = `${printBareLength(low - from, units)} – ${printLength(high - from, units)}`;
  const half = text.length * LETTER * size;
  return { text, half, at: Math.min((low + high) / 2, width - half) };
}

/** The lane each stands in, so that none stands on another: 0 is next to the face. */
function laid(words: readonly Words[]): number[] {
  const lanes: Words[][] = [];
  return words.map((one) => {
    const free = lanes.findIndex((lane) =>
      lane.every(({ at, half }) => Math.abs(at - one.at) > half + one.half),
    );
    const lane = free < 0 ? lanes.push([]) - 1 : free;
    lanes[lane]!.push(one);
    return lane;
  });
}

/** `front`, `outside`, `back`, `inside`; a middle post has a left and a right. */
function captionOf({ side }: Post, face: FaceName): string {
  if (side === "middle" || face === "front" || face === "back") return face;
  return face === side ? "outside" : "inside";
}
