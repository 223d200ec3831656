import type { Span } from "../../grammar/problem.ts";
import type { Chair, Joint } from "../chair/chair.ts";
import { kept } from "../chair/kept.ts";
import { edgesOf } from "../geometry/body.ts";
import type { Body, Convex, Edge } from "../geometry/solid.ts";
import { outlinedOn } from "../geometry/surfacing.ts";
import { dot } from "../geometry/vec.ts";
import { endsInHollow, trimmedInHollow } from "../solids/through-hollow.ts";

/** A part to draw. */
export interface ScenePart {
  /** Full name; `seat` for the seat. */
  name: string;
  /** Where its name stands in the text. */
  at: Span;
  /** The text it stands in, where that is another file. */
  file?: string;
  body: Body;
}

/** The cosine of the most that two facets of a turned tenon turn. */
const SMOOTH = Math.cos(0.5);
/** A tenon whose end comes this near to the far face may show there, mm. */
const SHOWS = 0.5;

/** All parts of the chair, as drawn; worked out once a chair. */
export const sceneOf = (chair: Chair): readonly ScenePart[] => kept(chair, assembled);

function assembled(chair: Chair): ScenePart[] {
  const tenons = tenonsThatShow(chair);
  return [...chair.members.values()].map(({ name, design, body }) => ({
    name,
    at: design.at,
    ...(design.file !== undefined && { file: design.file }),
    body: withTenons(chair, body, tenons.get(name)),
  }));
}

/** Tenons that go through, by the part they are cut on. */
function tenonsThatShow(chair: Chair): Map<string, Joint[]> {
  const found = new Map<string, Joint[]>();
  for (const joint of chair.joints.values()) {
    const goesThrough = joint.facts.through !== undefined || joint.long >= joint.depthThere - SHOWS;
    if (!goesThrough) continue;
    const same = found.get(joint.part);
    if (same) same.push(joint);
    else found.set(joint.part, [joint]);
  }
  return found;
}

function withTenons(chair: Chair, body: Body, joints: readonly Joint[] | undefined): Body {
  if (!joints) return body;
  const [level, hollowed] = [
    joints.filter((joint) => !endsInHollow(chair, joint)),
    joints.filter((joint) => endsInHollow(chair, joint)),
  ];
  const tenons = level.flatMap(({ tenon }) => tenon);
  const edges = tenons.flatMap(edgesOf).map(({ a, b, normals }): Edge => {
    return { a, b, is: dot(...normals) > SMOOTH ? "smooth" : "arris", normals };
  });
  const trimmed = hollowed.flatMap((joint) => {
    const wood = trimmedInHollow(chair, joint)?.wood ?? [];
    return joint.tenon.flatMap((tenon) => trimmedEnd(joint, tenon, wood));
  });
  return {
    pieces: [...body.pieces, ...tenons],
    edges: [...body.edges, ...edges, ...trimmed],
    ...(body.cover && { cover: [...body.cover, ...tenons] }),
  };
}

/** The end of a tenon that is trimmed flush with the wood that it comes out of. */
function trimmedEnd({ direction }: Joint, tenon: Convex, wood: readonly Convex[]): Edge[] {
  const out = tenon.planes.map(({ normal }) => dot(normal, direction));
  const root = tenon.planes[out.indexOf(Math.min(...out))]!;
  const end = tenon.planes[out.indexOf(Math.max(...out))]!;
  const edges = edgesOf(tenon).map(({ a, b, normals }): Edge => {
    const side = normals.find((normal) => normal !== root.normal) ?? normals[0];
    return normals.includes(root.normal)
      ? { a, b, is: "arris", normals: [end.normal, side] }
      : { a, b, is: "smooth", normals };
  });
  return outlinedOn(edges, root, direction, 0, wood).filter(({ is }) => is === "arris");
}
