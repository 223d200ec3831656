/**
 * Every piece of a chair to be marked out, each once with all the parts made to it.
 */
import type { Chair, Joint, Post, Rail } from "../../chair/chair.ts";
import { railsAndSlats } from "../../chair/member.ts";
import { shapeOf } from "../../chair/rails/rail-outline.ts";
import { stripCorners } from "../../chair/rails/rests.ts";
import type { Vec3 } from "../../geometry/solid.ts";
import { along, cross, dot, sub } from "../../geometry/vec.ts";
import { type Cast, likeness } from "./alike.ts";
import { bowPieces } from "./bow-piece.ts";
import { cutEnd, datumMarks, tenonMarks } from "./ends.ts";
import { flatParts } from "./flat.ts";
import { layFaces } from "./lay.ts";
import { jointsInto } from "./mouths.ts";
import { notchesOf } from "./notches.ts";
import { curvesOf } from "./outline.ts";
import type { Mortise, Outline, Piece } from "./piece.ts";
import { restMarks, restsOf } from "./rests.ts";
import { letterOf, setOut } from "./setting-out.ts";
import { rolled } from "./squared.ts";
import { type StickOf, stickOfPost, stickOfRail } from "./stick-of.ts";
import { type TurnedStick, turnedPost, turnedRail } from "./turned.ts";

/** In the order of the text: posts, rails, slats; then blocks and a seat of wood. */
export function piecesOf(chair: Chair): Piece[] {
  const sticks = [...chair.posts.values(), ...railsAndSlats(chair)];
  const made: { piece: Piece; cast: Cast; design: unknown }[] = [];
  const parts = [
    ...sticks.map((part) => ({
      name: part.name,
      design: part.design as unknown,
      cast: () => castOf(chair, part),
      piece: () => pieceOf(chair, part),
    })),
    ...bowPieces(chair, chair.design.units === "in" ? INCH : CURVE).map(({ bow, piece }) => ({
      name: bow.name,
      design: bow.design as unknown,
      cast: (): Cast => ({
        points: [],
        frame: [
          [1, 0, 0],
          [0, 1, 0],
          [0, 0, 1],
        ],
      }),
      piece: () => piece,
    })),
    ...flatParts(chair).map(({ piece, cast, design }) => ({
      name: piece.name,
      design,
      cast: () => cast,
      piece: () => piece,
    })),
  ];
  for (const part of parts) {
    const cast = part.cast();
    const twin = made.find((other) => {
      if (other.design !== part.design) return false;
      const { same, mirrored } = likeness(other.cast, cast);
      if (same || mirrored) other.piece.parts.push({ name: part.name, mirrored: !same });
      return same || mirrored;
    });
    if (!twin) made.push({ piece: part.piece(), cast, design: part.design });
  }
  const pieces = made.map(({ piece }) => piece);
  const names = pieces.map(({ parts }) => commonName(parts.map(({ name }) => name)));
  for (const [k, piece] of pieces.entries()) {
    const name = names[k]!;
    // Members of one row that come out different tell which they are: `back-slat 1, 4`.
    const shared = names.filter((other) => other === name).length > 1;
    const which = piece.parts.map((part) => part.name.slice(name.length + 1)).filter(Boolean);
    piece.name = shared && which.length > 0 ? `${name} ${which.join(", ")}` : name;
    const member = chair.members.get(piece.parts[0]!.name);
    const { moisture } = member?.timber ?? {};
    const comment = member?.design.description?.trim();
    if (moisture !== undefined) piece.moisture = moisture;
    if (comment) piece.comment = comment;
  }
  return pieces;
}

/** Offsets of a curve are given every so many mm; in inches where the file is. */
const CURVE = 25;
const INCH = 25.4;

/** One part as a piece; always whole, whatever was built of it. */
export function pieceOf(chair: Chair, part: Post | Rail): Piece {
  const every = chair.design.units === "in" ? INCH : CURVE;
  const squared = part.is === "post" ? stickOfPost(chair, part, every) : stickOfRail(chair, part, every);
  if (squared) return squaredPiece(chair, part, squared);
  return turnedPiece(part, (part.is === "post" ? turnedPost(chair, part) : turnedRail(chair, part))!);
}

function begun(part: Post | Rail) {
  const { timber } = part;
  return {
    name: part.name,
    is: part.is,
    parts: [{ name: part.name, mirrored: false }],
    ...(timber ? { timber: timber.species } : {}),
    ...(part.is === "post" ? {} : { between: part.length }),
  };
}

