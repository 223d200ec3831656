/**
 * Legs that lean every way out of one seat, with stretchers between them: no one line takes the seat off. They are drawn a little at a
 * time, each along its own line, while their feet go apart and the stretchers slide in their mortises.
 */
import type { Vec3 } from "../geometry/solid.ts";
import { add, dot, norm, scale, squareTo, sub, unit } from "../geometry/vec.ts";
import type { Fitting, Parting } from "./fitting.ts";

/** Rounds in which what hangs between the legs settles between them. */
const ROUNDS = 60;

/**
 * The seat separated from all that hangs together under it or over it, where every joint between those parts bears it: what it strays sideways
 * over the whole stroke stays within its slack, and it does not go deeper. Undefined where the parts hold no such seat, or are tied to it
 * by more.
 */
export function drawnParting(whole: readonly string[], joints: readonly Fitting[]): Parting | undefined {
  const seat = joints.find(({ drawn }) => drawn)?.into;
  if (seat === undefined) return undefined;
  for (const group of hangingFrom(seat, whole, joints)) {
    const parting = drawnFrom(seat, group, whole, joints);
    if (parting) return parting;
  }
  return undefined;
}

/** The parts but for the seat, those that are joined to each other together. */
function hangingFrom(seat: string, whole: readonly string[], joints: readonly Fitting[]): string[][] {
  const left = new Set(whole.filter((part) => part !== seat));
  const groups: string[][] = [];
  for (const first of left) {
    const group = [first];
    left.delete(first);
    for (const part of group) {
      for (const joint of joints) {
        const other = joint.part === part ? joint.into : joint.into === part ? joint.part : undefined;
        if (other === undefined || !left.has(other)) continue;
        left.delete(other);
        group.push(other);
      }
    }
    groups.push(group);
  }
  return groups;
}

function drawnFrom(
  seat: string,
  group: readonly string[],
  whole: readonly string[],
  all: readonly Fitting[],
): Parting | undefined {
  const inside = new Set(group);
  const joints = all.filter(({ part, into }) => inside.has(part) || inside.has(into));
  const sockets = joints.filter((joint) => joint.drawn && joint.into === seat);
  const tied = joints.some(
    (joint) => (joint.part === seat || joint.into === seat) && !sockets.includes(joint),
  );
  if (tied || sockets.length < 2) return undefined;
  const stroke = Math.max(...sockets.map(({ long }) => long));
  const moves = movesOf(group, joints, seat, sockets, stroke);
  const slackOf = (part: string) => {
    const free = sockets.find((socket) => socket.part === part)?.free ?? 0;
    return stroke * Math.tan(free);
  };
  const bears = joints.every((joint) => {
    if (sockets.includes(joint)) return true;
    const moved = sub(moves.get(joint.part)!, moves.get(joint.into)!);
    const strays = norm(squareTo(moved, joint.direction));
    const slack = joint.slack + slackOf(joint.part) + slackOf(joint.into);
    return strays <= slack && dot(moved, joint.direction) <= slack;
  });
  if (!bears) return undefined;
  const direction = unit(sockets.map((socket) => socket.direction).reduce(add));
  return { direction, groups: [[...group], whole.filter((part) => !inside.has(part))] };
}

/** How far each part has gone when the legs are out: a leg down its own line, what is joined to several the mean of them. */
function movesOf(
  whole: readonly string[],
  joints: readonly Fitting[],
  seat: string,
  sockets: readonly Fitting[],
  stroke: number,
): Map<string, Vec3> {
  const moves = new Map<string, Vec3>(whole.map((part) => [part, [0, 0, 0]]));
  for (const { part, direction } of sockets) moves.set(part, scale(direction, -stroke));
  const legs = new Set(sockets.map(({ part }) => part));
  const hanging = whole.filter((part) => part !== seat && !legs.has(part));
  const beside = (part: string) =>
    joints.flatMap((joint) => (joint.part === part ? [joint.into] : joint.into === part ? [joint.part] : []));
  const neighbours = new Map(hanging.map((part) => [part, beside(part)]));
  for (let round = 0; round < ROUNDS; round++) {
    for (const [part, others] of neighbours) {
      const sum = others.map((other) => moves.get(other)!).reduce(add, [0, 0, 0] as Vec3);
      if (others.length > 0) moves.set(part, scale(sum, 1 / others.length));
    }
  }
  return moves;
}
