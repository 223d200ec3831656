/**
 * What is bored in a solid seat, and the wood between one bore and another.
 */
import type { Bow, Chair, Joint, Post, Rail } from "../chair/chair.ts";
import { kept } from "../chair/kept.ts";
import { isRail } from "../chair/member.ts";
import type { Vec3 } from "../geometry/solid.ts";
import { along, cross, dot, norm, sub, unit } from "../geometry/vec.ts";

/** A bore by its middle line, from the face it is bored in to its end, and its radius at both. */
export interface Socket {
  joint: Joint;
  part: Post | Rail | Bow;
  from: Vec3;
  to: Vec3;
  radii: readonly [number, number];
}

/** Every bore in the chair's solid seat, in the order of its joints. */
export const socketsIn = (chair: Chair): readonly Socket[] => kept(chair, found);

function found(chair: Chair): Socket[] {
  const { seat } = chair;
  if (!seat?.plan) return [];
  return [...chair.joints.values()].flatMap((joint): Socket[] => {
    const part = chair.members.get(joint.part);
    if (joint.entered.name !== seat.name || joint.shape === "none" || !part) return [];
    if (part.is !== "post" && part.is !== "bow" && !isRail(part)) return [];
    const slant = Math.abs(dot(joint.direction, seat.plane.normal));
    const deep = Math.min(joint.long, joint.depthThere) / slant;
    const radius = Math.max(joint.thick, joint.wide) / 2;
    const to = along(joint.root, joint.direction, deep);
    return [{ joint, part, from: joint.root, to, radii: [radius, radius * (joint.sections[0]?.tip ?? 1)] }];
  });
}

/** The least wood between two bores, mm; negative where they run into each other. */
export function woodBetween(a: Socket, b: Socket): number {
  // Both are short: a grid of places along them, then nearer and nearer.
  let [s, t, step] = [0.5, 0.5, 0.5];
  const gap = (p: number, q: number): number => {
    const [u, v] = [at(a, p), at(b, q)];
    return norm(sub(u.at, v.at)) - u.radius - v.radius;
  };
  let best = gap(s, t);
  while (step > 1e-4) {
    let moved = false;
    for (const [p, q] of [
      [s - step, t],
      [s + step, t],
      [s, t - step],
      [s, t + step],
      [s - step, t - step],
      [s + step, t + step],
    ] as const) {
      if (p < 0 || p > 1 || q < 0 || q > 1) continue;
      const next = gap(p, q);
      if (next >= best - 1e-12) continue;
      [s, t, best, moved] = [p, q, next, true];
    }
    if (!moved) step /= 2;
  }
  return best;
}

const at = ({ from, to, radii }: Socket, share: number) => ({
  at: along(from, sub(to, from), share),
  radius: radii[0] + (radii[1] - radii[0]) * share,
});

/**
 * How two bores lie to the grain: how far apart across it, middle to middle, and the wood between them along it, at the depth that both reach
 * where that is least; undefined where they share no depth.
 */
export function alongGrain(chair: Chair, a: Socket, b: Socket): { across: number; wood: number } | undefined {
  const { grain, plane } = chair.seat!;
  const sideways = unit(cross(plane.normal, grain));
  const depth = (p: Vec3) => plane.offset - dot(plane.normal, p);
  const spans = [a, b].map(
    ({ from, to }) => [depth(from), depth(to)].sort((p, q) => p - q) as [number, number],
  );
  const [high, low] = [Math.max(spans[0]![0], spans[1]![0]), Math.min(spans[0]![1], spans[1]![1])];
  if (low <= high) return undefined;
  const placed = [high, low].map((level) => {
    const [u, v] = [a, b].map((socket) => {
      const [top, end] = [depth(socket.from), depth(socket.to)];
      return at(socket, (level - top) / (end - top));
    });
    const apart = sub(v!.at, u!.at);
    return {
      across: Math.abs(dot(apart, sideways)),
      wood: Math.abs(dot(apart, grain)) - u!.radius - v!.radius,
    };
  });
  return placed.reduce((least, each) => (each.wood < least.wood ? each : least));
}

/** Pairs of bores, each once; of mirrored pairs the left-hand one. */
export function socketPairs(chair: Chair): [Socket, Socket][] {
  const all = socketsIn(chair);
  return all.flatMap((a, k) => all.slice(k + 1).map((b): [Socket, Socket] => [a, b]));
}
