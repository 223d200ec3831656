import type { Span } from "../../grammar/problem.ts";
import type { Chair, Joint } from "../chair/chair.ts";
import { edgesOf } from "../geometry/body.ts";
import type { Body, Edge } from "../geometry/solid.ts";
import { dot } from "../geometry/vec.ts";

/** A part to draw. */
export interface ScenePart {
  /** Full name; `seat` for the seat. */
  name: string;
  /** Where its name stands in the text. */
  at: Span;
  body: Body;
}

/** The cosine of the most that two facets of a turned tenon turn. */
const SMOOTH = Math.cos(0.5);
/** A tenon whose end comes this near to the far face may show there, mm. */
const SHOWS = 0.5;

/** All parts of the chair, as drawn. */
export function sceneOf(chair: Chair): ScenePart[] {
  const tenons = tenonsThatShow(chair);
  return [...chair.members.values()].map(({ name, design, body }) => ({
    name,
    at: design.at,
    body: withTenons(body, tenons.get(name)),
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

function withTenons(body: Body, joints: readonly Joint[] | undefined): Body {
  if (!joints) return body;
  const tenons = joints.flatMap(({ tenon }) => tenon);
  const edges = tenons.flatMap(edgesOf).map(({ a, b, normals }): Edge => {
    return { a, b, is: dot(...normals) > SMOOTH ? "smooth" : "arris", normals };
  });
  return { pieces: [...body.pieces, ...tenons], edges: [...body.edges, ...edges] };
}
