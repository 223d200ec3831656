/**
 * Load cases that the file gives itself.
 */
import type { Chair } from "../chair/chair.ts";
import type { LoadDesign, PushDesign, PushTarget } from "../design/design.ts";
import { covers, partId } from "../design/identity.ts";
import { inverse, movePoint } from "../geometry/motion.ts";
import type { Vec3 } from "../geometry/solid.ts";
import { between } from "../geometry/vec.ts";
import { atStation, seatShares } from "./acting.ts";
import { type Stops, supportsOf } from "./feet.ts";
import type { NodeLoad } from "./frame/frame.ts";
import type { LoadCase } from "./load-case.ts";
import type { ChairFrame } from "./model.ts";

/** The cases of the file's `load` blocks, in the order of the text; those that push nothing that is built are left out. */
export function ownCases(chair: Chair, frame: ChairFrame): LoadCase[] {
  return [...chair.design.loads.values()].flatMap((load) => {
    const acting = load.pushes.map((push) => actingOf(chair, frame, push));
    const loads = acting.flatMap(({ loads: each }) => each);
    if (loads.length === 0) return [];
    const stops = load.stops?.value ?? [...new Set(acting.flatMap(({ towards }) => towards))];
    return [
      {
        name: load.name,
        title: titleOf(load),
        times: load.times?.value ?? 1,
        loads,
        supports: supportsOf(frame, stops),
        fromMemory: false,
        own: true as const,
      },
    ];
  });
}

/** Its comment's first line, else its name. */
/** It stands within sentences, so it has no stop of its own. */
const titleOf = ({ name, description }: LoadDesign): string =>
  description?.split("\n")[0]?.trim().replace(/\.$/, "") || name;

interface Acting {
  loads: NodeLoad[];
  /** The sides that it pushes the feet towards. */
  towards: Stops[];
}

function actingOf(chair: Chair, frame: ChairFrame, { force, way, target }: PushDesign): Acting {
  if (target.value.is === "seat") {
    const pushed = directions[way.value as keyof typeof directions];
    if (!pushed) return { loads: [], towards: [] };
    const places = seatPlaces(chair, target.value, way.value === "down");
    const loads = places.flatMap((place) =>
      seatShares(chair, frame, place).map(({ node, share }) => ({
        node,
        v: [...pushed.map((part) => (part * force.value * share) / places.length), 0, 0, 0],
      })),
    );
    return { loads, towards: towardsOf(pushed) };
  }
  const { part } = target.value;
  const wanted = part.side ? `${part.name}.${part.side}` : part.name;
  const names = [...frame.along.keys()].filter((name) => covers(wanted, name));
  const each = names.map((name): Acting => {
    const { side } = partId(name);
    const outward = side === "right" ? -1 : 1;
    const pushed: Vec3 =
      way.value === "out" ? [outward, 0, 0] : way.value === "in" ? [-outward, 0, 0] : directions[way.value];
    const v: Vec3 = [pushed[0] * force.value, pushed[1] * force.value, pushed[2] * force.value];
    return {
      loads: atStation(frame, name, stationOf(chair, frame, name, target.value), v),
      towards: towardsOf(pushed),
    };
  });
  return { loads: each.flatMap(({ loads }) => loads), towards: each.flatMap(({ towards }) => towards) };
}

/** x to the sitter's left, y back, z up. */
const directions: Record<Exclude<PushDesign["way"]["value"], "out" | "in">, Vec3> = {
  down: [0, 0, -1],
  up: [0, 0, 1],
  forward: [0, -1, 0],
  back: [0, 1, 0],
  left: [1, 0, 0],
  right: [-1, 0, 0],
};

function towardsOf([x, y]: Vec3): Stops[] {
  if (x !== 0) return [x > 0 ? "left" : "right"];
  if (y !== 0) return [y > 0 ? "back" : "front"];
  return [];
}

/** Radius of the disc over which a push down on the seat spreads, mm. */
const DISC = 100;
/** Rings of the disc with equal areas, each at the radius that halves its own. */
const RINGS = [0.5, Math.sqrt(0.75)];
const ROUND = 8;

/** Places on the seat that share a push evenly, as the chair stands: one, or those of a disc. */
function seatPlaces(
  { seat, stance }: Chair,
  { out, back }: Extract<PushTarget, { is: "seat" }>,
  spread: boolean,
): [number, number][] {
  if (!seat) return [];
  const middle = between(seat.front.middle, seat.back.middle, 0.5);
  const [x, y] = movePoint(stance, [out ?? middle[0], back ?? middle[1], middle[2]]);
  if (!spread) return [[x, y]];
  return RINGS.flatMap((ring) =>
    Array.from({ length: ROUND }, (_, k): [number, number] => {
      const angle = (2 * Math.PI * k) / ROUND;
      return [x + DISC * ring * Math.cos(angle), y + DISC * ring * Math.sin(angle)];
    }),
  );
}

/** Where along a member it acts. */
function stationOf(
  { stance }: Chair,
  frame: ChairFrame,
  name: string,
  target: PushTarget,
): { share: number } | { mm: number } {
  if (target.is === "seat") return { share: 0.5 };
  if (target.kind !== "post") return target.station ?? { share: 0.5 };
  if (target.height === undefined) return { share: 1 };
  // A plumb height as drawn, so the nodes are looked at as drawn.
  const drawn = inverse(stance);
  const nodes = frame.along.get(name) ?? [];
  const places = nodes.map((node) => movePoint(drawn, frame.nodes[node]?.at ?? [0, 0, 0]));
  let mm = 0;
  for (const [k, to] of places.entries()) {
    const from = places[k - 1];
    if (!from) continue;
    const step = Math.hypot(to[0] - from[0], to[1] - from[1], to[2] - from[2]);
    if (to[2] >= target.height && to[2] > from[2])
      return { mm: mm + step * Math.max(0, (target.height - from[2]) / (to[2] - from[2])) };
    mm += step;
  }
  return { share: 1 };
}
