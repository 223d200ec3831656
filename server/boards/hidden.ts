/**
 * Defects that may stay in a part because nobody sees them: under its hidden faces, up to half its thickness, clear of its joints.
 */
import type { Chair, Joint, Member } from "../chair/chair.ts";
import { isRail } from "../chair/member.ts";
import type { HiddenFace } from "../design/design.ts";
import type { Vec3 } from "../geometry/solid.ts";
import { along, dot, scale, sub } from "../geometry/vec.ts";
import type { Spot } from "./outline.ts";
import type { Box } from "./wood.ts";

/** What of a part is hidden, as its blank lies in a board: x along the grain from its first end, y across. */
export interface Hides {
  /** A hidden face that lies flat in the board. */
  flat?: HiddenFace;
  /** Hidden faces along the lower and the upper edge. */
  low?: HiddenFace;
  high?: HiddenFace;
  /** It may be turned over, so that its one hidden edge is the lower or the upper one. */
  eitherEdge?: true;
  /** Stretches of its length that have joints, from x = 0, mm. */
  joints: readonly (readonly [number, number])[];
  /** Its end at x = 0: `foot`, `front`. */
  firstEnd: string;
}

/** How a part lies in its blank: unit directions along, across and through, and where along the grain it begins. */
export interface Lying {
  grain: Vec3;
  wide: Vec3;
  thick: Vec3;
  from: number;
  /** Its edges are equal, so that it may be turned over. */
  straight: boolean;
}

/** Undefined where no face is hidden, or none is flat. */
export function hidesOf(chair: Chair, member: Member, lying: Lying): Hides | undefined {
  const hidden = member.design.hidden?.value ?? [];
  if (hidden.length === 0) return undefined;
  const { grain, wide, thick, from, straight } = lying;
  const hides: Hides = { joints: [], firstEnd: firstEndOf(member, grain) };
  for (const said of hidden) {
    const name = said === "below" ? "bottom" : said;
    const normal = member.faces.find((face) => face.name === name)?.plane.normal;
    if (!normal) continue;
    const across = dot(normal, wide);
    if (Math.abs(dot(normal, thick)) >= Math.abs(across)) hides.flat ??= said;
    else if (across < 0) hides.low = said;
    else hides.high = said;
  }
  if (!hides.flat && !hides.low && !hides.high) return undefined;
  if (straight && !(hides.low && hides.high)) hides.eitherEdge = true;
  const at = (point: Vec3) => dot(point, grain) - from;
  hides.joints = jointsOf(chair, member).map((points): [number, number] => {
    const xs = points.map(at);
    return [Math.min(...xs), Math.max(...xs)];
  });
  return hides;
}

function firstEndOf(member: Member, grain: Vec3): string {
  if (member.is === "post") return "foot";
  if (isRail(member)) return `${member.ends[0].name} end`;
  const [x, y] = grain;
  return Math.abs(y) >= Math.abs(x) ? (y > 0 ? "front end" : "back end") : x > 0 ? "right end" : "left end";
}

/** The points of each joint that a member has: its own ends, what enters it, what it is halved over. */
function jointsOf(chair: Chair, member: Member): Vec3[][] {
  const found: Vec3[][] = [];
  for (const joint of chair.joints.values()) {
    if (joint.part === member.name) found.push(ownPoints(joint));
    if (joint.entered.name !== member.name) continue;
    const part = chair.members.get(joint.part);
    const end = isRail(part) ? part.ends.find(({ name }) => name === joint.end) : undefined;
    found.push([...solidPoints(joint), ...(end?.corners ?? [])]);
  }
  if (isRail(member))
    for (const { sides } of member.notches ?? [])
      found.push(
        sides.map(({ normal, offset }) => {
          const run = dot(normal, member.along);
          return along(member.start, member.along, (offset - dot(normal, member.start)) / run);
        }),
      );
  return found.filter((points) => points.length > 0);
}

const solidPoints = ({ tenon, haunch }: Joint): Vec3[] =>
  [...tenon, ...(haunch ? [haunch] : [])].flatMap(({ points }) => points);

/** Of an end with dowels or a loose tongue the stretch that those go into it as well. */
function ownPoints(joint: Joint): Vec3[] {
  const { root, direction, long, facts, socket } = joint;
  const back = facts.dowels ? [sub(root, scale(direction, long))] : [];
  return [root, ...back, ...solidPoints(joint), ...socket.flatMap(({ points }) => points)];
}

