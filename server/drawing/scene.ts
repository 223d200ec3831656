import type { Span } from "../../grammar/problem.ts";
import type { Chair, Joint } from "../chair/chair.ts";
import { bodyOf } from "../geometry/body.ts";
import { moveBody, STILL } from "../geometry/motion.ts";
import type { Body } from "../geometry/solid.ts";

/** A part to draw. */
export interface ScenePart {
  /** Full name; `seat` for the seat. */
  name: string;
  /** Where its name stands in the text. */
  at: Span;
  body: Body;
}

/** Facets of a turned tenon turn by less than this, radians. */
const SMOOTH = 0.5;
/** A tenon whose end comes this near to the far face may show there, mm. */
const SHOWS = 0.5;

/** All parts of the chair as it stands. */
export function sceneOf(chair: Chair): ScenePart[] {
  const standing = (body: Body) => (chair.stance === STILL ? body : moveBody(chair.stance, body));
  const tenons = tenonsThatShow(chair);
  const parts: ScenePart[] = [];
  for (const group of [chair.posts, chair.rails, chair.slats, chair.blocks]) {
    for (const { name, design, body } of group.values()) {
      parts.push({ name, at: design.at, body: standing(withTenons(body, tenons.get(name))) });
    }
  }
  if (chair.seat) parts.push({ name: "seat", at: chair.seat.design.at, body: standing(chair.seat.body) });
  return parts;
}

/** Tenons that go through, or that bridge the gap between a flat shoulder and a turned post, by the part they are cut on. */
function tenonsThatShow(chair: Chair): Map<string, Joint[]> {
  const found = new Map<string, Joint[]>();
  for (const joint of chair.joints.values()) {
    const entersRound = chair.posts.get(joint.entered.name)?.design.round !== undefined;
    const goesThrough = joint.facts.through !== undefined || joint.long >= joint.depthThere - SHOWS;
    if (!entersRound && !goesThrough) continue;
    const same = found.get(joint.part);
    if (same) same.push(joint);
    else found.set(joint.part, [joint]);
  }
  return found;
}

function withTenons(body: Body, joints: readonly Joint[] | undefined): Body {
  if (!joints) return body;
  const tenons = joints.flatMap(({ tenon }) => tenon.map((solid) => bodyOf([solid], SMOOTH)));
  return {
    pieces: [...body.pieces, ...tenons.flatMap(({ pieces }) => pieces)],
    edges: [...body.edges, ...tenons.flatMap(({ edges }) => edges)],
  };
}
