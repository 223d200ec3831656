/**
 * Where the parts made to one sheet stand in the chair: the one that is drawn, others like it, and its mirror images.
 */
import type { Chair } from "../../../server/chair/chair.ts";
import { railNamed } from "../../../server/chair/member.ts";
import type { Cast } from "../../../server/joinery/pieces/alike.ts";
import { castOf } from "../../../server/joinery/pieces/pieces.ts";
import { across, direction, inner, minus, outer, plus, size, times, type V } from "../solids/vectors.ts";
import { type Pose, poseOf, poseOfBow, poseOfFlat } from "./wanted.ts";

/** Carries a place, or a way, of the cutter's piece to where the part stands. */
export interface Carried {
  place: (p: V) => V;
  way: (p: V) => V;
}

/** Points of two parts nearer than this are the same, mm. */
const SAME = 0.1;

/** Where a part stands that is made to the sheet on which `drawn` is drawn; undefined for what is not there. */
export function carried(chair: Chair, drawn: string, name: string, mirrored: boolean): Carried | undefined {
  const pose = poseNamed(chair, drawn);
  if (!pose) return undefined;
  const own = (p: V): V => plus(plus(times(pose.ways[0], p[0]), pose.ways[1], p[1]), pose.ways[2], p[2]);
  const place = (p: V): V => plus(pose.origin, own(p));
  if (name === drawn) return { place, way: own };
  const [a, b] = [castNamed(chair, drawn), castNamed(chair, name)];
  const signs = a && b && signsBetween(a, b, mirrored);
  if (!signs) return undefined;
  const over = (p: V): V => sum(b.frame, inFrame(a.frame, p).map((value, k) => value * signs[k]!) as V);
  const [from, to] = [middleOf(a), middleOf(b)];
  return { place: (p) => plus(to, over(minus(place(p), from))), way: (p) => over(own(p)) };
}

function poseNamed(chair: Chair, name: string): Pose | undefined {
  const stick = stickNamed(chair, name);
  if (stick) return poseOf(chair, stick);
  const bow = chair.bows.get(name);
  if (bow) return poseOfBow(bow);
  const flat = chair.blocks.get(name) ?? chair.seat;
  return flat && poseOfFlat(flat);
}

const stickNamed = (chair: Chair, name: string) => railNamed(chair, name) ?? chair.posts.get(name);

function castNamed(chair: Chair, name: string): Cast | undefined {
  const stick = stickNamed(chair, name);
  if (!stick) return undefined;
  const { points, frame } = castOf(chair, stick);
  // The face that it is seen from may slope along a taper.
  const along = direction(v(frame[0]));
  const face = direction(across(v(frame[1]), along));
  const side = outer(along, face);
  const sign = inner(side, v(frame[2])) < 0 ? -1 : 1;
  return { points, frame: [along, face, times(side, sign)] };
}

const v = (p: readonly number[]): V => [...p] as V;
const inFrame = (frame: Cast["frame"], p: V): V => frame.map((way) => inner(v(way), p)) as V;
const sum = (frame: Cast["frame"], p: V): V =>
  plus(plus(times(v(frame[0]), p[0]), v(frame[1]), p[1]), v(frame[2]), p[2]);

/** The middle of the box around a part in its own directions. */
function middleOf({ points, frame }: Cast): V {
  const all = points.map(({ at }) => inFrame(frame, v(at)));
  const half = (k: 0 | 1 | 2) => {
    const values = all.map((p) => p[k]);
    return (Math.min(...values) + Math.max(...values)) / 2;
  };
  return sum(frame, [half(0), half(1), half(2)]);
}

/** What a part of the other side is as seen in the chair, and one beside it: its places across, forward and up change signs so. */
const USUAL = { mirrored: [-1, 1, 1], alike: [1, 1, 1] } as const;

/**
 * Which of the first part's own directions are turned about to make it the second: of several, as for a rail with like ends, the one that
 * turns the least in the chair.
 */
function signsBetween(a: Cast, b: Cast, mirrored: boolean): V | undefined {
  const own = ({ points, frame }: Cast, middle: V) =>
    points.map(({ tag, at }) => ({ tag, at: inFrame(frame, minus(v(at), middle)) }));
  const [one, other] = [own(a, middleOf(a)), own(b, middleOf(b))];
  const usual = USUAL[mirrored ? "mirrored" : "alike"];
  const kept = (signs: V) =>
    [0, 1, 2].reduce((total, axis) => {
      const unit: V = [0, 0, 0];
      unit[axis as 0] = 1;
      const over = sum(b.frame, inFrame(a.frame, unit).map((value, k) => value * signs[k]!) as V);
      return total + over[axis as 0] * usual[axis as 0];
    }, 0);
  const all = [1, -1].flatMap((x) => [1, -1].flatMap((y) => [1, -1].map((z): V => [x, y, z])));
  return all
    .filter(([x, y, z]) => x * y * z < 0 === mirrored)
    .filter((signs) =>
      one.every(({ tag, at }) => {
        const p = at.map((value, k) => value * signs[k]!) as V;
        return other.some((each) => each.tag === tag && size(minus(each.at, p)) < SAME);
      }),
    )
    .sort((p, q) => kept(q) - kept(p))[0];
}