/** The same part laid another way in the board: its ends, or its edges, change places. */
export function hidesLaid(hides: Hides, long: number, swapped: { ends: boolean; edges: boolean }): Hides {
  const { low, high, joints, ...rest } = hides;
  const [under, over] = swapped.edges ? [high, low] : [low, high];
  return {
    ...rest,
    ...(under && { low: under }),
    ...(over && { high: over }),
    joints: swapped.ends ? joints.map(([from, to]): [number, number] => [long - to, long - from]) : joints,
  };
}

/** A piece in its place in a board. */
export interface LaidPiece extends Box {
  outline?: readonly Spot[];
  hides?: Hides;
}

/** A defect that stays in a piece, and the hidden face it is turned to. */
export interface Under<D extends Box> {
  defect: D;
  face: HiddenFace;
  /** The face lies flat in the board, so that how deep the defect goes is to be looked at. */
  flat: boolean;
}

/**
 * The defects that stay in a piece; undefined where one may not. Under a hidden edge a defect may reach up to the middle of the piece.
 * How deep one goes that lies under a hidden flat face the text does not say: the plan tells the maker to look.
 */
export function hiddenIn<D extends Box>(piece: LaidPiece, defects: readonly D[]): Under<D>[] | undefined {
  const under: Under<D>[] = [];
  const { hides } = piece;
  const sides = new Set<"low" | "high">();
  for (const defect of defects) {
    const shares = sharesOf(piece, defect);
    if (!shares) continue;
    if (!hides || hides.joints.some(([from, to]) => shares.from < to && shares.to > from)) return undefined;
    const side = shares.side;
    const edge = side && (hides[side] ?? (hides.eitherEdge ? (hides.low ?? hides.high) : undefined));
    if (side && edge) {
      sides.add(side);
      under.push({ defect, face: edge, flat: false });
    } else if (hides.flat) under.push({ defect, face: hides.flat, flat: true });
    else return undefined;
  }
  // One hidden edge is turned to one side only.
  if (hides?.eitherEdge && sides.size > 1) return undefined;
  return under;
}

const NEAR = 1e-6;

/** The stretch of a piece that a defect lies in, from its first end, and the edge it does not reach past the middle from. */
function sharesOf(
  piece: LaidPiece,
  defect: Box,
): { from: number; to: number; side?: "low" | "high" } | undefined {
  const from = Math.max(piece.x, defect.x);
  const to = Math.min(piece.x + piece.long, defect.x + defect.long);
  if (to <= from + NEAR) return undefined;
  const bottom = defect.y;
  const top = defect.y + defect.wide;
  let meets = false;
  let [low, high] = [true, true];
  for (const [under, over] of spansOf(piece, from, to)) {
    if (Math.max(...over) <= bottom + NEAR || Math.min(...under) >= top - NEAR) continue;
    meets = true;
    for (const k of [0, 1] as const) {
      const middle = (under[k] + over[k]) / 2;
      if (top > middle + NEAR) low = false;
      if (bottom < middle - NEAR) high = false;
    }
  }
  if (!meets) return undefined;
  return { from: from - piece.x, to: to - piece.x, ...((low || high) && { side: low ? "low" : "high" }) };
}

type Pair = [number, number];

/** The lower and upper edge of a piece at both ends of each stretch between the corners of its outline. */
function* spansOf({ y, wide, outline }: LaidPiece, from: number, to: number): Iterable<[Pair, Pair]> {
  if (!outline) {
    yield [
      [y, y],
      [y + wide, y + wide],
    ];
    return;
  }
  const inside = outline.map(([x]) => x).filter((x) => x > from + NEAR && x < to - NEAR);
  const xs = [...new Set([from, ...inside, to])].sort((a, b) => a - b);
  for (let k = 0; k + 1 < xs.length; k++) {
    const [a, b] = [edgesAt(outline, xs[k]! + NEAR), edgesAt(outline, xs[k + 1]! - NEAR)];
    if (a && b)
      yield [
        [a[0], b[0]],
        [a[1], b[1]],
      ];
  }
}

/** Where a line across the board at x enters and leaves an outline. */
function edgesAt(outline: readonly Spot[], x: number): Pair | undefined {
  const ys = outline.flatMap(([u, v], k) => {
    const [p, q] = outline[(k + 1) % outline.length]!;
    if (Math.min(u, p) > x || Math.max(u, p) < x || u === p) return [];
    return [v + ((q - v) * (x - u)) / (p - u)];
  });
  return ys.length > 0 ? [Math.min(...ys), Math.max(...ys)] : undefined;
}
