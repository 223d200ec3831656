/**
 * Whether what a solution says of forces adds up, from what it gives away alone: ends of beams, springs, reactions and loads.
 */
import type { Vec3 } from "../../../server/geometry/solid.ts";
import { add, cross, scale, sub } from "../../../server/geometry/vec.ts";
import { axesOf, type Frame, type NodeLoad } from "../../../server/strength/frame/frame.ts";
import type { Solution } from "../../../server/strength/frame/solve.ts";

type Six = { force: Vec3; moment: Vec3 };

function inFrame([a = 0, b = 0, c = 0, d = 0, e = 0, f = 0]: readonly number[], axes: readonly Vec3[]): Six {
  const [x, y, z] = axes as [Vec3, Vec3, Vec3];
  return {
    force: add(add(scale(x, a), scale(y, b)), scale(z, c)),
    moment: add(add(scale(x, d), scale(y, e)), scale(z, f)),
  };
}

const upright: Vec3[] = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
];

/** The largest force that is left over at a node, and of the whole frame, as shares of all loads; moments at the size of the frame. */
export function outOfBalance(
  frame: Frame,
  { ends, springs, reactions }: Solution,
  loads: readonly NodeLoad[],
): { nodes: number; whole: number } {
  const left = frame.nodes.map((): Six => ({ force: [0, 0, 0], moment: [0, 0, 0] }));
  const put = (node: number, { force, moment }: Six, sign: number) => {
    const here = left[node] as Six;
    here.force = add(here.force, scale(force, sign));
    here.moment = add(here.moment, scale(moment, sign));
  };
  for (const [k, beam] of frame.beams.entries()) {
    const { axes } = axesOf(frame, beam);
    // What acts on the beam, its nodes get the other way.
    put(beam.from, inFrame(ends[k]?.from ?? [], axes), -1);
    put(beam.to, inFrame(ends[k]?.to ?? [], axes), -1);
  }
  for (const [k, spring] of frame.springs.entries()) {
    const passed = inFrame(springs[k] ?? [], spring.axes);
    put(spring.to, passed, -1);
    put(spring.from, passed, 1);
  }
  for (const { node, v } of [...loads, ...reactions]) put(node, inFrame(v, upright), 1);
  const reach = Math.max(...frame.nodes.flatMap(({ at }) => at.map(Math.abs)), 1);
  const all = loads.reduce(
    (sum, { v }) => sum + v.reduce((each, value, way) => each + Math.abs(value) / (way < 3 ? 1 : reach), 0),
    0,
  );
  const sizeOf = ({ force, moment }: Six) =>
    Math.max(Math.hypot(...force), Math.hypot(...moment) / reach) / all;
  const middle = scale(
    frame.nodes.reduce<Vec3>((sum, { at }) => add(sum, at), [0, 0, 0]),
    1 / frame.nodes.length,
  );
  const whole: Six = { force: [0, 0, 0], moment: [0, 0, 0] };
  for (const { node, v } of [...loads, ...reactions]) {
    const { force, moment } = inFrame(v, upright);
    whole.force = add(whole.force, force);
    whole.moment = add(add(whole.moment, moment), cross(sub(frame.nodes[node]?.at ?? middle, middle), force));
  }
  return { nodes: Math.max(...left.map(sizeOf)), whole: sizeOf(whole) };
}

/** What the loads do on their way, and twice what beams and springs store: what acts on them at their ends on the way of those. */
export function worksOf(
  frame: Frame,
  { displacements, ends, springs }: Solution,
  loads: readonly NodeLoad[],
): { done: number; stored: number } {
  const work = (v: readonly number[], u: readonly number[]) =>
    v.reduce((sum, value, way) => sum + value * (u[way] ?? 0), 0);
  const at = (node: number) => displacements[node] ?? [];
  const turned = (v: readonly number[], axes: readonly Vec3[]) => {
    const { force, moment } = inFrame(v, axes);
    return [...force, ...moment];
  };
  const beams = frame.beams.map((beam, k) => {
    const { axes } = axesOf(frame, beam);
    return (
      work(turned(ends[k]?.from ?? [], axes), at(beam.from)) +
      work(turned(ends[k]?.to ?? [], axes), at(beam.to))
    );
  });
  const sprung = frame.springs.map((spring, k) => {
    const passed = turned(springs[k] ?? [], spring.axes);
    return work(passed, at(spring.to)) - work(passed, at(spring.from));
  });
  return {
    done: loads.reduce((sum, { node, v }) => sum + work(v, at(node)), 0),
    stored: [...beams, ...sprung].reduce((sum, each) => sum + each, 0),
  };
}
