import type { Chair, Joint } from "../../chair/chair.ts";
import { kept } from "../../chair/kept.ts";
import { type Shell, shellEdges } from "../../geometry/shell.ts";
import type { Edge, Vec3 } from "../../geometry/solid.ts";
import { add, dot, scale } from "../../geometry/vec.ts";
import { orderOf } from "../../joinery/order.ts";
import { partPieces } from "../../solids/part-pieces.ts";
import { partSolid } from "../../solids/part-solid.ts";
import type { ScenePart } from "../scene.ts";

/** Between what is taken apart beyond the longest tenon, mm. */
const CLEAR = 60;
/** How far the seat is lifted off what it lies on, mm. */
const LIFT = 140;
/** Faces that turn less than this are facets of one curved face: the cosine of 17°, over that between facets of turned work. */
const SMOOTH = Math.cos(0.3);

/** How far each part is moved, as drawn, mm, when the chair is taken apart along the lines of its glue-ups; the seat, which goes on last, is lifted. */
export function offsetsApart(chair: Chair): Map<string, Vec3> {
  const offsets = new Map<string, Vec3>();
  for (const moves of glueUpOffsets(chair)) {
    for (const [part, by] of moves) offsets.set(part, add(offsets.get(part) ?? [0, 0, 0], by));
  }
  if (offsets.size > 0 && chair.seat && !offsets.has(chair.seat.name))
    offsets.set(chair.seat.name, [0, 0, LIFT]);
  return offsets;
}

/** By glue-up: how far each of its parts is moved along its line while it is open, as drawn, mm. */
export function glueUpOffsets(chair: Chair): Map<string, Vec3>[] {
  return kept(chair, orderOf).glueUps.map(({ groups, direction, closes }) => {
    const longest = Math.max(0, ...closes.map((name) => reachOf(chair.joints.get(name))));
    const step = longest + CLEAR;
    const moves = new Map<string, Vec3>();
    for (const [k, group] of groups.entries()) {
      const by = scale(direction, (k - (groups.length - 1) / 2) * step);
      for (const part of group) moves.set(part, by);
    }
    return moves;
  });
}

const reachOf = (joint: Joint | undefined): number => joint?.long ?? 0;

/** A part as it leaves the bench, to be drawn: mortises and tenons in its lines. */
export function benchPart(chair: Chair, { name, at, body }: ScenePart): ScenePart {
  const member = chair.members.get(name);
  if (!member || member.body.pieces.length === 0) return { name, at, body };
  const { shell, closed } = partSolid(chair, member);
  return {
    name,
    at,
    body: { pieces: partPieces(chair, member), edges: closed ? edgesOfShell(shell) : body.edges },
  };
}

function edgesOfShell(shell: Shell): Edge[] {
  return (shellEdges(shell) ?? []).map(({ from, to, left, right }): Edge => {
    const normals: [Vec3, Vec3] = [shell.faces[left]!.plane.normal, shell.faces[right]!.plane.normal];
    return {
      a: shell.points[from]!,
      b: shell.points[to]!,
      is: dot(...normals) > SMOOTH ? "smooth" : "arris",
      normals,
    };
  });
}
