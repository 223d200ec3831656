/**
 * A frame solved by Z88, a finite-element program in Debian (package z88): input written, run, displacements read back.
 */
import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Vec3 } from "../../../server/geometry/solid.ts";
import { cross, dot, sub, unit } from "../../../server/geometry/vec.ts";
import type { Beam, Frame, NodeLoad, Support } from "../../../server/strength/frame/frame.ts";

/** Much more than a chair needs. */
const limits: Record<string, number> = {
  MAXGS: 2_000_000,
  MAXKOI: 200_000,
  MAXK: 5000,
  MAXE: 5000,
  MAXNFG: 30_000,
  MAXNEG: 5000,
  MAXPR: 1000,
  MAXRBD: 5000,
  MAXIEZ: 2_000_000,
  MAXGP: 10_000,
};

const dynamic = [
  "DYNAMIC START",
  "ENGLISH",
  "COMMON START",
  ...Object.entries(limits).map(([name, most]) => `    ${name} ${most}`),
  "COMMON END",
  "DYNAMIC END",
  "",
].join("\n");

/** The way a beam's own y lies in Z88's element for spatial beams: level, square to the beam. */
const levelAcross = (run: Vec3): Vec3 => unit(cross([0, 0, 1], run));
const isPlumb = (run: Vec3): boolean => Math.hypot(run[0], run[1]) < 1e-9;

/**
 * A frame as Z88 can have it: its beams do not shear, and bend about level axes; one whose own axes lie otherwise bends alike both ways.
 * Springs are taken as rigid: their two nodes become one.
 */
export function asZ88Takes(frame: Frame): Frame {
  const into = frame.nodes.map((_, node) => node);
  const root = (node: number): number => (into[node] === node ? node : root(into[node] ?? node));
  for (const { from, to } of frame.springs) into[root(to)] = root(from);
  const kept = frame.nodes.map((_, node) => node).filter((node) => root(node) === node);
  const place = new Map(kept.map((node, k) => [node, k]));
  const renamed = (node: number) => place.get(root(node)) ?? 0;
  const beams = frame.beams.flatMap((beam): Beam[] => {
    const [from, to] = [renamed(beam.from), renamed(beam.to)];
    if (from === to) return [];
    const run = unit(sub(frame.nodes[beam.to]!.at, frame.nodes[beam.from]!.at));
    const level: Vec3 = isPlumb(run) ? [0, 1, 0] : levelAcross(run);
    // One that stands plumb has no level axis of its own: it bends alike both ways.
    const along = isPlumb(run) ? 0.5 : Math.abs(dot(level, beam.yAxis));
    const mean = (beam.Iy + beam.Iz) / 2;
    const [Iy, Iz] = along > 1 - 1e-9 ? [beam.Iy, beam.Iz] : along < 1e-4 ? [beam.Iz, beam.Iy] : [mean, mean];
    return [{ ...beam, from, to, Ay: 1e15, Az: 1e15, yAxis: level, Iy, Iz }];
  });
  return { nodes: kept.map((node) => frame.nodes[node]!), beams, springs: [] };
}

/** Loads and supports of the frame before, as they are on the one that `asZ88Takes` gave. */
export function moved<T extends { node: number }>(before: Frame, after: Frame, things: readonly T[]): T[] {
  const ids = new Map(after.nodes.map(({ id }, k) => [id, k]));
  const twin = new Map<number, number>();
  for (const { from, to } of before.springs) twin.set(to, from);
  const follow = (node: number): number => {
    const id = before.nodes[node]?.id ?? "";
    const here = ids.get(id);
    if (here !== undefined) return here;
    const next = twin.get(node);
    if (next === undefined) throw new Error(`no node ${id}`);
    return follow(next);
  };
  return things.map((thing) => ({ ...thing, node: follow(thing.node) }));
}

/** Displacements of each node, six numbers each, by Z88's direct solver. */
export function solvedByZ88(
  { nodes, beams }: Frame,
  supports: readonly Support[],
  loads: readonly NodeLoad[],
): number[][] {
  const folder = mkdtempSync(join(tmpdir(), "z88-"));
  try {
    const put = (name: string, lines: (string | number)[][]) =>
      writeFileSync(join(folder, name), `${lines.map((line) => line.join(" ")).join("\n")}\n`);
    const e = (value: number) => value.toExponential(12);
    writeFileSync(join(folder, "z88.dyn"), dynamic);
    put("z88i1.txt", [
      [3, nodes.length, beams.length, nodes.length * 6, beams.length, 0, 1, 0, 0],
      ...nodes.map(({ at }, k) => [k + 1, 6, ...at.map(e)]),
      ...beams.flatMap(({ from, to }, k) => [
        [k + 1, 2],
        [from + 1, to + 1],
      ]),
      ...beams.map(({ E, G, A, Iy, Iz, J }, k) => [
        k + 1,
        k + 1,
        e(E),
        e(E / (2 * G) - 1),
        0,
        e(A),
        e(Iy),
        10,
        e(Iz),
        10,
        e(J),
        10,
      ]),
    ]);
    const held = supports.flatMap(({ node, held: ways }) =>
      ways.flatMap((is, way) => (is ? [[node + 1, way + 1, 2, 0]] : [])),
    );
    const sums = new Map<string, number>();
    for (const { node, v } of loads)
      for (const [way, value] of v.entries()) {
        const key = `${node + 1} ${way + 1}`;
        if (value !== 0) sums.set(key, (sums.get(key) ?? 0) + value);
      }
    const pushed = [...sums].map(([key, value]) => [key, 1, e(value)]);
    put("z88i2.txt", [[held.length + pushed.length], ...held, ...pushed]);
    put("z88i5.txt", [[0]]);
    execFileSync("z88f", ["-c"], { cwd: folder, stdio: "pipe" });
    const read = readFileSync(join(folder, "z88o2.txt"), "latin1");
    const found = nodes.map((): number[] => [0, 0, 0, 0, 0, 0]);
    for (const line of read.split("\n")) {
      const [node, ...u] = line.trim().split(/\s+/).map(Number);
      if (node !== undefined && Number.isInteger(node) && u.length === 6 && u.every(Number.isFinite))
        found[node - 1] = u;
    }
    return found;
  } finally {
    rmSync(folder, { recursive: true });
  }
}
