import { sentence } from "../../../grammar/sentences/sentence.ts";
import type { PostDesign, PostStation } from "../../design/design.ts";
import { partName } from "../../design/identity.ts";
import { loft } from "../../geometry/body.ts";
import { height, levelAt, planeAt } from "../../geometry/plane.ts";
import type { Body, Plane, Vec3 } from "../../geometry/solid.ts";
import { add, along, distance, dot, sub, unit } from "../../geometry/vec.ts";
import type { FaceName, MemberFace, Post, PostPiece, Side } from "../chair.ts";
import { facetRadius, facetsOf } from "../facets.ts";
import type { Fault } from "../fault.ts";
import { type CornerLine, cutBetween } from "../joints/stuff.ts";
import { breaksAlong, type CentreLine, centreLineOf, curvedAt, pointAt } from "./centre-line.ts";
import { faceNormal, facePlane, type PostFrame, postFrame } from "./post-frame.ts";
import { runOn } from "./run-on.ts";
import { type Offsets, type SectionLine, sectionLineOf } from "./section.ts";

/** How a post's ends are cut when it is not from the level floor up to its own level top. */
export interface PostEnds {
  /** The plane its foot is cut to, looking up; the centre line starts there. */
  foot?: Plane;
  /** The plane its top is cut to, looking up; the centre line ends there. */
  top?: Plane;
  /** Plumb height of the top as drawn, when a rail over it decides. */
  topHeight?: number;
  /** Plumb height of the foot as drawn, for a post that stands on a rail. */
  footHeight?: number;
  /** Where its foot is, when the rail it stands on says so, or its top in a seat; as `place` in the text. */
  place?: { station?: PostStation; out: number; back: number };
  /** How it leans, when its way in a seat says so and not its own splay and rake. */
  lean?: { splay: number; rake: number };
}

/** Stations of turned work where it turns by less than this are drawn as one fair outline, radians. */
const FAIR = (12 * Math.PI) / 180;
/** Stations nearer than this are one, mm. */
const SAME = 1e-6;

/**
 * A post in space: its pieces from the foot up, with their faces and solids, and its body.
 * Undefined when the text leaves out its place, its section, or a height that nothing else gives.
 */
export function buildPost(
  design: PostDesign,
  side: Side,
  ends: PostEnds = {},
  faults: Fault[] = [],
): Post | undefined {
  const topHeight = ends.topHeight ?? design.height?.value;
  if (topHeight === undefined) return undefined;
  const footHeight = ends.footHeight ?? 0;
  const heights = { foot: footHeight, top: topHeight };
  const sign = side === "right" ? -1 : 1;
  const line = centreLineOf(placedBy(design, ends), sign, heights);
  const section = sectionLineOf(design, heights);
  if (!line || !section) return undefined;
  const id = { stem: design.name, side };
  const name = partName(id);
  const trouble = troubleOf(line, section, heights);
  if (trouble) {
    faults.push({ is: "not-buildable", part: name, at: design.at, message: trouble });
    return undefined;
  }

  const footPlane = ends.foot ?? levelAt(footHeight);
  const stations = stationsOf(line, section, heights);
  const turn = sign * (design.turn?.value ?? 0);
  const facets = section.round ? facetsOf(Math.max(...stations.map((z) => section.at(z).front))) : 4;
  const spans = stations
    .slice(1)
    .map((to, k) => spanOf(line, section, { from: stations[k]!, to }, turn, facets));
  // A floor that rises over a whole piece takes that piece away.
  while (spans.length > 1 && height(footPlane, spans[0]!.end) <= SAME) spans.shift();
  const top = spans[spans.length - 1];
  if (!top) return undefined;
  const topPlane =
    ends.top ?? (design.topSquare?.value ? planeAt(top.end, top.frame.direction) : levelAt(topHeight));
  const { pieces, rings } = piecesOf(spans, footPlane, topPlane);
  if (pieces.length === 0) return undefined;

  const foot = pieces[0]!.start;
  const topEnd = pieces[pieces.length - 1]!.end;
  return {
    is: "post",
    id,
    name,
    side,
    design,
    ...(design.timber && { timber: design.timber.value }),
    pieces,
    footHeight,
    topHeight,
    foot,
    top: topEnd,
    length: pieces.reduce((sum, piece) => sum + distance(piece.start, piece.end), 0),
    body: bodyOfPost(pieces, rings, section.round),
    centreLine: [foot, ...pieces.map(({ end }) => end)],
    grain: unit(sub(topEnd, foot)),
    faces: facesOf(pieces[Math.floor(pieces.length / 2)]!, side),
  };
}

