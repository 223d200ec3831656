import { sentence } from "../../../../grammar/sentences/sentence.ts";
import type { Design, SeatDesign } from "../../../design/design.ts";
import { partName, SEAT } from "../../../design/identity.ts";
import type { SolidSeatDesign } from "../../../design/solid-seat-design.ts";
import { flipped, offsetBy, planeAt } from "../../../geometry/plane.ts";
import type { Vec3 } from "../../../geometry/solid.ts";
import { along, cross } from "../../../geometry/vec.ts";
import type { SeatSurface } from "../../chair.ts";
import type { Fault } from "../../fault.ts";
import type { SeatLayer, SeatOutline } from "../seat-layer.ts";
import { seatBody } from "../seat-solid.ts";
import type { Spot } from "./edge.ts";
import { type PlanTrouble, planOf, type SeatPlan } from "./plan.ts";
import { shapedBody } from "./relief.ts";

/** Steepest slope of a seat, as a sine. */
const STEEPEST = 0.5;

/**
 * A solid seat as drawn: a slab between two planes `thick` apart, its edge square to them. Its top is level across the chair and falls to
 * the back; `up` and `back` are of the middle of its front edge. Undefined where the text gives no whole outline, place or thickness; what
 * cannot be is among the faults.
 */
export function buildSolidSeat(design: Design, seat: SeatDesign, faults: Fault[]): SeatSurface | undefined {
  const { solid } = seat;
  const [up, thick] = [solid?.up?.value, seat.thick?.value];
  if (!solid || up === undefined || thick === undefined) return undefined;
  const troubles: PlanTrouble[] = [];
  const plan = planOf(solid, seat.at, design.units, troubles);
  for (const { at, message } of troubles) faults.push({ is: "no-room", part: "seat", at, message });
  if (!plan) return undefined;
  const sine = slopeSine(solid, plan.deep);
  if (Math.abs(sine) > STEEPEST) {
    const at = (solid.fall ?? solid.slope)?.at ?? seat.at;
    faults.push({
      is: "no-room",
      part: "seat",
      at,
      message: sentence("fault.seat-steep"),
    });
    return undefined;
  }
  const backward: Vec3 = [0, Math.sqrt(1 - sine * sine), -sine];
  const plane = planeAt([0, solid.back?.value ?? 0, up], cross([1, 0, 0], backward));
  const origin: Vec3 = [0, solid.back?.value ?? 0, up];
  const spot = ([x, s]: Spot): Vec3 => along(along(origin, [1, 0, 0], x), backward, s);
  const outline = outlineOf(plan, spot);
  const layer: SeatLayer = { outline, from: 0, to: thick };
  const end = (s: number, width: number) => ({ left: spot([width / 2, s]), right: spot([-width / 2, s]) });
  const { first, last } = plan.stations ?? { first: plan.deep / 2, last: plan.deep / 2 };
  const middleOf = (p: Vec3) => along(p, plane.normal, -thick / 2);
  const [front, back] = [spot([0, 0]), spot([0, plan.deep])];
  return {
    is: "seat",
    id: SEAT,
    name: partName(SEAT),
    side: SEAT.side,
    design: seat,
    ...(seat.timber && { timber: seat.timber.value }),
    plane,
    outline: outline.ring,
    front: { ...end(first, plan.widthAt(first)), middle: front },
    back: { ...end(last, plan.widthAt(last)), middle: back },
    layers: [layer],
    clearance: 0,
    plan,
    body:
      solid.hollow || solid.bevels.length > 0
        ? shapedBody(solid, plan, cellsOf(plan.half), thick, (at, below) =>
            along(spot(at), plane.normal, -below),
          )
        : seatBody([layer], plane, [], 0),
    centreLine:
      solid.grain.value === "across" ? acrossThe(plan, spot).map(middleOf) : [front, back].map(middleOf),
    grain: solid.grain.value === "across" ? [1, 0, 0] : backward,
    faces: [
      { name: "top", plane },
      { name: "bottom", plane: flipped(offsetBy(plane, -thick)) },
    ],
  };
}

/** How steeply the top falls to the back: the drop over its depth, or as its angle says. */
function slopeSine({ fall, slope }: SolidSeatDesign, deep: number): number {
  if (slope) return Math.sin(slope.value);
  return (fall?.value ?? 0) / deep;
}

const acrossThe = ({ deep, widest }: SeatPlan, spot: (at: Spot) => Vec3): Vec3[] => [
  spot([-widest / 2, deep / 2]),
  spot([widest / 2, deep / 2]),
];

function outlineOf(plan: SeatPlan, spot: (at: Spot) => Vec3): SeatOutline {
  const { half } = plan;
  const mirrored = half.map(([x, s]): Spot => [-x, s]).reverse();
  const ring = [...half.slice(1), ...mirrored.slice(1)];
  const { first, last } = plan.stations ?? { first: 0, last: plan.deep };
  const span = (s: number): Vec3[] => [spot([plan.widthAt(s) / 2, s]), spot([-plan.widthAt(s) / 2, s])];
  return {
    ring: cornersOf(ring).map(spot),
    front: span(first),
    back: span(last),
    cells: cellsOf(half).map((cell) => cell.map(spot)),
  };
}

/** A ring without points that fall together or lie on the straight between their neighbours. */
function cornersOf(ring: readonly Spot[]): Spot[] {
  const single = ring.filter(([x, s], k) => {
    const [u, v] = ring[(k + 1) % ring.length]!;
    return Math.hypot(x - u, s - v) > 1e-6;
  });
  return single.filter(([x, s], k) => {
    const before = single[(k + single.length - 1) % single.length]!;
    const after = single[(k + 1) % single.length]!;
    return Math.abs((x - before[0]) * (after[1] - s) - (s - before[1]) * (after[0] - x)) > 1e-6;
  });
}

/** The outline in convex pieces: cut right across wherever it turns inward. */
function cellsOf(half: readonly Spot[]): Spot[][] {
  const cells: Spot[][] = [];
  let from = 0;
  for (let k = 1; k < half.length; k++) {
    const [a, b, c] = [half[k - 1]!, half[k]!, half[k + 1]];
    const turn = c ? (b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0]) : -1;
    if (turn > -1e-9) continue;
    const run = half.slice(from, k + 1);
    const ring = [...run, ...run.map(([x, s]): Spot => [-x, s]).reverse()];
    if (run[run.length - 1]![1] - run[0]![1] > 1e-6) cells.push(cornersOf(ring));
    from = k;
  }
  return cells;
}
