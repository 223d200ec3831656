/**
 * The load cases of the domestic and severer standards on a chair's frame, and what beyond them a chair meets. Figures in `loads.json`.
 */
import type { Chair } from "../chair/chair.ts";
import { armsOf, gravity, loadedOf } from "../floor/loaded.ts";
import { balanceOf } from "../floor/tips.ts";
import type { Vec3 } from "../geometry/solid.ts";
import { distance } from "../geometry/vec.ts";
import type { NodeLoad, Support } from "./frame/frame.ts";
import data from "./loads.json" with { type: "json" };
import type { ChairFrame } from "./model.ts";
import { sharesOf } from "./spread.ts";

export type LevelName = keyof typeof data.levels;

/** How hard a chair is to be used, as `loads.json` has it. */
export const levelNames = Object.keys(data.levels) as LevelName[];

export interface LoadCase {
  /** `seat-and-back`, as reports and JSON name it. */
  name: string;
  title: string;
  /** How often. */
  times: number;
  loads: NodeLoad[];
  supports: Support[];
  /** Figures that were not seen in print. */
  fromMemory: boolean;
}

type Stops = "front" | "back" | "left" | "right";

/** Every case that concerns this chair; none without a seat and feet. */
export function casesOf(chair: Chair, frame: ChairFrame, level: LevelName): LoadCase[] {
  const weight = balanceOf(chair).weight;
  const loaded = loadedOf(chair, weight);
  const figures = data.levels[level];
  if (!loaded || frame.feet.size < 3) return [];
  const { seat, back } = loaded;
  const xs = seat.map(([x]) => x);
  const ys = seat.map(([, y]) => y);
  const [left, front, rear] = [Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const seatAt: [number, number] = [
    0,
    Math.max(front + 50, (back?.junction ?? rear) - data.places.seatAheadOfBack),
  ];
  const seen = (...names: string[]) => names.every((name) => (figures.seen as string[]).includes(name));
  const onSeat = (force: number, at: [number, number]) => seatLoad(chair, frame, force, at);
  const onBack = (force: number) =>
    back ? backLoad(frame, chair, force, backHeight(loaded.seatHeight, back.top)) : [];
  const stood = (...stops: Stops[]) => supportsOf(frame, stops);
  const cases: LoadCase[] = [];
  const add = (
    name: string,
    title: string,
    loads: NodeLoad[],
    supports: Support[],
    times: number,
    known: boolean,
  ) => {
    if (loads.length > 0) cases.push({ name, title, loads, supports, times, fromMemory: !known });
  };

  add(
    back ? "seat-and-back" : "seat",
    back ? "seat and back together" : "the seat",
    [...onSeat(figures.seat, seatAt), ...onBack(figures.back)],
    back ? stood("back") : stood(),
    10,
    seen("seat", "back"),
  );
  add(
    "front-edge",
    "the seat's front edge",
    onSeat(figures.frontEdge, [0, front + data.places.frontEdgeIn]),
    stood(),
    10,
    seen("frontEdge"),
  );
  add(
    "leg-forward",
    "pushed forwards at the seat",
    [
      ...onSeat(figures.legSeat, [0, (front + rear) / 2]),
      ...pushed(chair, frame, "back", [0, -figures.legForward, 0]),
    ],
    stood("front"),
    10,
    false,
  );
  add(
    "leg-sideways",
    "pushed sideways at the seat",
    [
      ...onSeat(figures.legSeat, [left - data.places.legSeatIn, (front + rear) / 2]),
      ...pushed(chair, frame, "right", [figures.legSideways, 0, 0]),
    ],
    stood("left"),
    10,
    false,
  );
  const arms = armsOf(chair);
  if (arms.length > 0) {
    add(
      "arm-sideways",
      "the arms pushed outward",
      [
        ...onSeat(figures.legSeat, [0, (front + rear) / 2]),
        ...arms.flatMap((arm) =>
          atMiddle(frame, arm.name, [Math.sign(arm.start[0]) * figures.armSideways, 0, 0]),
        ),
      ],
      stood(),
      10,
      seen("armSideways"),
    );
    add(
      "arm-down",
      "down on an arm",
      atMiddle(frame, arms[0]?.name ?? "", [0, 0, -figures.armDown]),
      stood(),
      5,
      false,
    );
  }
  if (back)
    add(
      "repeated-sitting",
      "sitting down again and again",
      [...onSeat(figures.repeatedSeat, seatAt), ...onBack(figures.repeatedBack)],
      stood("back"),
      figures.cycles,
      false,
    );
  const sitter = data.sitter.mass * gravity;
  add("sitter", "a heavy sitter at rest", onSeat(sitter, seatAt), stood(), 1, true);
  if (back) {
    // Rocking on the rear legs: the sitter's weight and the push on the back are in balance over the rear feet.
    const rearFeet = Math.max(...[...frame.feet.values()].map((node) => frame.nodes[node]?.at[1] ?? 0));
    const lever = backHeight(loaded.seatHeight, back.top);
    const push = (sitter * Math.max(0, rearFeet - seatAt[1])) / lever;
    add(
      "rocking",
      "rocking on the rear legs",
      [...onSeat(sitter, seatAt), ...onBack(push)],
      stood("back"),
      1,
      false,
    );
  }
  const own = selfWeight(frame, weight.mass);
  return cases.map((each) => ({ ...each, loads: [...each.loads, ...own] }));
}

const backHeight = (seat: number, top: number): number =>
  Math.min(seat + data.places.backAboveSeat, top - data.places.backBelowTop / 10);

/** Feet push on the floor; those on the stopped sides, or all of them where none is stopped, are kept from sliding. */
function supportsOf(frame: ChairFrame, stops: readonly Stops[]): Support[] {
  const feet = [...frame.feet.values()].map((node) => ({ node, at: frame.nodes[node]?.at ?? [0, 0, 0] }));
  const middle = (k: 0 | 1) => feet.reduce((sum, { at }) => sum + (at[k] ?? 0), 0) / feet.length;
  const [mx, my] = [middle(0), middle(1)];
  const stopped = ({ at }: { at: Vec3 }) =>
    stops.length === 0 ||
    stops.some((side) =>
      side === "front"
        ? at[1] < my
        : side === "back"
          ? at[1] > my
          : side === "left"
            ? at[0] > mx
            : at[0] < mx,
    );
  return feet.map((foot) => {
    const held = stopped(foot);
    return { node: foot.node, held: [held, held, true, false, false, false], pushes: true };
  });
}

/** A force down on the seat, as the members under it take it. */
function seatLoad(chair: Chair, frame: ChairFrame, force: number, at: [number, number]): NodeLoad[] {
  const on = chair.seat?.design.on ?? [];
  const names = on.flatMap(({ value }) => {
    const all = [...frame.along.keys()];
    return all.filter((name) => name === value.name || name.startsWith(`${value.name}.`));
  });
  if (chair.seat?.plan) names.push(chair.seat.name);
  const nodes = [...new Set(names)].flatMap((name) => frame.along.get(name) ?? []);
  const shares = sharesOf(
    nodes.map((node) => frame.nodes[node]?.at ?? [0, 0, 0]),
    at,
  );
  return nodes.map((node, k) => ({ node, v: [0, 0, -force * (shares[k] ?? 0), 0, 0, 0] }));
}

/** A push backwards on the back at a height: on the members across it near there, else on its posts. */
function backLoad(frame: ChairFrame, chair: Chair, force: number, height: number): NodeLoad[] {
  const across = [...chair.members.values()].filter(
    (member) =>
      member.is === "rail" &&
      Math.abs(member.along[0]) > 0.8 &&
      middleHeight(frame, member.name) > height - 200,
  );
  const nearest = across
    .map(({ name }) => ({ name, off: Math.abs(middleHeight(frame, name) - height) }))
    .sort((a, b) => a.off - b.off)[0];
  if (nearest) return atMiddle(frame, nearest.name, [0, force, 0]);
  const tall = [...frame.along].filter(([, nodes]) => (frame.nodes[nodes.at(-1) ?? 0]?.at[2] ?? 0) > height);
  return tall.flatMap(([, nodes]) => {
    const node = nodes.find((each) => (frame.nodes[each]?.at[2] ?? 0) >= height) ?? nodes.at(-1) ?? 0;
    return [{ node, v: [0, force / tall.length, 0, 0, 0, 0] }];
  });
}

function middleHeight(frame: ChairFrame, name: string): number {
  const nodes = frame.along.get(name) ?? [];
  return frame.nodes[nodes[Math.floor(nodes.length / 2)] ?? 0]?.at[2] ?? 0;
}

/** A force at the middle of a part's length, shared by the two nodes that it lies between. */
function atMiddle(frame: ChairFrame, name: string, force: Vec3): NodeLoad[] {
  const nodes = frame.along.get(name) ?? [];
  const places = nodes.map((node) => frame.nodes[node]?.at ?? ([0, 0, 0] as Vec3));
  const steps = places.slice(1).map((place, k) => distance(places[k] ?? place, place));
  let left = steps.reduce((sum, step) => sum + step, 0) / 2;
  for (const [k, step] of steps.entries()) {
    if (left > step + 1e-9) {
      left -= step;
      continue;
    }
    const share = step > 0 ? left / step : 0;
    return [k, k + 1].flatMap((at) => {
      const part = at === k ? 1 - share : share;
      const node = nodes[at];
      return node === undefined || part < 1e-9 ? [] : [{ node, v: [...force.map((f) => f * part), 0, 0, 0] }];
    });
  }
  return [];
}

/** A level push at the seat's rail on one side, at its middle. */
function pushed(chair: Chair, frame: ChairFrame, side: "back" | "right", force: Vec3): NodeLoad[] {
  const on = chair.seat?.design.on ?? [];
  const rails = [...chair.rails.values()].filter((rail) =>
    on.some(({ value }) => rail.id.stem === value.name),
  );
  const k = side === "back" ? 1 : 0;
  const far = [...rails].sort((a, b) => {
    const middle = (rail: (typeof rails)[number]) => (rail.start[k] + rail.end[k]) / 2;
    return side === "back" ? middle(b) - middle(a) : middle(a) - middle(b);
  })[0];
  if (far) return atMiddle(frame, far.name, force);
  // A solid seat is pushed at its middle: it is stiff.
  const [middle] = chair.seat?.plan ? (frame.along.get(chair.seat.name) ?? []) : [];
  return middle === undefined ? [] : [{ node: middle, v: [...force, 0, 0, 0] }];
}

/** The chair's own weight, spread over its members as their volume is. */
function selfWeight(frame: ChairFrame, mass: number): NodeLoad[] {
  const sizes = frame.pieces.map(({ beam, section }) => {
    const { from, to } = frame.beams[beam] ?? { from: 0, to: 0 };
    const [a, b] = [frame.nodes[from]?.at ?? [0, 0, 0], frame.nodes[to]?.at ?? [0, 0, 0]];
    return { from, to, size: section.A * Math.hypot(b[0] - a[0], b[1] - a[1], b[2] - a[2]) };
  });
  const whole = sizes.reduce((sum, { size }) => sum + size, 0);
  if (!(whole > 0) || !Number.isFinite(mass)) return [];
  return sizes.flatMap(({ from, to, size }) => {
    const half = (-mass * gravity * size) / whole / 2;
    return [from, to].map((node) => ({ node, v: [0, 0, half, 0, 0, 0] }));
  });
}