/** Each span cut where it meets the next, the lowest and highest to the planes of foot and top, with the rings it is cut in. */
function piecesOf(
  spans: readonly Span[],
  footPlane: Plane,
  topPlane: Plane,
): { pieces: PostPiece[]; rings: [Vec3[], Vec3[]][] } {
  const pieces: PostPiece[] = [];
  const rings: [Vec3[], Vec3[]][] = [];
  /** The section in which the piece before ends, which the next begins with. */
  let joined: Vec3[] | undefined;
  for (const [k, span] of spans.entries()) {
    const before = spans[k - 1];
    const after = spans[k + 1];
    const low = before ? halving(span.start, before.frame.direction, span.frame.direction) : footPlane;
    const high = after ? halving(span.end, span.frame.direction, after.frame.direction) : topPlane;
    const corners = joined ? runOn(span.corners, joined) : span.corners;
    const cut = cutBetween(corners, low, high, joined);
    if (!cut) continue;
    joined = cut.whole ? cut.end : undefined;
    rings.push([cut.start, cut.end]);
    const start = before ? span.start : meetLine(footPlane, span);
    const end = after ? span.end : meetLine(topPlane, { ...span, start });
    pieces.push({
      from: start[2],
      to: end[2],
      start,
      end,
      direction: span.frame.direction,
      curved: span.curved,
      solid: cut.solid,
      ...(span.faces && { faces: span.faces }),
      ...(span.radii && { radii: span.radii }),
    });
  }
  return { pieces, rings };
}

/** Which way a post's faces look: its outside is away from the middle of the chair. */
function facesOf({ faces }: PostPiece, side: Side): MemberFace[] {
  if (!faces) return [];
  const [outside, inside] = side === "right" ? [faces.right, faces.left] : [faces.left, faces.right];
  return [
    { name: "front", plane: faces.front },
    { name: "back", plane: faces.back },
    { name: "inside", plane: inside },
    { name: "outside", plane: outside },
  ];
}

/** Leans beyond this are not a post's, radians. */
const STEEPEST = (80 * Math.PI) / 180;

/** Why there can be no such post, in the maker's words. */
function troubleOf(
  line: CentreLine,
  section: SectionLine,
  ends: { foot: number; top: number },
): string | undefined {
  if (!(ends.top > ends.foot + SAME)) return sentence("fault.post-upside");
  const stretches = [...line.side.stretches, ...line.front.stretches];
  if (!stretches.every((stretch) => Math.abs(stretch.slope) <= Math.tan(STEEPEST))) {
    return sentence("fault.post-leans");
  }
  for (const z of [ends.foot, ...section.breaks, ends.top]) {
    const { front, back, inside, outside } = section.at(z);
    if (!(front + back > SAME && inside + outside > SAME)) return sentence("fault.no-section");
  }
  return undefined;
}

function placedBy(design: PostDesign, { place, lean }: PostEnds): PostDesign {
  if (design.place || !place) return design;
  const at = (design.standsOn ?? design.intoSeat)?.at ?? design.at;
  const placed: PostDesign = { ...design, place: { value: { station: "foot", ...place }, at } };
  if (!lean) return placed;
  return { ...placed, splay: { value: lean.splay, at }, rake: { value: lean.rake, at } };
}

interface Span {
  start: Vec3;
  end: Vec3;
  frame: PostFrame;
  curved: boolean;
  corners: CornerLine[];
  faces?: Record<FaceName, Plane>;
  radii?: [number, number];
}

/** Where a curve's facet would be shorter than this the two are one: cuts so near each other would cross inside the wood, mm. */
const SHORTEST_FACET = 0.5;

