/**
 * Where forces act on a chair's frame: on the seat, on the back, along a member; and its own weight.
 */
import type { Chair } from "../chair/chair.ts";
import { gravity } from "../floor/loaded.ts";
import type { Vec3 } from "../geometry/solid.ts";
import { distance } from "../geometry/vec.ts";
import type { NodeLoad } from "./frame/frame.ts";
import type { ChairFrame } from "./model.ts";
import { sharesOf } from "./spread.ts";

/** Shares of a force at a place on the seat that the members under it take: nodes and their shares. */
export function seatShares(
  chair: Chair,
  frame: ChairFrame,
  at: [number, number],
): { node: number; share: number }[] {
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
  return nodes.map((node, k) => ({ node, share: shares[k] ?? 0 }));
}

/** A force down on the seat, as the members under it take it. */
export const seatLoad = (chair: Chair, frame: ChairFrame, force: number, at: [number, number]): NodeLoad[] =>
  seatShares(chair, frame, at).map(({ node, share }) => ({ node, v: [0, 0, -force * share, 0, 0, 0] }));

/** A push backwards on the back at a height: on the members across it near there, else on its posts. */
export function backLoad(frame: ChairFrame, chair: Chair, force: number, height: number): NodeLoad[] {
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

/** A force at the middle of a part's length. */
export const atMiddle = (frame: ChairFrame, name: string, force: Vec3): NodeLoad[] =>
  atStation(frame, name, { share: 0.5 }, force);

/** A force along a part, at a distance from its first node or a share of its length, shared by the two nodes that it lies between. */
export function atStation(
  frame: ChairFrame,
  name: string,
  station: { share: number } | { mm: number },
  force: Vec3,
): NodeLoad[] {
  const nodes = frame.along.get(name) ?? [];
  const places = nodes.map((node) => frame.nodes[node]?.at ?? ([0, 0, 0] as Vec3));
  const steps = places.slice(1).map((place, k) => distance(places[k] ?? place, place));
  const whole = steps.reduce((sum, step) => sum + step, 0);
  let left = Math.min(whole, "mm" in station ? station.mm : station.share * whole);
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
export function pushed(chair: Chair, frame: ChairFrame, side: "back" | "right", force: Vec3): NodeLoad[] {
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
export function selfWeight(frame: ChairFrame, mass: number): NodeLoad[] {
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