function squaredPiece(chair: Chair, part: Post | Rail, { stick, runs, main, ends, outline }: StickOf): Piece {
  const level = runs.find(({ from, to }) => main >= from && main <= to) ?? runs[0]!;
  const laid = layFaces(stick, main, level.origin);
  const sets = jointsInto(chair, part.name)
    .flatMap((joint) => setOut(stick, laid, runs, joint))
    .sort((a, b) => a.x - b.x);
  const mortises = sets.map(({ mortise, draw }, k): Mortise => {
    const letter = letterOf(k);
    for (const { face, mark } of draw(letter)) laid.faces[face]!.marks.push(mark);
    return { letter, ...mortise };
  });
  for (const site of ends) {
    for (const { face, mark } of tenonMarks(stick, laid, site)) laid.faces[face]!.marks.push(mark);
  }
  const isRested = part.is !== "post" && (part.cuts || part.strips);
  if (isRested) for (const { face, mark } of restMarks(stick, laid, part)) laid.faces[face]!.marks.push(mark);
  for (const { face, mark } of datumMarks(stick, laid, runs)) laid.faces[face]!.marks.push(mark);
  const points = [...stick.stretches.map(({ solid }) => solid), ...tenonsOf(chair, part)].flatMap(
    (s) => s.points,
  );
  const reach = (d: Vec3) => {
    const values = points.map((p) => dot(p, d));
    return Math.max(...values) - Math.min(...values);
  };
  return {
    ...begun(part),
    size: { long: reach(stick.stretches[main]!.direction), ...sectionOf(part) },
    faces: laid.faces,
    ...(outline ? { outline: withCurves(part, outline) } : {}),
    datums: runs.map(({ datum }) => datum),
    ends: ends.map((site) => cutEnd(stick, runs, site)),
    mortises,
    ...(part.is !== "post" && part.notches ? { notches: notchesOf(stick, runs, part) } : {}),
    ...(isRested ? { rests: restsOf(part, level) } : {}),
    notes: alongCurves(laid.faces),
  };
}

function withCurves(part: Post | Rail, outline: Outline): Outline {
  if (part.is === "post") return outline;
  const curves = curvesOf(part, dot(cross(part.upward, part.outward), part.along) > 0);
  return curves?.length ? { ...outline, curves } : outline;
}

/** Which faces are laid out along a curve, so that they are longer than the stick is seen to be. */
function alongCurves(faces: Piece["faces"]): string[] {
  const names = faces
    .filter(({ panels: [first, ...rest] }) =>
      rest.some((panel) => dot(panel.normal, first!.normal) < 1 - 1e-4),
    )
    .map(({ name }) => name);
  if (names.length === 0) return [];
  const [last, ...others] = [...names].reverse();
  const all = others.length ? `${others.reverse().join(", ")} and ${last} are` : `${last} is`;
  const along = faces.some(({ shaped }) => shaped === "curved") ? "curve" : "taper";
  return [`The ${all} laid out along the ${along}.`];
}

function turnedPiece(part: Post | Rail, stick: TurnedStick): Piece {
  const { turned, runs, ends, mortises, long, diameter } = stick;
  const tenons = ends.reduce((sum, { tenon }) => sum + (tenon?.run ?? 0), 0);
  return {
    ...begun(part),
    size: { long: long + tenons, wide: diameter, thick: diameter, round: diameter },
    faces: [],
    turned,
    datums: runs.map(({ datum }) => datum),
    ends,
    mortises: [...mortises]
      .sort((a, b) => stationOf(runs, a) - stationOf(runs, b))
      .map((mortise, k) => ({ letter: letterOf(k), ...mortise })),
    ...(part.is === "post" && part.design.intoSeat && { levelling: levellingOf(part) }),
    notes: [],
  };
}

/** What the floor's plane takes off one side of a turned foot more than off the other, mm. */
function levellingOf({ pieces: [foot] }: Post): number {
  if (!foot?.radii) return 0;
  const upright = Math.abs(foot.direction[2]);
  return 2 * foot.radii[0] * Math.tan(Math.acos(Math.min(1, upright)));
}

const stationOf = (runs: TurnedStick["runs"], { datum, from }: Omit<Mortise, "letter">): number =>
  (runs.find((run) => run.datum.name === datum)?.datum.along ?? 0) + from[0];