function stationsOf(line: CentreLine, section: SectionLine, ends: { foot: number; top: number }): number[] {
  const within = (z: number) => z > ends.foot + SAME && z < ends.top - SAME;
  const firm = [ends.foot, ...section.breaks.filter(within), ends.top];
  const clear = (z: number) =>
    firm.every((other) => Math.abs(other - z) > (curvedBeside(line, z) ? SHORTEST_FACET : SAME));
  const bends = breaksAlong(line).filter((z) => within(z) && clear(z));
  return [...firm, ...bends].sort((a, b) => a - b).filter((z, k, all) => k === 0 || z - all[k - 1]! > SAME);
}

/** Whether a bend lies inside a fair curve or at its end. */
const curvedBeside = (line: CentreLine, z: number): boolean =>
  curvedAt(line, z - SAME) || curvedAt(line, z + SAME);

function spanOf(
  line: CentreLine,
  section: SectionLine,
  { from, to }: { from: number; to: number },
  turn: number,
  facets: number,
): Span {
  const start = pointAt(line, from);
  const end = pointAt(line, to);
  const frame = postFrame(unit(sub(end, start)), turn);
  const curved = curvedAt(line, (from + to) / 2);
  const before = section.at(from);
  const after = section.at(to);
  if (section.round) {
    const radii: [number, number] = [before.front, after.front];
    return { start, end, frame, curved, corners: roundCorners(frame, start, end, radii, facets), radii };
  }
  const a = byFace(before, line.sign);
  const b = byFace(after, line.sign);
  const length = distance(start, end);
  const plane = (face: FaceName) =>
    facePlane(faceNormal(frame, face), frame, start, length, { start: a[face], end: b[face] });
  return {
    start,
    end,
    frame,
    curved,
    corners: squareCorners(frame, start, end, a, b),
    faces: { front: plane("front"), back: plane("back"), left: plane("left"), right: plane("right") },
  };
}

function byFace(offsets: Offsets, sign: 1 | -1): Record<FaceName, number> {
  const [left, right] = sign > 0 ? [offsets.outside, offsets.inside] : [offsets.inside, offsets.outside];
  return { front: offsets.front, back: offsets.back, left, right };
}

/** Front left, back left, back right, front right: anticlockwise from above. */
function squareCorners(
  frame: PostFrame,
  start: Vec3,
  end: Vec3,
  a: Record<FaceName, number>,
  b: Record<FaceName, number>,
): CornerLine[] {
  const corner = (at: Vec3, side: number, fore: number) =>
    along(along(at, frame.left, side), frame.back, fore);
  return [
    [corner(start, a.left, -a.front), corner(end, b.left, -b.front)],
    [corner(start, a.left, a.back), corner(end, b.left, b.back)],
    [corner(start, -a.right, a.back), corner(end, -b.right, b.back)],
    [corner(start, -a.right, -a.front), corner(end, -b.right, -b.front)],
  ];
}

function roundCorners(
  frame: PostFrame,
  start: Vec3,
  end: Vec3,
  radii: [number, number],
  facets: number,
): CornerLine[] {
  return Array.from({ length: facets }, (_, k): CornerLine => {
    const angle = (2 * Math.PI * k) / facets;
    const at = (p: Vec3, radius: number) => {
      const r = facetRadius(radius, facets);
      return along(along(p, frame.left, r * Math.cos(angle)), frame.back, r * Math.sin(angle));
    };
    return [at(start, radii[0]), at(end, radii[1])];
  });
}

/** The plane that halves a knee, looking up. */
const halving = (at: Vec3, below: Vec3, above: Vec3): Plane => planeAt(at, add(below, above));

function meetLine(plane: Plane, span: Span): Vec3 {
  const d = span.frame.direction;
  return along(span.start, d, -height(plane, span.start) / dot(plane.normal, d));
}

function bodyOfPost(pieces: PostPiece[], rings: [Vec3[], Vec3[]][], round: boolean): Body {
  return loft(
    pieces.map((piece) => piece.solid),
    rings,
    // Turned work is faired where its stations meet at a slight angle.
    round
      ? { round, smoothBelow: FAIR }
      : { ring: (k) => (pieces[k]!.curved || pieces[k - 1]!.curved ? "smooth" : "arris") },
  );
}
