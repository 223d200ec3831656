/**
 * Sections through the whole chair: upright along the middle line, and level through the rails that the seat stands on.
 */
import type { Chair } from "../../chair/chair.ts";
import { prism } from "../../geometry/convex.ts";
import { compose, inverse, movePlane, movePoint } from "../../geometry/motion.ts";
import type { Plane, Vec3 } from "../../geometry/solid.ts";
import { add, negate, scale } from "../../geometry/vec.ts";
import { partPieces } from "../../solids/part-pieces.ts";
import { outlinesOf } from "../areas.ts";
import { hiderOf } from "../hider.ts";
import { ringIn } from "../joint-section.ts";
import { type Item, line, type Point } from "../markout/page.ts";
import type { Sight } from "../sight.ts";
import { sights } from "../sight.ts";

/** The outlines in which a plane cuts the parts, as seen, right and up, mm. */
export interface CutThrough {
  part: string;
  outlines: Point[][];
}

/** Along the middle line, as the side is seen. */
export const middleCut = (chair: Chair): CutThrough[] =>
  cutsOf(chair, { normal: [1, 0, 0], offset: 0.01 }, sights.side);

/** Level, so high over the floor, as the plan is seen. */
export const levelCut = (chair: Chair, height: number): CutThrough[] =>
  cutsOf(chair, { normal: [0, 0, 1], offset: height }, sights.plan);

/**
 * The height in the middle of what all the rails have in common that the seat stands on, squared ones; undefined where there is none, as in a
 * frame of turned rails that pass over each other.
 */
export function seatRailsHeight(chair: Chair): number | undefined {
  const names = (chair.seat?.design.on ?? []).map(({ value }) => value.name);
  const rails = [...chair.rails.values()].filter(({ id }) => names.includes(id.stem));
  if (rails.length === 0 || rails.some(({ round }) => round)) return undefined;
  const reach = rails.map((rail) => {
    const ends = [rail.start, rail.end];
    const height = (p: Vec3) => movePoint(chair.stance, p)[2];
    const foot = (p: Vec3) => height(add(p, scale(rail.upward, -rail.wide)));
    return [Math.max(...ends.map(foot)), Math.min(...ends.map(height))] as const;
  });
  const [low, high] = [Math.max(...reach.map(([foot]) => foot)), Math.min(...reach.map(([, top]) => top))];
  return low < high ? (low + high) / 2 : undefined;
}

/** Thickness given to what is cut, so that it can be looked at, mm. */
const THIN = 1;

function cutsOf(chair: Chair, plane: Plane, sight: Sight): CutThrough[] {
  const back = inverse(chair.stance);
  const drawn = movePlane(back, plane);
  const into = compose({ rotation: [sight.right, sight.up, sight.towards], shift: [0, 0, 0] }, chair.stance);
  const off: Vec3 = scale(negate(drawn.normal), THIN);
  return [...chair.members.values()].flatMap((member): CutThrough[] => {
    const hiders = partPieces(chair, member).flatMap((solid) => {
      const ring = ringIn(solid, drawn);
      const slab =
        ring &&
        prism(
          ring,
          ring.map((p) => add(p, off)),
        );
      return (slab && hiderOf(slab, into)) ?? [];
    });
    return hiders.length ? [{ part: member.name, outlines: outlinesOf(hiders) }] : [];
  });
}

/** Between two lines of hatching, mm on paper. */
const HATCH = 1.8;

/** Outlines of a section hatched (ISO 128-3); `other` hatches the other way, for what lies beside. */
export function hatched(ring: readonly Point[], other: boolean): Item[] {
  const sign = other ? -1 : 1;
  // Across and along the hatching's lines.
  const turned = ring.map(([x, y]): Point => [(x + sign * y) * Math.SQRT1_2, (y - sign * x) * Math.SQRT1_2]);
  const from = Math.ceil(Math.min(...turned.map(([u]) => u)) / HATCH);
  const to = Math.floor(Math.max(...turned.map(([u]) => u)) / HATCH);
  const items: Item[] = [line([...ring], "none", { closed: true, fill: 1 })];
  for (let k = from; k <= to; k++) {
    const u = k * HATCH;
    const crossings = turned
      .flatMap((p, n) => {
        const q = turned[(n + 1) % turned.length]!;
        return p[0] <= u === q[0] <= u ? [] : [p[1] + ((q[1] - p[1]) * (u - p[0])) / (q[0] - p[0])];
      })
      .sort((a, b) => a - b);
    const back = (v: number): Point => [(u - sign * v) * Math.SQRT1_2, (v + sign * u) * Math.SQRT1_2];
    for (let n = 0; n + 1 < crossings.length; n += 2)
      items.push(line([back(crossings[n]!), back(crossings[n + 1]!)], "fine"));
  }
  return [...items, line([...ring], "outline", { closed: true })];
}
