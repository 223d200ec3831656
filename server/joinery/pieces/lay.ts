import { height, lineMeets, planeAt } from "../../geometry/plane.ts";
import type { Plane, Vec3 } from "../../geometry/solid.ts";
import { angleBetween, dot } from "../../geometry/vec.ts";
import type { LaidFace, Mark, Panel, Spot } from "./piece.ts";
import { middleOf, type SquaredStick, type Stretch, sideIn } from "./squared.ts";
import { layStrip, place } from "./strip.ts";

/** Points nearer than this to a plane lie in it, mm. */
const ON = 1e-4;
/** Stretches that turn or thin by less than this go on as one, radians. */
const TURN = 1e-6;
/** Long lines that stray from straight and parallel by less than this want no template, mm. */
const STRAIGHT = 0.3;

/** One face of a stick laid flat, its stretch `main` level and `datum` at the beginning of the page. */
export interface LaidStick {
  faces: LaidFace[];
  /** The panel of each face's stretch: index into its `panels`. */
  panelOf: (face: number, stretch: number) => number;
}

/** All four faces laid open, with their outlines. `datum` is a point of the line that distances run from, in the stretch `main`. */
export function layFaces(stick: SquaredStick, main: number, datum: Vec3): LaidStick {
  const index: Map<number, number>[] = [];
  const faces = ([0, 1, 2, 3] as const).map((face): LaidFace => {
    const sides = stick.stretches
      .map((stretch, k) => ({ k, stretch, ring: sideIn(stretch.solid, stretch.planes[face]) }))
      .filter((each): each is Side => each.ring !== undefined);
    const panels = panelsOf(sides, face, main, datum);
    index.push(new Map(sides.map(({ k }, panel) => [k, panel])));
    const marks = sides.flatMap((_, panel) => outlineOf(face, sides, panel, panels[panel]!));
    const rings = sides.map(({ ring }, panel) => ring.map((p) => place(panels[panel]!, p)));
    const laid: LaidFace = { name: stick.names[face], panels, rings, marks };
    const shaped = shapeOf(panels, marks);
    if (shaped) laid.shaped = shaped;
    if (face === stick.side) laid.gauge = "face side";
    if (face === stick.edge) laid.gauge = "face edge";
    return laid;
  });
  return { faces, panelOf: (face, stretch) => index[face]!.get(stretch) ?? 0 };
}

interface Side {
  k: number;
  stretch: Stretch;
  ring: Vec3[];
}

function panelsOf(sides: readonly Side[], face: number, main: number, datum: Vec3): Panel[] {
  if (sides.length === 0) return [];
  const level = Math.max(
    0,
    sides.findIndex(({ k }) => k === main),
  );
  const stretches = sides.map(({ stretch, ring }, at) => ({
    plane: stretch.planes[face as 0],
    direction: stretch.direction,
    origin: middleOf(ring),
    ...(at + 1 < sides.length ? { hinge: farEdge(ring, stretch.direction) } : {}),
  }));
  const panels = layStrip(stretches, level, [0, 0]);
  const laidLevel = panels[level]!;
  const square = planeAt(datum, sides[level]!.stretch.direction);
  const [x] = place(laidLevel, lineMeets(square, laidLevel.origin, laidLevel.along) ?? datum);
  return panels.map((panel) => ({ ...panel, at: [panel.at[0] - x, panel.at[1]] as Spot }));
}

/** The edge of a ring that lies farthest along a direction. */
function farEdge(ring: readonly Vec3[], direction: Vec3): readonly [Vec3, Vec3] {
  let best: readonly [Vec3, Vec3] = [ring[0]!, ring[1]!];
  let most = Number.NEGATIVE_INFINITY;
  for (const [k, a] of ring.entries()) {
    const b = ring[(k + 1) % ring.length]!;
    const reach = dot(a, direction) + dot(b, direction);
    if (reach > most) {
      most = reach;
      best = [a, b];
    }
  }
  return best;
}

function outlineOf(face: number, sides: readonly Side[], at: number, panel: Panel): Mark[] {
  const { ring, stretch } = sides[at]!;
  const before = sides[at - 1];
  const after = sides[at + 1];
  const beside = [stretch.planes[((face + 1) % 4) as 0], stretch.planes[((face + 3) % 4) as 0]];
  const marks: Mark[] = [];
  for (const [k, a] of ring.entries()) {
    const b = ring[(k + 1) % ring.length]!;
    const spots = [place(panel, a), place(panel, b)];
    const mark = (is: Mark["is"]) => marks.push({ is, spots, panels: [at, at] });
    if (beside.some((plane) => within(plane, a) && within(plane, b))) mark("arris");
    else if (after && touches(after.ring, a, b)) {
      const is = seam(stretch, after.stretch, face);
      if (is) mark(is);
    } else if (!(before && touches(before.ring, a, b))) mark("end");
  }
  return marks;
}

const within = (plane: Plane, p: Vec3): boolean => Math.abs(height(plane, p)) < ON;

const touches = (ring: readonly Vec3[], a: Vec3, b: Vec3): boolean =>
  [a, b].every((p) => ring.some((q) => Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]) < 1e-2));

/** What the line between two stretches is to a maker: nothing within a curve. */
function seam(a: Stretch, b: Stretch, face: number): "knee" | "taper" | undefined {
  if (a.curved && b.curved) return undefined;
  if (a.curved !== b.curved || angleBetween(a.direction, b.direction) > TURN) return "knee";
  const turns = [0, 1, 2, 3].some(
    (k) => angleBetween(a.planes[k as 0].normal, b.planes[k as 0].normal) > TURN && (k - face) % 2 !== 0,
  );
  return turns ? "taper" : undefined;
}

/** Whether the long lines of a face are straight and parallel to each other. */
function shapeOf(panels: readonly Panel[], marks: readonly Mark[]): LaidFace["shaped"] {
  const heights: [number[], number[]] = [[], []];
  const slopes = new Set<number>();
  for (const { is, spots, panels: on } of marks) {
    if (is !== "arris") continue;
    const [a, b] = spots as [Spot, Spot];
    const upper = (a[1] + b[1]) / 2 > panels[on![0]!]!.at[1];
    heights[upper ? 1 : 0].push(a[1], b[1]);
    slopes.add(Math.round((1e3 * (b[1] - a[1])) / (b[0] - a[0])));
  }
  const strays = heights.some((ys) => Math.max(...ys) - Math.min(...ys) > STRAIGHT);
  if (!strays) return undefined;
  return slopes.size > 4 ? "curved" : "tapered";
}
