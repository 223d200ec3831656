/**
 * The wood that rebates and grooves leave of a rail.
 */
import type { Chair, Joint, Rail } from "../chair/chair.ts";
import { shapeOf } from "../chair/rails/rail-outline.ts";
import type { RailCut } from "../chair/rails/rest-wood.ts";
import { dot, sub } from "../geometry/vec.ts";

type Span = readonly [number, number];

/** What a cut leaves of the rail's thickness, or of its width where that is less by its share; mm, the least along it. */
export interface LeftOf {
  which: "thickness" | "width";
  left: number;
  whole: number;
}

/** Where along a rail its wood is looked at: shares of its length. */
const PLACES = [0, 0.25, 0.5, 0.75, 1];

/** What is left behind a cut across the way that it goes in; of a rebate in both, the thinner by its share. */
export function leftBehind(rail: Rail, cut: RailCut): LeftOf {
  const shape = shapeOf(rail);
  const { value } = cut.design;
  const opposite = (rail.cuts ?? []).filter((other) => other !== cut && isOpposite(cut, other));
  const found = PLACES.flatMap((share): LeftOf[] => {
    const x = share * rail.length;
    const own = cut.section(x);
    const [thick, wide] = [
      [shape.inside(x), shape.outside(x)] as const,
      [shape.bottom(x), shape.top(x)] as const,
    ];
    const across = (whole: Span, of: (each: RailCut) => Span) =>
      [cut, ...opposite.filter((other) => meet(other.section(x), own, value))].reduce(
        (left, each) => left - within(of(each), whole),
        whole[1] - whole[0],
      );
    const inThickness = value.is === "rebate" || value.face === "inside" || value.face === "outside";
    const ofThickness: LeftOf = {
      which: "thickness",
      left: across(thick, (each) => each.section(x).out),
      whole: thick[1] - thick[0],
    };
    const ofWidth: LeftOf = {
      which: "width",
      left: across(wide, (each) => each.section(x).up),
      whole: wide[1] - wide[0],
    };
    if (value.is === "rebate") return [ofThickness, ofWidth];
    // A groove in an edge leaves its two cheeks and what is under it.
    return inThickness ? [ofThickness] : [ofThickness, ofWidth];
  });
  return found.reduce((worst, each) => (each.left / each.whole < worst.left / worst.whole ? each : worst));
}

const isOpposite = (a: RailCut, b: RailCut): boolean => a.design.value.face !== b.design.value.face;

/** Whether two cuts from opposite sides lie at one height, so that both take from the same wood. */
function meet(
  a: ReturnType<RailCut["section"]>,
  b: ReturnType<RailCut["section"]>,
  value: RailCut["design"]["value"],
) {
  const [one, other] =
    value.is === "rebate" || value.face === "inside" || value.face === "outside"
      ? [a.up, b.up]
      : [a.out, b.out];
  return Math.min(one[1], other[1]) > Math.max(one[0], other[0]);
}

const within = ([a, b]: Span, [low, high]: Span): number => Math.max(0, Math.min(b, high) - Math.max(a, low));

/** The mortises in a rail that a cut comes near: how much wood is between them, mm; less than nothing where it cuts into one. */
export function mortisesNear(chair: Chair, rail: Rail, cut: RailCut): { joint: Joint; wall: number }[] {
  return [...chair.joints.values()].flatMap((joint) => {
    const into = joint.entered.name === rail.name && joint.kind !== "halving";
    const own = joint.part === rail.name && joint.kind !== "halving";
    const solids = [
      ...(into ? [...joint.tenon, ...(joint.haunch ? [joint.haunch] : [])] : []),
      ...(own ? joint.socket : []),
    ];
    if (solids.length === 0) return [];
    const points = solids.flatMap((solid) => solid.points.map((p) => sub(p, rail.start)));
    const span = (way: Rail["along"]): Span => {
      const values = points.map((p) => dot(p, way));
      return [Math.min(...values), Math.max(...values)];
    };
    const run = span(rail.along);
    const [from, to] = cut.reach ?? [0, rail.length];
    if (run[1] < from || run[0] > to) return [];
    const { out, up } = cut.section((Math.max(run[0], 0) + Math.min(run[1], rail.length)) / 2);
    const apart = [gap(out, span(rail.outward)), gap(up, span(rail.upward))];
    const wall = apart.every((each) => each < 0)
      ? Math.max(...apart)
      : Math.hypot(...apart.map((each) => Math.max(0, each)));
    return [{ joint, wall }];
  });
}

/** How far two stretches lie apart; less than nothing where they overlap. */
const gap = (a: Span, b: Span): number => Math.max(a[0] - b[1], b[0] - a[1]);
