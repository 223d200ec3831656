import type { Chair } from "../chair/chair.ts";
import { compose, inverse, movePlane, movePoint } from "../geometry/motion.ts";
import type { Shell } from "../geometry/shell.ts";
import type { Motion } from "../geometry/solid.ts";
import { fromOwnMeasure } from "../solids/own-measure.ts";
import { partSolid } from "../solids/part-solid.ts";
import { isClosed, type Mesh, meshOf } from "./mesh.ts";

/** A part to be written. */
export interface ModelPart {
  name: string;
  /** In the part's own measure, mm: along x by its grain, its lowest corner at zero. */
  shell: Shell;
  mesh: Mesh;
  /** From there into the chair as it stands: x to the sitter's left, y back, z up, the floor at z = 0. */
  place: Motion;
}

/** The names of the parts that have a body, in the chair's order; those of one name or of a pair or row of that name. */
export function partNames(chair: Chair, part?: string): string[] {
  return [...chair.members.values()]
    .filter(({ body }) => body.pieces.length > 0)
    .map(({ name }) => name)
    .filter((name) => part === undefined || name === part || name.startsWith(`${part}.`));
}

/** A part as a closed solid; undefined when its surface does not close, so that no file may hold it. */
export function modelPart(chair: Chair, name: string): ModelPart | undefined {
  const member = chair.members.get(name);
  if (!member) return undefined;
  const { shell: drawn, closed } = partSolid(chair, member);
  if (!closed) return undefined;
  const out = fromOwnMeasure(member);
  const own = inverse(out);
  const shell: Shell = {
    points: drawn.points.map((p) => movePoint(own, p)),
    faces: drawn.faces.map((face) => ({ ...face, plane: movePlane(own, face.plane) })),
  };
  const mesh = meshOf(shell);
  return isClosed(mesh) ? { name, shell, mesh, place: compose(chair.stance, out) } : undefined;
}
