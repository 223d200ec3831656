import type { Chair, Member } from "../chair/chair.ts";
import { kept } from "../chair/kept.ts";
import { type Shell, shellCount, shellEdges, shellOf } from "../geometry/shell.ts";
import { partPieces } from "./part-pieces.ts";

/** A part as one solid. */
interface PartSolid {
  name: string;
  member: Member;
  shell: Shell;
  /** Its surface is in one piece and every edge is in two faces: what a solid must be to be written. */
  closed: boolean;
}

/** Every part of a chair that has a body, in the chair's order, worked out one by one as it is asked for. */
export function* partSolids(chair: Chair): Generator<PartSolid, void, void> {
  for (const member of chair.members.values()) {
    if (member.body.pieces.length === 0) continue;
    yield partSolid(chair, member);
  }
}

/** One part as a solid: body, tenons on, mortises cut. Worked out once a chair. */
export function partSolid(chair: Chair, member: Member): PartSolid {
  const known = kept(chair, solidsSoFar);
  const there = known.get(member.name);
  if (there) return there;
  const shell = shellOf(partPieces(chair, member));
  const closed = shellEdges(shell) !== undefined && shellCount(shell) === 1;
  const solid = { name: member.name, member, shell, closed };
  known.set(member.name, solid);
  return solid;
}

const solidsSoFar = (_chair: Chair): Map<string, PartSolid> => new Map();