/** Thickness and width as the stuff is planed before it is shaped. */
function sectionOf(part: Post | Rail): { thick: number; wide: number } {
  if (part.is !== "post") return { thick: part.thick, wide: part.wide };
  const shape = part.design.shape?.value ?? [];
  const all = [...shape, ...(part.design.section ? [part.design.section.value] : [])];
  const most = (pick: "first" | "second") => Math.max(0, ...all.map((each) => each[pick]));
  return { thick: most("first"), wide: most("second") };
}

/** Dowels and separate tongues do not belong to the stick. */
const tenonsOf = (chair: Chair, part: Post | Rail) =>
  [...chair.joints.values()]
    .filter(
      (joint) =>
        joint.part === part.name &&
        joint.kind !== "passing" &&
        !joint.facts.dowels &&
        joint.socket.length === 0,
    )
    .flatMap((joint) => (joint.haunch ? [...joint.tenon, joint.haunch] : joint.tenon));

/** What tells a part from others of its design: its corners, its tenons and its mortises. */
export function castOf(chair: Chair, part: Post | Rail): Cast {
  const frame = frameOf(part);
  const joints = [...chair.joints.values()];
  const own = joints.filter((joint) => joint.part === part.name);
  const into = joints.filter(({ entered }) => entered.name === part.name);
  const tagged = (tag: string, solids: Joint["tenon"]) =>
    solids.flatMap(({ points }) => points.map((at) => ({ tag, at })));
  const axis = (tag: string, joint: Joint) =>
    joint.tenon.length === 0
      ? []
      : [0, joint.long].map((by) => ({
          tag: `${tag} ${joint.thick.toFixed(3)}`,
          at: along(joint.root, joint.direction, by),
        }));
  // Flats of round work lie where they happen to: its axis and size stand for it.
  const joinery = (tag: string, some: Joint[]) =>
    some.flatMap((joint) =>
      joint.shape === "round"
        ? axis(tag, joint)
        : tagged(tag, joint.haunch ? [...joint.tenon, joint.haunch] : joint.tenon),
    );
  const round = part.is === "post" ? part.pieces[0]?.radii : part.round;
  const body =
    part.is === "post" && round
      ? part.pieces.flatMap(({ start, end, radii }) =>
          [start, end].map((at, k) => ({ tag: `⌀ ${radii![k]!.toFixed(3)}`, at })),
        )
      : part.is !== "post" && round
        ? [part.start, part.end].map((at) => ({ tag: "end", at }))
        : part.is === "post"
          ? tagged("body", part.body.pieces)
          : outlineOf(part);
  return { points: [...body, ...joinery("tenon", own), ...joinery("mortise", into)], frame };
}

/** A squared rail by its shoulders' corners and its section in the middle: the flats of a curve lie where they happen to. */
function outlineOf(rail: Rail): Cast["points"] {
  const shape = shapeOf(rail);
  const corners = rail.ends.flatMap((end) => end.corners);
  // The middle of all of it: shoulders on the skew start one arris before another.
  const x = corners.reduce((sum, p) => sum + dot(sub(p, rail.start), rail.along), 0) / corners.length;
  const at = (y: number, z: number): Vec3 =>
    along(along(along(rail.start, rail.along, x), rail.outward, y), rail.upward, z);
  const middle = [shape.outside(x), shape.inside(x)].flatMap((y) => [
    at(y, shape.top(x)),
    at(y, shape.bottom(x)),
  ]);
  return [
    ...corners.map((corner) => ({ tag: "shoulder", at: corner })),
    ...(rail.strips ?? []).flatMap((strip) =>
      ([0, 1] as const).flatMap((which) =>
        stripCorners(rail, strip, which).map((point) => ({ tag: "strip", at: point })),
      ),
    ),
    ...middle.map((point) => ({ tag: "middle", at: point })),
  ];
}

function frameOf(part: Post | Rail): Cast["frame"] {
  if (part.is !== "post") return [cross(part.upward, part.outward), part.outward, part.upward];
  const longest = part.pieces.reduce((best, piece) =>
    piece.to - piece.from > best.to - best.from ? piece : best,
  );
  const front: Vec3 = longest.faces?.front.normal ?? [0, -1, 0];
  const [a, b] = rolled(front, longest.direction);
  return [longest.direction, a, b];
}

/** `seat-side` for its left and right, `ladder` for all of a row; its own name for a part alone. */
function commonName(names: readonly string[]): string {
  const [first = "", ...rest] = names;
  if (rest.length === 0) return first;
  const pieces = first.split(".");
  while (pieces.length > 1 && !rest.every((name) => name.startsWith(`${pieces.join(".")}.`))) pieces.pop();
  return pieces.join(".");
}
